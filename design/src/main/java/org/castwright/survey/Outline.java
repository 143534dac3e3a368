package org.castwright.survey;

/**
 * Where the seam has to run: the columns at the rim of the shadow, holes included, with the heights
 * between which the seam may lie there.
 *
 * @param flatness how far the rim is from fitting one plane across the pull: highest lower surface
 *     minus lowest upper surface over the rim, zero when a plane fits, mm
 * @param level the middle of those two heights, mm along the view
 * @param steepness how steeply the seam has to rise somewhere along the rim, degrees from the plane
 *     across the pull
 */
record Outline(double flatness, double level, double steepness) {

  private static final int REACH = 8;
  // heights of columns closer than this differ by the pixel's own width, not by the seam's slope
  private static final int NEAR = 3;

  static Outline of(DepthImage image) {
    Raster r = image.raster();
    boolean[] rim = new boolean[r.columns()];
    double highest = Double.NEGATIVE_INFINITY;
    double lowest = Double.POSITIVE_INFINITY;
    for (int j = 1; j + 1 < r.ny(); j++) {
      for (int i = 1; i + 1 < r.nx(); i++) {
        int o = j * r.nx() + i;
        if (image.hit(o) && onRim(image, o, r.nx())) {
          rim[o] = true;
          highest = Math.max(highest, image.lower(o));
          lowest = Math.min(lowest, image.upper(o));
        }
      }
    }
    double flatness = Math.max(0, highest - lowest);
    double slope = flatness > 0 ? steepest(image, rim) : 0;
    return new Outline(flatness, (highest + lowest) / 2, Math.toDegrees(StrictMath.atan(slope)));
  }

  private static boolean onRim(DepthImage image, int o, int nx) {
    return !image.hit(o - 1) || !image.hit(o + 1) || !image.hit(o - nx) || !image.hit(o + nx);
  }

  private static double steepest(DepthImage image, boolean[] rim) {
    Raster r = image.raster();
    double worst = 0;
    for (int j = 0; j < r.ny(); j++) {
      for (int i = 0; i < r.nx(); i++) {
        if (!rim[j * r.nx() + i]) {
          continue;
        }
        for (int dj = 0; dj <= REACH && j + dj < r.ny(); dj++) {
          for (int di = dj == 0 ? 1 : -REACH; di <= REACH; di++) {
            int k = i + di;
            int far = di * di + dj * dj;
            if (k >= 0 && k < r.nx() && far >= NEAR * NEAR && rim[(j + dj) * r.nx() + k]) {
              double rise = rise(image, j * r.nx() + i, (j + dj) * r.nx() + k);
              worst = Math.max(worst, rise / Math.sqrt(far));
            }
          }
        }
      }
    }
    return worst / r.pixel();
  }

  private static double rise(DepthImage image, int a, int b) {
    return Math.max(image.lower(a) - image.upper(b), image.lower(b) - image.upper(a));
  }
}
