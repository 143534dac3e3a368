package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Gate and vents of standing molds. */
class ChannelPlannerTest {

  private static final SolidKernel KERNEL = new ManifoldKernel();

  private static TriMesh box(double x0, double y0, double z0, double x1, double y1, double z1) {
    return Primitives.box(new Vec3(x0, y0, z0), new Vec3(x1, y1, z1));
  }

  private static MoldPlan plan(TriMesh... parts) {
    List<Solid> solids = Arrays.stream(parts).map(p -> KERNEL.solid("part", p)).toList();
    TriMesh model = FloatGrid.snap(KERNEL.union("model", solids).mesh());
    MoldOptions o = MoldOptions.DEFAULT.with().pull(Vec3.Z).material("resin-polyurethane").build();
    return MoldPlan.of(model, o, KERNEL, Progress.NONE);
  }

  /** A gate as thin as a spike would never fill the mold: the spike gets a vent instead. */
  @Test
  void aSpikeOnTopGetsAVentAndTheGateGoesWhereItIsThick() {
    // a spike on each side, so that whatever is up has one
    TriMesh[] parts = {
      box(-35, -35, -10, 35, 35, 10),
      box(-24, 34, -0.8, -22.4, 45, 0.8),
      box(22.4, -45, -0.8, 24, -34, 0.8),
      box(34, 22.4, -0.8, 45, 24, 0.8),
      box(-45, -24, -0.8, -34, -22.4, 0.8)
    };
    List<Channel> channels = plan(parts).pour().channels();
    Channel gate = channels.get(0);
    assertEquals(Channel.Kind.GATE, gate.kind());
    assertTrue(gate.boreMm() >= 7.9, gate.boreMm() + "");
    for (Channel vent : channels.subList(1, channels.size())) {
      assertEquals(Channel.Kind.VENT, vent.kind());
      double apart = Math.abs(gate.outer().x() - vent.outer().x());
      assertTrue(apart > (gate.mouthMm() + vent.mouthMm()) / 2 + 1, vent + "");
    }
  }

  /** Where a gate starts near the block's side it is narrower, not open to the side. */
  @Test
  void aGateKeepsGroundBesideIt() {
    TriMesh casting = box(0, -40, -9, 40, 10, 9);
    Ground level =
        new Ground() {
          @Override
          public double heightAt(double x, double y) {
            return shadowDistance(x, y) > 0 ? 0 : Double.NaN;
          }

          @Override
          public double roofAt(double x, double y) {
            return shadowDistance(x, y) > 0 ? Double.NaN : 9;
          }

          @Override
          public double undersideAt(double x, double y) {
            return shadowDistance(x, y) > 0 ? Double.NaN : -9;
          }

          @Override
          public double shadowDistance(double x, double y) {
            double dx = Math.max(0, Math.max(-x, x - 40));
            return Math.hypot(dx, Math.max(0, Math.max(-40 - y, y - 10)));
          }
        };
    BlockBox block = BlockBox.around(casting.bounds(), 6, 20);
    Envelope rim = new Envelope(block.x0(), block.x1(), block.y0(), block.y1());
    Room room = new Room(level, (Polygon) new GeometryFactory().toGeometry(rim));
    Sizes sizes = new Sizes(6, 8, 0.2, 14, 14, 3);
    SeamChannels channels = new SeamChannels(casting, room, block, sizes);
    Channel inMiddle = channels.from(new Vec3(20, 10, 0), "gate", true);
    assertEquals(14, inMiddle.boreMm(), 1e-9);
    Channel gate = channels.from(new Vec3(0.5, 10, 0), "gate", true);
    for (Channel.Station s : gate.stations()) {
      assertTrue(s.center().x() - s.radius() >= block.x0() + 2 - 1e-6, s + "");
    }
  }

  /** Whatever the sheet does, a channel keeps ground before it and behind. */
  @Test
  void channelsStayWithinTheBlock() {
    // ground that falls steeply just beside where the channel joins, high above it
    Ground cliff =
        new Ground() {
          @Override
          public double heightAt(double x, double y) {
            return y < 0 ? Double.NaN : 6;
          }

          @Override
          public double roofAt(double x, double y) {
            return y < 0 ? -10 : Double.NaN;
          }

          @Override
          public double undersideAt(double x, double y) {
            return y < 0 ? -20 : Double.NaN;
          }

          @Override
          public double shadowDistance(double x, double y) {
            return Math.max(0, y);
          }
        };
    List<double[]> way = List.of(new double[] {0, -1.5}, new double[] {0, 30});
    double low = Double.POSITIVE_INFINITY;
    for (Channel.Station s : new SeamBore(cliff, 1.5, 1.5, -16, -35.5, 35.5).along(way)) {
      double span = s.rise() + s.radius();
      low = Math.min(low, s.center().z() - span);
      assertTrue(s.center().z() + span <= 33.5 + 1e-9);
      // the flank still spans the sheet
      assertTrue(s.center().z() + s.rise() >= 6 || s.center().y() < -0.5, s + "");
    }
    assertTrue(low >= -33.5 - 1e-9, low + "");
  }
}
