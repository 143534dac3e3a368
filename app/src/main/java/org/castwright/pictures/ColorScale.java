package org.castwright.pictures;

/**
 * How numbers become colors: {@code low} is the dark blue end, {@code high} the yellow end, what
 * lies outside takes the color of the end. A value that is not a number takes the color apart,
 * which the scale bar shows under its own name.
 *
 * @param title what is measured, with its unit, written over the bar
 * @param apartName what "not a number" means here, such as "caught"; empty if it cannot happen
 * @param apartRgb its color
 */
public record ColorScale(String title, double low, double high, String apartName, int apartRgb) {

  public ColorScale {
    if (!(low < high) || Double.isInfinite(high - low)) {
      throw new IllegalArgumentException(
          "a color scale needs low below high: " + low + ", " + high);
    }
  }

  /** A scale for values that are always numbers. */
  public static ColorScale of(String title, double low, double high) {
    return new ColorScale(title, low, high, "", OkabeIto.VERMILLION.rgb());
  }

  /** The color of a value as {@code 0xRRGGBB}. */
  public int rgb(double value) {
    return Double.isNaN(value) ? apartRgb : Cividis.rgb((value - low) / (high - low));
  }
}
