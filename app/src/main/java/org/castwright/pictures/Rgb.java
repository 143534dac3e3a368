package org.castwright.pictures;

/** Arithmetic on colors packed as {@code 0xRRGGBB}. */
final class Rgb {

  private Rgb() {}

  static int of(int red, int green, int blue) {
    return red << 16 | green << 8 | blue;
  }

  static int red(int rgb) {
    return rgb >> 16 & 0xff;
  }

  static int green(int rgb) {
    return rgb >> 8 & 0xff;
  }

  static int blue(int rgb) {
    return rgb & 0xff;
  }

  /** {@code from} at share 0, {@code to} at share 1. */
  static int mix(int from, int to, double share) {
    return of(
        channel(red(from) + (red(to) - red(from)) * share),
        channel(green(from) + (green(to) - green(from)) * share),
        channel(blue(from) + (blue(to) - blue(from)) * share));
  }

  /** Every channel times {@code factor} plus {@code gleam}, held within 0 to 255. */
  static int lit(int rgb, double factor, double gleam) {
    return of(
        channel(red(rgb) * factor + gleam),
        channel(green(rgb) * factor + gleam),
        channel(blue(rgb) * factor + gleam));
  }

  private static int channel(double value) {
    return value <= 0 ? 0 : value >= 255 ? 255 : (int) (value + 0.5);
  }
}
