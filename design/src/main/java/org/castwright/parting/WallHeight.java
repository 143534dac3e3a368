package org.castwright.parting;

/** Chooses the height at which a sheet that is no plane meets the block's walls. */
final class WallHeight {

  private WallHeight() {}

  /**
   * The height closest to {@code typical} that the sheet can reach from every seam point without
   * exceeding the slope before it comes to the ring; the middle of what the worst points ask for if
   * there is none. An exact float, mm.
   */
  static double of(Seam outline, BlockBox box, double ringMm, double slope, double typical) {
    double lo = Double.NEGATIVE_INFINITY;
    double hi = Double.POSITIVE_INFINITY;
    double[] p = outline.plan;
    for (int i = 0; i < outline.planPoints(); i++) {
      double x = p[2 * i];
      double y = p[2 * i + 1];
      double d =
          Math.min(Math.min(x - box.x0(), box.x1() - x), Math.min(y - box.y0(), box.y1() - y));
      double reach = slope * Math.max(0, d - ringMm);
      double z = outline.z(i);
      lo = Math.max(lo, z - reach);
      hi = Math.min(hi, z + reach);
    }
    double h = lo > hi ? (lo + hi) / 2 : Math.max(lo, Math.min(hi, typical));
    return (float) Math.max(box.z0() + 1, Math.min(box.z1() - 1, h));
  }
}
