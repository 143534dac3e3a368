package org.castwright.pictures;

/**
 * The cividis color map: evenly lighter from blue to yellow, and nearly the same to eyes with a
 * red-green deficiency. Source: J. R. Nuñez, C. R. Anderton, R. S. Renslow, "Optimizing colormaps
 * with consideration for color vision deficiency to enable accurate interpretation of scientific
 * data", PLoS ONE 13(7): e0199239, 2018. Rows of its published table of 256 are the anchors;
 * between them the channels are interpolated linearly.
 */
final class Cividis {

  private static final double LAST_ROW = 255;

  /** Row of the published table, red, green, blue (0 to 1); closer where the table bends. */
  private static final double[][] ANCHORS = {
    {0, 0.000000, 0.135112, 0.304751},
    {19, 0.000000, 0.186915, 0.435532},
    {23, 0.003602, 0.195911, 0.441564},
    {28, 0.068968, 0.209372, 0.438863},
    {34, 0.117612, 0.225935, 0.434308},
    {51, 0.208926, 0.272546, 0.424809},
    {68, 0.279411, 0.318677, 0.423031},
    {85, 0.342246, 0.364939, 0.428559},
    {102, 0.401418, 0.411790, 0.440708},
    {119, 0.458366, 0.459552, 0.460457},
    {136, 0.517920, 0.508454, 0.472707},
    {153, 0.582087, 0.558670, 0.468118},
    {170, 0.648222, 0.610553, 0.454801},
    {187, 0.716177, 0.664384, 0.432386},
    {204, 0.785965, 0.720438, 0.399613},
    {221, 0.857809, 0.778969, 0.353259},
    {238, 0.932180, 0.840159, 0.285880},
    {251, 0.992218, 0.888385, 0.205468},
    {255, 0.995737, 0.909344, 0.217772},
  };

  private Cividis() {}

  /** The color at a share of the scale; shares outside 0 to 1 take the color of the end. */
  static int rgb(double share) {
    double row = LAST_ROW * Math.min(1, Math.max(0, share));
    int i = 1;
    while (i < ANCHORS.length - 1 && ANCHORS[i][0] < row) {
      i++;
    }
    double[] a = ANCHORS[i - 1];
    double[] b = ANCHORS[i];
    double t = (row - a[0]) / (b[0] - a[0]);
    int[] channel = new int[3];
    for (int k = 0; k < 3; k++) {
      channel[k] = (int) Math.round(255 * (a[k + 1] + t * (b[k + 1] - a[k + 1])));
    }
    return Rgb.of(channel[0], channel[1], channel[2]);
  }
}
