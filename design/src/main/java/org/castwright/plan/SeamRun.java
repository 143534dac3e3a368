package org.castwright.plan;

import java.util.List;
import java.util.Locale;
import org.castwright.geom.Vec3;
import org.castwright.parting.Parting;

/**
 * Where the seam runs on the casting.
 *
 * @param method how the pieces were parted: stitch, boolean or division
 * @param flat whether the seam surface is one plane
 * @param wallHeight height of the seam surface at the block's side walls, mm; 0 if it has none
 * @param lines polylines of packed points, mold frame, mm
 * @param closed whether each of them closes on itself
 * @param steepestDeg steepest place of the seam surface between two main pieces, from the plane
 *     across their pull; 0 if there are none
 * @param measure its length on the casting
 */
public record SeamRun(
    String method,
    boolean flat,
    double wallHeight,
    List<double[]> lines,
    boolean closed,
    double steepestDeg,
    SeamMeasure measure) {

  /** What {@link #method} says of molds whose space was divided among pieces along any pulls. */
  static final String DIVISION = "division";

  /** Whether the mold's space was divided among pieces along any pulls. */
  public boolean divided() {
    return method.equals(DIVISION);
  }

  static SeamRun of(Parting p) {
    return new SeamRun(
        p.used().name().toLowerCase(Locale.ROOT),
        p.flat(),
        p.wallHeight(),
        p.seamLoops(),
        true,
        p.stats().maxSlopeDeg(),
        SeamMeasure.inSight(length(p.seamLoops())));
  }

  /** Length of closed lines together, mm. */
  private static double length(List<double[]> loops) {
    double sum = 0;
    for (double[] l : loops) {
      int n = l.length / 3;
      for (int i = 0; i < n; i++) {
        int a = 3 * i;
        int b = 3 * ((i + 1) % n);
        sum += new Vec3(l[b] - l[a], l[b + 1] - l[a + 1], l[b + 2] - l[a + 2]).length();
      }
    }
    return sum;
  }
}
