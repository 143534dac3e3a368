package org.castwright.pour;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;

/**
 * A wall of a block, as a plate as large as the casting behind it. The two across the main pull, z,
 * are whole: clamped and simply supported edges bound their bending. The others are halved by the
 * seam, where their edge is free.
 *
 * @param side such as {@code +z}, in the mold frame
 * @param held its edges, in words
 * @param shortMm short side
 * @param longMm long side
 * @param spanMm the side that the factors of bending go by
 * @param plate its factors
 * @param whole whether no seam runs along it; only then its stress is known
 */
public record BlockWall(
    String side,
    String held,
    double shortMm,
    double longMm,
    double spanMm,
    Plate plate,
    boolean whole) {

  /** A wall may give so much, mm; common practice, no source. */
  public static final double ALLOWED_MM = 0.2;

  /** A wall flatter than this against the free edge is shut off by the seam's own ground. */
  private static final double FLATTEST = 0.2;

  /**
   * All six.
   *
   * @param casting size of its box in the mold frame, mm
   */
  public static List<BlockWall> of(Vec3 casting, Elastic print) {
    List<BlockWall> out = new ArrayList<>();
    double nu = print.poisson();
    double s = Math.min(casting.x(), casting.y());
    double l = Math.max(casting.x(), casting.y());
    Plate clamped = Plate.clamped(l / s, nu);
    Plate simple = Plate.simple(l / s, nu);
    for (String side : List.of("+z", "-z")) {
      out.add(new BlockWall(side, "clamped", s, l, s, clamped, true));
      out.add(new BlockWall(side, "simply supported", s, l, s, simple, true));
    }
    halved("x", casting.y(), casting.z() / 2, nu, out);
    halved("y", casting.x(), casting.z() / 2, nu, out);
    return out;
  }

  private static void halved(
      String axis, double edge, double height, double poisson, List<BlockWall> out) {
    double factor = Plate.freeEdgeDeflection(Math.max(FLATTEST, height / edge), poisson);
    Plate plate = new Plate(factor, Double.NaN, Double.NaN, 0, 0, 0);
    double s = Math.min(edge, height);
    double l = Math.max(edge, height);
    for (String side : List.of("+" + axis, "-" + axis)) {
      out.add(new BlockWall(side, "free along the seam", s, l, edge, plate, false));
    }
  }

  /** The thickness, mm, at which it gives way by just {@link #ALLOWED_MM} under even pressure. */
  public double neededMm(Elastic print, double pressurePa) {
    return plate.thicknessMm(print, spanMm, ALLOWED_MM, pressurePa);
  }

  /** The thickness that no wall of a block gives way more with. */
  public static double thickestMm(Vec3 casting, Elastic print, double pressurePa) {
    return of(casting, print).stream()
        .mapToDouble(w -> w.neededMm(print, pressurePa))
        .max()
        .orElseThrow();
  }
}
