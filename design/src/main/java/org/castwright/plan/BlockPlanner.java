package org.castwright.plan;

import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * The block: as small as the wall, the keys, the closing features and the funnel allow. The margin
 * beside the casting grows from the wall until the places that keys and bolts need are there.
 */
final class BlockPlanner {

  private static final double STEP = 1;

  private final TriMesh casting;
  private final Sizes sizes;
  private final MoldOptions options;
  private final SprueRoom sprue;
  private final ShadowMap shadow;
  private final Geometry shadowOutline;

  BlockPlanner(TriMesh casting, Sizes sizes, MoldOptions options, SprueRoom sprue, double extra) {
    this.casting = casting;
    this.sprue = sprue;
    this.sizes = sizes;
    this.options = options;
    double reach = mostMargin() + extra + 2 * sizes.mouth() + 10 + sprue.below();
    double cell = Math.max(0.25, casting.bounds().longestSide() / 400);
    this.shadow = ShadowMap.of(casting, reach, cell);
    this.shadowOutline = options.block() == BlockShape.CONTOUR ? Outline.shadow(shadow) : null;
  }

  /**
   * @param extra added to the margin beside the casting, when an earlier try lacked flat ground, mm
   */
  BlockPlan plan(double extra) {
    double margin = sizes.wall();
    while (margin < mostMargin() && !roomy(block(margin))) {
      margin += STEP;
    }
    return block(margin + extra);
  }

  /** With this margin a key fits anywhere beside the casting. */
  private double mostMargin() {
    return sizes.keyDiameter() + 2 * (sizes.keyGap() + options.clearance()) + STEP;
  }

  private boolean roomy(BlockPlan block) {
    Room room = new Room(new FlatGround(shadow), block.outline());
    BlockBox b = block.box();
    // keep the gate's way free: it leaves at the top middle
    room.take((b.x0() + b.x1()) / 2, b.y1(), sizes.mouth() / 2 + 2);
    double d = sizes.keyDiameter();
    double r = d / 2 + options.clearance();
    int keys = options.keyCount() > 0 ? options.keyCount() : 4;
    List<double[]> picked = Spread.pick(room.places(r, sizes.keyGap(), 2), keys, 2 * d);
    boolean wide = spans(picked, b);
    picked.forEach(p -> room.take(p[0], p[1], r));
    if (options.closing() == Closing.BOLTS) {
      double bolt = FeaturePlanner.boltHole(b) / 2;
      return wide && Spread.pick(room.places(bolt, 3, 2), 4, 8 * bolt).size() >= 4;
    }
    return wide && picked.size() >= keys;
  }

  /** Keys must reach over most of the block, or the far side is not held. */
  private static boolean spans(List<double[]> picked, BlockBox b) {
    double x0 = picked.stream().mapToDouble(p -> p[0]).min().orElse(0);
    double x1 = picked.stream().mapToDouble(p -> p[0]).max().orElse(0);
    double y0 = picked.stream().mapToDouble(p -> p[1]).min().orElse(0);
    double y1 = picked.stream().mapToDouble(p -> p[1]).max().orElse(0);
    return x1 - x0 > 0.5 * (b.x1() - b.x0()) && y1 - y0 > 0.5 * (b.y1() - b.y0());
  }

  private BlockPlan block(double margin) {
    Box3 c = casting.bounds();
    double funnel = sizes.funnelHeight(sizes.mouth());
    boolean standing = options.pour() == Pour.SEAM;
    double top = standing ? Math.max(margin, 4 + funnel) : margin;
    double low = Math.max(sizes.wall(), sizes.gate() / 2 + 4);
    BlockBox box =
        new BlockBox(
            out(c.min().x() - Math.max(margin, sprue.left()), -1),
            out(c.min().y() - Math.max(margin, sprue.below()), -1),
            out(c.max().x() + Math.max(margin, sprue.right()), 1),
            out(c.max().y() + top, 1),
            out(c.min().z() - low, -1),
            out(c.max().z() + low, 1));
    Polygon outline = Outline.of(options.block(), box, shadowOutline, margin);
    return new BlockPlan(options.block(), outline, box, sizes.wall());
  }

  /** Rounded outward to half millimeters, which floats hold exactly. */
  static double out(double v, int sign) {
    return sign > 0 ? Math.ceil(2 * v) / 2 : Math.floor(2 * v) / 2;
  }

  /** Level ground beside a shadow, before there is a seam. */
  private record FlatGround(ShadowMap shadow) implements Ground {
    @Override
    public double heightAt(double x, double y) {
      return shadow.distanceAt(x, y) > 0 ? 0 : Double.NaN;
    }

    @Override
    public double roofAt(double x, double y) {
      return shadow.distanceAt(x, y) > 0 ? Double.NaN : 0;
    }

    @Override
    public double undersideAt(double x, double y) {
      return roofAt(x, y);
    }

    @Override
    public double shadowDistance(double x, double y) {
      return Math.max(0, shadow.distanceAt(x, y) - shadow.cell());
    }
  }
}
