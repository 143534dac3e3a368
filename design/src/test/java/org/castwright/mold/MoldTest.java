package org.castwright.mold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.BlockShape;
import org.castwright.plan.Channel;
import org.castwright.plan.Closing;
import org.castwright.plan.Feature;
import org.castwright.plan.Key;
import org.castwright.plan.KeyShape;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.MoldPlan;
import org.castwright.plan.Pour;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Molds of small shapes, looked at as bodies: nothing here asks the proof. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class MoldTest {

  /** A key that misses its socket by this much cannot be forced in, mm; gaps are below 0.5. */
  private static final double SURELY_OFF = 1;

  private final List<Example> examples = new ArrayList<>();

  /** A mold under test. */
  record Example(String name, TriMesh model, MoldOptions options, Mold mold) {
    @Override
    public String toString() {
      return name;
    }
  }

  @BeforeAll
  void build() {
    try (SolidKernel kernel = new ManifoldKernel()) {
      add(kernel, "wavy, standing", Wavy.disc(30, 4), MoldOptions.DEFAULT.with());
      MoldOptions.With lying =
          MoldOptions.DEFAULT
              .with()
              .pull(new Vec3(0, 0, 1))
              .block(BlockShape.CONTOUR)
              .closing(Closing.CLAMPS)
              .keyShape(KeyShape.DOME)
              .keyCount(3)
              .shrinkPercent(new Vec3(1, 2, 3))
              .pour(Pour.PULL);
      add(kernel, "egg, lying", Shapes.ellipsoid(26, 18, 11, 32), lying);
      MoldOptions.With sideways =
          MoldOptions.DEFAULT
              .with()
              .pull(new Vec3(0, -2, 0))
              .block(BlockShape.ROUNDED)
              .closing(Closing.BOLTS)
              .wallMm(9)
              .clearanceMm(0.4);
      add(kernel, "ring, sideways", turnedUpright(Shapes.torus(20, 7, 48, 16)), sideways);
    }
  }

  private void add(SolidKernel kernel, String name, TriMesh model, MoldOptions.With with) {
    MoldOptions options = with.build();
    MoldPlan plan = MoldPlan.of(model, options, kernel, Progress.NONE);
    examples.add(new Example(name, model, options, Mold.build(plan, kernel, Progress.NONE)));
  }

  /** The axis along z laid along y. */
  private static TriMesh turnedUpright(TriMesh m) {
    double[] out = new double[m.xyz().length];
    for (int i = 0; i < out.length; i += 3) {
      out[i] = m.xyz()[i];
      out[i + 1] = -m.xyz()[i + 2];
      out[i + 2] = m.xyz()[i + 1];
    }
    return new TriMesh(out, m.tri());
  }

  List<Example> examples() {
    return examples;
  }

  @ParameterizedTest
  @MethodSource("examples")
  void piecesAreWholeBodiesOnTheFloatGrid(Example e) {
    assertEquals(2, e.mold.pieces().size());
    for (int i = 0; i < 2; i++) {
      Piece p = e.mold.pieces().get(i);
      assertEquals("piece-" + (i + 1), p.name());
      assertEquals(i + 1, p.order());
      assertEquals(i == 0 ? Vec3.Z : Vec3.Z.negate(), p.pull());
      MeshCheck check = MeshCheck.of(p.mesh());
      assertTrue(check.closedManifold(), p.name() + ": " + check.faults());
      assertEquals(1, check.components(), p.name());
      assertTrue(p.mesh().volume() > 0);
      for (double v : p.mesh().xyz()) {
        assertEquals((float) v, v, "a coordinate that a file cannot hold");
      }
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void forPrintingAPieceLiesOnItsOuterFaceAndKeepsItsShape(Example e) {
    for (Piece p : e.mold.pieces()) {
      assertEquals(0, p.print().bounds().min().z(), p.name());
      assertEquals(p.mesh().volume(), p.print().volume(), 1e-6 * p.mesh().volume());
      // the face that lies on the bed is the outer one: the lowest layer is as wide as the block
      Box3 foot = layer(p.print(), 0.001);
      assertTrue(foot.size().x() > 0.5 * p.print().bounds().size().x(), "stands on its seam");
      assertTrue(MeshCheck.of(p.print()).closedManifold());
    }
  }

  private static Box3 layer(TriMesh m, double height) {
    List<Double> in = new ArrayList<>();
    for (int i = 0; i < m.vertexCount(); i++) {
      Vec3 v = m.vertex(i);
      if (v.z() <= height) {
        in.addAll(List.of(v.x(), v.y(), v.z()));
      }
    }
    return Box3.of(in.stream().mapToDouble(Double::doubleValue).toArray());
  }

  @ParameterizedTest
  @MethodSource("examples")
  void volumesAddUpToTheBlock(Example e) {
    Mold m = e.mold;
    Volumes v = m.volumes();
    double pieces = m.pieces().stream().mapToDouble(p -> p.mesh().volume()).sum();
    double sum = pieces + v.casting() + v.channels() + v.keyClearance() + v.features();
    assertEquals(v.block(), sum, 1e-6 * v.block());
    assertEquals(m.casting().volume(), v.casting(), 1e-6 * v.casting());
    assertEquals(m.channels().volume(), v.channels(), 1e-6 * v.channels());
    assertTrue(v.keyClearance() > 0 && v.features() > 0 && v.channels() > 0);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void keysFitInOneWayOnly(Example e) {
    List<Key> keys = e.mold.plan().keys();
    assertTrue(keys.size() >= 3, "only " + keys.size() + " keys");
    var box = e.mold.plan().block().box();
    Vec3 middle = new Vec3((box.x0() + box.x1()) / 2, (box.y0() + box.y1()) / 2, 0);
    for (int turn = 1; turn <= 3; turn++) {
      double misfit = 0;
      for (Key k : keys) {
        Vec3 p = k.center().minus(middle);
        for (int q = 0; q < turn; q++) {
          p = new Vec3(-p.y(), p.x(), 0);
        }
        misfit = Math.max(misfit, nearest(keys, p.plus(middle)));
      }
      assertTrue(misfit > SURELY_OFF, "turned by " + 90 * turn + "° the keys fit: " + misfit);
    }
    for (Key k : keys) {
      assertEquals(e.options.keyShape(), k.shape());
      assertEquals(e.options.clearance(), k.clearance());
      assertTrue(standsUnder(e.mold.pieces().get(1).mesh(), k), "no key at " + k.center());
      assertFalse(standsUnder(e.mold.pieces().get(0).mesh(), k), "no socket at " + k.center());
    }
  }

  private static double nearest(List<Key> keys, Vec3 p) {
    return keys.stream()
        .mapToDouble(k -> Math.hypot(k.center().x() - p.x(), k.center().y() - p.y()))
        .min()
        .orElseThrow();
  }

  /** Whether the piece fills the middle of where the key stands. */
  private static boolean standsUnder(TriMesh piece, Key k) {
    return holds(piece, k.center().plus(new Vec3(0, 0, k.height() / 2)));
  }

  @ParameterizedTest
  @MethodSource("examples")
  void gateAndVentsLeadFromTheCavityToTheOutside(Example e) {
    Mold m = e.mold;
    List<Channel> channels = m.plan().pour().channels();
    assertEquals(1, channels.stream().filter(c -> c.kind() == Channel.Kind.GATE).count());
    assertTrue(channels.size() >= 2, "no vent");
    var box = m.plan().block().box();
    for (Channel c : channels) {
      assertTrue(holds(m.casting(), c.inner()), c.name() + " begins outside the casting");
      double top = e.options.pour() == Pour.SEAM ? box.y1() : box.z1();
      double end = e.options.pour() == Pour.SEAM ? c.outer().y() : c.outer().z();
      assertEquals(top, end, 1e-9, c.name() + " ends at the outside");
      for (int i = 0; i + 1 < c.stations().size(); i++) {
        Vec3 a = c.stations().get(i).center();
        Vec3 b = c.stations().get(i + 1).center();
        Vec3 p = a.plus(b.minus(a).times(0.5));
        for (Piece piece : m.pieces()) {
          assertFalse(holds(piece.mesh(), p), c.name() + " is blocked by " + piece.name());
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theCastingIsTheModelScaledForShrinkOnEachAxis(Example e) {
    MoldPlan plan = e.mold.plan();
    TriMesh casting = e.mold.casting();
    double[] back = new double[casting.xyz().length];
    for (int i = 0; i < casting.vertexCount(); i++) {
      Vec3 p = plan.frame().axes().toWorld(casting.vertex(i).plus(plan.frame().origin()));
      back[3 * i] = p.x();
      back[3 * i + 1] = p.y();
      back[3 * i + 2] = p.z();
    }
    Vec3 shrink = e.options.shrinkPercent();
    double own = plan.material().shrink().percent();
    Vec3 s = shrink == null ? new Vec3(own, own, own) : shrink;
    Vec3 was = e.model.bounds().size();
    Vec3 is = Box3.of(back).size();
    // a casting that shrinks by s from the cavity's length ends at the model's: L (1 - s) = L0
    assertEquals(was.x() / (1 - s.x() / 100), is.x(), 2e-5);
    assertEquals(was.y() / (1 - s.y() / 100), is.y(), 2e-5);
    assertEquals(was.z() / (1 - s.z() / 100), is.z(), 2e-5);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theCavityKeepsTheCastingsOwnVertices(Example e) {
    Mold m = e.mold;
    Set<Vec3> inPieces = new HashSet<>();
    for (Piece p : m.pieces()) {
      for (int i = 0; i < p.mesh().vertexCount(); i++) {
        inPieces.add(p.mesh().vertex(i));
      }
    }
    int kept = 0;
    for (int i = 0; i < m.casting().vertexCount(); i++) {
      Vec3 v = FloatGrid.snap(m.casting()).vertex(i);
      if (clearOfChannels(m, v)) {
        assertTrue(inPieces.contains(v), "the cavity lost the vertex " + v);
        kept++;
      }
    }
    assertTrue(kept > 0.6 * m.casting().vertexCount());
  }

  private static boolean clearOfChannels(Mold m, Vec3 v) {
    for (Channel c : m.plan().pour().channels()) {
      for (Channel.Station s : c.stations()) {
        if (v.minus(s.center()).length() < s.radius() + s.rise() + 2) {
          return false;
        }
      }
    }
    return true;
  }

  @ParameterizedTest
  @MethodSource("examples")
  void outsideAndClosingAreAsAsked(Example e) {
    MoldPlan plan = e.mold.plan();
    Feature.Kind kind =
        switch (e.options.closing()) {
          case BANDS -> Feature.Kind.BAND_GROOVE;
          case BOLTS -> Feature.Kind.BOLT_HOLE;
          case CLAMPS -> Feature.Kind.CLAMP_SEAT;
          case NONE -> throw new IllegalStateException("not among the examples");
        };
    for (Feature.Kind k :
        List.of(Feature.Kind.BAND_GROOVE, Feature.Kind.BOLT_HOLE, Feature.Kind.CLAMP_SEAT)) {
      long n = plan.features().stream().filter(f -> f.kind() == k).count();
      assertTrue(k == kind ? n >= 2 : n == 0, n + " of " + k);
    }
    assertEquals(2, plan.features().stream().filter(f -> f.kind() == Feature.Kind.MARK).count());
    var box = plan.block().box();
    double whole = (box.x1() - box.x0()) * (box.y1() - box.y0());
    double share = plan.block().outline().getArea() / whole;
    assertTrue(e.options.block() == BlockShape.BOX ? share == 1 : share < 0.995, "share " + share);
    if (e.options.wallMm() > 0) {
      assertEquals(e.options.wallMm(), plan.block().wallMm());
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void thePullAskedForIsThePullOfPieceOne(Example e) {
    MoldPlan plan = e.mold.plan();
    Vec3 pull = plan.frame().directionToModel(MoldPlan.PULL);
    Vec3 asked = e.options.pull() == null ? plan.survey().best().direction() : e.options.pull();
    assertEquals(1, pull.dot(asked.unit()), 1e-12);
  }

  /** Winding number by solid angles (van Oosterom and Strackee 1983): inside when above a half. */
  private static boolean holds(TriMesh mesh, Vec3 p) {
    double sum = 0;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      Vec3 a = mesh.vertex(mesh.tri()[3 * f]).minus(p);
      Vec3 b = mesh.vertex(mesh.tri()[3 * f + 1]).minus(p);
      Vec3 c = mesh.vertex(mesh.tri()[3 * f + 2]).minus(p);
      double la = a.length();
      double lb = b.length();
      double lc = c.length();
      double det = a.dot(b.cross(c));
      double div = la * lb * lc + a.dot(b) * lc + b.dot(c) * la + c.dot(a) * lb;
      sum += 2 * Math.atan2(det, div);
    }
    return sum > 2 * Math.PI;
  }
}
