package org.castwright.heat;

/**
 * Cooling or heating of a slab, a long cylinder or a sphere by a fluid, by the first term of its
 * series: the share of the temperature difference left at the center is {@code a1 · exp(-λ² Fo)},
 * good to about 1 % from a Fourier number of 0.2 on. Equations of λ: Çengel, Heat and Mass
 * Transfer, chapter 4 (λ tan λ = Bi; λ J1 = Bi J0; 1 − λ cot λ = Bi).
 *
 * @param shape the body
 * @param biot h L / k with L the half thickness or the radius, never volume over area
 * @param lambda first root
 * @param a1 factor of the first term
 */
public record OneTerm(Shape shape, double biot, double lambda, double a1) {

  /** Bodies with a series in one coordinate. */
  public enum Shape {
    SLAB,
    CYLINDER,
    SPHERE
  }

  /** From this Fourier number on the first term alone is good to about 1 %. */
  public static final double LEAST_FOURIER = 0.2;

  private static final double M_PER_MM = 1e-3;
  private static final double FIRST_ZERO_OF_J0 = 2.404825557695773;

  /**
   * The constants for a Biot number.
   *
   * @param biot above 0; infinite for a surface held at the fluid's temperature
   * @throws IllegalArgumentException if it is not above 0
   */
  public static OneTerm of(Shape shape, double biot) {
    if (!(biot > 0)) {
      throw new IllegalArgumentException("a Biot number is above 0, not " + biot);
    }
    double inverse = 1 / biot;
    return switch (shape) {
      case SLAB -> {
        double x =
            Functions.root(
                l -> inverse * l * StrictMath.sin(l) - StrictMath.cos(l), 0, Math.PI / 2);
        yield new OneTerm(shape, biot, x, 4 * StrictMath.sin(x) / (2 * x + StrictMath.sin(2 * x)));
      }
      case CYLINDER -> {
        double x =
            Functions.root(
                l -> inverse * l * Functions.bessel(1, l) - Functions.bessel(0, l),
                0,
                FIRST_ZERO_OF_J0);
        double j0 = Functions.bessel(0, x);
        double j1 = Functions.bessel(1, x);
        yield new OneTerm(shape, biot, x, 2 / x * j1 / (j0 * j0 + j1 * j1));
      }
      case SPHERE -> {
        double x =
            Functions.root(
                l -> (inverse - 1) * StrictMath.sin(l) - inverse * l * StrictMath.cos(l),
                1e-9,
                Math.PI);
        yield new OneTerm(
            shape,
            biot,
            x,
            4 * (StrictMath.sin(x) - x * StrictMath.cos(x)) / (2 * x - StrictMath.sin(2 * x)));
      }
    };
  }

  /** The share of the first difference to the fluid that is left at the center. */
  public double centerShare(double fourier) {
    return a1 * StrictMath.exp(-lambda * lambda * fourier);
  }

  /** The Fourier number at which that share is left at the center. */
  public double fourier(double centerShare) {
    return StrictMath.log(a1 / centerShare) / (lambda * lambda);
  }

  /**
   * The time until the center comes to a temperature, s.
   *
   * @param halfMm half thickness or radius, mm
   * @param k conductivity, W/(m K)
   * @param diffusivity m²/s
   * @param h coefficient of the surface, W/(m² K)
   * @param startC temperature at the start, °C
   * @param fluidC temperature of the fluid, °C
   * @param centerC temperature asked for, °C, between the two
   * @throws IllegalArgumentException if it is not between the two
   */
  public static double timeS(
      Shape shape,
      double halfMm,
      double k,
      double diffusivity,
      double h,
      double startC,
      double fluidC,
      double centerC) {
    double share = (centerC - fluidC) / (startC - fluidC);
    if (!(share > 0 && share < 1)) {
      throw new IllegalArgumentException(
          centerC + " °C is not between " + startC + " °C and " + fluidC + " °C");
    }
    double half = halfMm * M_PER_MM;
    return of(shape, h * half / k).fourier(share) * half * half / diffusivity;
  }
}
