package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * Grooves for rubber bands round the block, across y. Sizes are common practice, no source.
 *
 * @param features one for each groove
 * @param strips lower and upper y of each, mm
 */
record BandGrooves(List<Feature> features, List<double[]> strips) {

  private static final double PAST = FeaturePlanner.PAST;
  private static final double WIDTH = 8;
  private static final double DEPTH = 1.5;

  /** A block higher than this gets a third band, mm. */
  private static final double HIGH = 200;

  /** Shifts of a groove tried, mm, nearest first. */
  private static final double[] SHIFTS = {0, 2, -2, 4, -4, 6, -6, 8, -8, 10, -10};

  /** Evenly spaced, whatever pieces meet there. */
  static BandGrooves of(BlockPlan block) {
    return of(block, y -> 0);
  }

  /**
   * Shifted to where they leave least thin.
   *
   * @param thin how much of a seam runs along an edge of a groove at such a height, mm
   */
  static BandGrooves of(BlockPlan block, DoubleUnaryOperator thin) {
    BlockBox box = block.box();
    double height = box.y1() - box.y0();
    double depth = Math.min(DEPTH, block.wallMm() / 3);
    Geometry inset = block.outline().buffer(-depth);
    List<Feature> features = new ArrayList<>();
    List<double[]> strips = new ArrayList<>();
    int n = height > HIGH ? 3 : 2;
    for (int i = 0; i < n; i++) {
      double y = best(box.y0() + height * (i + 1.0) / (n + 1), thin);
      double y0 = y - WIDTH / 2;
      double y1 = y + WIDTH / 2;
      strips.add(new double[] {y0, y1});
      Polygon strip = Outline.rectangle(box.x0() - PAST, y0, box.x1() + PAST, y1);
      List<TriMesh> tools =
          new ArrayList<>(
              FeaturePlanner.prisms(strip.difference(inset), box.z0() - PAST, box.z1() + PAST));
      tools.add(slab(box, y0, y1, box.z0() - PAST, box.z0() + depth));
      tools.add(slab(box, y0, y1, box.z1() - depth, box.z1() + PAST));
      features.add(new Feature("band-" + (i + 1), Feature.Kind.BAND_GROOVE, 0, tools));
    }
    return new BandGrooves(features, strips);
  }

  private static double best(double y, DoubleUnaryOperator thin) {
    double best = y;
    double least = Double.POSITIVE_INFINITY;
    for (double shift : SHIFTS) {
      double at = y + shift;
      double t = thin.applyAsDouble(at - WIDTH / 2) + thin.applyAsDouble(at + WIDTH / 2);
      if (t < least) {
        least = t;
        best = at;
      }
    }
    return best;
  }

  private static TriMesh slab(BlockBox box, double y0, double y1, double z0, double z1) {
    return Primitives.box(new Vec3(box.x0() - PAST, y0, z0), new Vec3(box.x1() + PAST, y1, z1));
  }
}
