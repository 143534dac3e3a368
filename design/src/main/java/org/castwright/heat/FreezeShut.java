package org.castwright.heat;

/**
 * How long a bore or slit full of melt stays open in a wall, at least. Two bounds are added: the
 * time that the frozen layer's own resistance takes with a wall that stays cold (Plank), and the
 * time in which a wall without that layer could take up the heat at most, its face at the melting
 * point ({@code q = k ΔT (1/√(π α t) + 1/(2R))}, the first two terms about a round bore: Carslaw
 * and Jaeger, Conduction of Heat in Solids, 2nd ed., 13.5; for a flat wall the first alone, which
 * is the ground of Chvorinov's rule). The sum is a lower bound: what the wall has taken up by the
 * time t is no more than it would in {@code ∫θ dt} with the full fall of temperature, where θ is
 * the wall's share of that fall; the rest of t is the layer's share, which is Plank's time. Of what
 * sets by cooling alone the greater of two such bounds counts: the time of its middle with its face
 * held as cold as the wall, and that of a wall that takes up the heat of it all.
 *
 * <p>All that is left out keeps the channel open longer: heat of the liquid above its melting
 * point, fresh liquid that flows in, heat that the frozen layer stores, gaps at the wall, infill.
 * Heat must not have come through the wall: times are cut off at {@code d²/(4α)}, when a wall of
 * thickness d cooled from outside takes up 4 % more than an endless one.
 *
 * @param shape what closes
 * @param layerS the part of the frozen layer, s
 * @param wallS the part of the wall, s
 * @param kept share of both after which heat has come through the wall, 1 if it never does before
 */
public record FreezeShut(Shape shape, double layerS, double wallS, double kept) {

  /** What closes. */
  public enum Shape {
    /** Between two flat walls, its width the gap. */
    SLIT(Plank.SLAB, 1.0 / 2, 4 / Math.PI, Math.PI / 2, 4 / (3 * Math.PI), 3 * Math.PI / 2),
    /** A round channel, its width the diameter. */
    BORE(Plank.CYLINDER, 1.0 / 4, 1.601975, 2.404826, 1.064799, 5.520078);

    private final Plank plank;

    /** Volume over surface, in widths. */
    private final double modulus;

    private final double first;
    private final double slow;
    private final double second;
    private final double fast;

    Shape(Plank plank, double modulus, double first, double slow, double second, double fast) {
      this.plank = plank;
      this.modulus = modulus;
      this.first = first;
      this.slow = slow * slow;
      this.second = second;
      this.fast = fast * fast;
    }

    /**
     * Fourier number at which the middle has this share left of its first difference to a face held
     * at one temperature, from below: the first two terms of the series (Carslaw and Jaeger, 3.3
     * and 7.6), of which the second is taken off and the third left out.
     */
    private double fourier(double share) {
      double peak = StrictMath.log(second * fast / (first * slow)) / (fast - slow);
      return left(peak) <= share ? 0 : Functions.root(f -> left(f) - share, peak, peak + LATEST);
    }

    private double left(double fourier) {
      return first * StrictMath.exp(-slow * fourier) - second * StrictMath.exp(-fast * fourier);
    }
  }

  /**
   * A melt in a wall.
   *
   * @param heatPerM3 heat to take from it until it is solid, J/m³
   * @param meltC where it begins to freeze, or its temperature at the pour if it sets by cooling,
   *     °C
   * @param setsC where it is firm, °C; the same as {@code meltC} for what freezes by latent heat
   * @param k conductivity of the frozen layer, or of what cools, W/(m K)
   * @param wallK conductivity of the wall, W/(m K)
   * @param wallHeatPerM3 heat capacity of the wall, J/(m³ K)
   * @param wallC temperature of the wall at the pour, °C
   * @param wallMm thickness of the wall, mm; infinite for an endless one
   */
  public record Chill(
      double heatPerM3,
      double meltC,
      double setsC,
      double k,
      double wallK,
      double wallHeatPerM3,
      double wallC,
      double wallMm) {

    /**
     * The ends of all ranges that freeze soonest. A melt poured within its melting range has only
     * the rest of its latent heat; what sets without latent heat has that of cooling from the pour
     * to its setting, with the wall's face as hot as the pour.
     *
     * @return null for what neither freezes nor stiffens by cooling
     * @throws IllegalArgumentException if a figure is missing
     */
    public static Chill of(ThermalMaterial m, MoldMaterial wall, double wallC, double wallMm) {
      if (m.setting() != Setting.FREEZING && m.setting() != Setting.COOLING) {
        return null;
      }
      if (!m.missing().isEmpty() || !wall.missing().isEmpty()) {
        throw new IllegalArgumentException("figures of " + m.name() + " or its mold are missing");
      }
      double k = wall.k().high();
      double capacity = wall.heatCapacity().high() * wall.density().high();
      double density = m.solidDensity().low();
      if (m.liquidDensity() != null) {
        density = Math.min(density, m.liquidDensity().low());
      }
      double solidus = m.solidusC().high();
      double inside = Math.max(m.solidK().high(), m.liquidK() == null ? 0 : m.liquidK().high());
      if (m.setting() == Setting.COOLING) {
        double pour = m.pourC().low();
        double heat = density * m.solidHeatCapacity().low() * Math.max(0, pour - solidus);
        return new Chill(heat, pour, solidus, inside, k, capacity, wallC, wallMm);
      }
      double liquidus = Math.max(solidus, m.liquidusC().high());
      double pour = Math.min(liquidus, Math.max(solidus, m.pourC().low()));
      double left = liquidus > solidus ? (pour - solidus) / (liquidus - solidus) : 1;
      double melt = left * m.latentKJPerKg().low() * J_PER_KJ * density;
      return new Chill(melt, pour, pour, m.solidK().high(), k, capacity, wallC, wallMm);
    }
  }

  /** Fourier number at which nothing is left to the last digit. */
  private static final double LATEST = 20;

  private static final double J_PER_KJ = 1000;
  private static final double M_PER_MM = 1e-3;

  /** Share of d²/α until which a wall of thickness d takes up heat like an endless one. */
  private static final double THROUGH = 0.25;

  /**
   * The bound for a channel.
   *
   * @param widthMm gap or diameter, mm
   * @param c the melt and its wall; one that is no colder than the melt never shuts it
   */
  public static FreezeShut of(Shape shape, double widthMm, Chill c) {
    double fall = c.meltC() - c.wallC();
    if (!(c.setsC() > c.wallC())) {
      return new FreezeShut(shape, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 1);
    }
    // a t + b √t = heat on each m² of wall
    double heat = c.heatPerM3() * shape.modulus * widthMm * M_PER_MM;
    double b = 2 * fall * Contact.effusivity(c.wallK(), c.wallHeatPerM3()) / Math.sqrt(Math.PI);
    double a = shape == Shape.BORE ? fall * c.wallK() / (widthMm * M_PER_MM) : 0;
    double root = 2 * heat / (b + Math.sqrt(b * b + 4 * a * heat));
    double wall = root * root;
    double layer = layerS(shape, widthMm, c);
    if (c.setsC() < c.meltC()) {
      layer = layer < wall ? 0 : layer;
      wall = layer > 0 ? 0 : wall;
    }
    double thick = c.wallMm() * M_PER_MM;
    double through = THROUGH * thick * thick * c.wallHeatPerM3() / c.wallK();
    return new FreezeShut(shape, layer, wall, Math.min(1, through / (layer + wall)));
  }

  /** The time that the channel's own resistance takes in a wall that stays cold, s. */
  private static double layerS(Shape shape, double widthMm, Chill c) {
    if (c.setsC() == c.meltC()) {
      return shape.plank.timeS(
          c.heatPerM3(), 1, c.k(), Double.POSITIVE_INFINITY, widthMm, c.meltC(), c.wallC());
    }
    double capacity = c.heatPerM3() / (c.meltC() - c.setsC());
    double half = widthMm / 2 * M_PER_MM;
    double left = (c.setsC() - c.wallC()) / (c.meltC() - c.wallC());
    return shape.fourier(left) * half * half * capacity / c.k();
  }

  /** Frozen shut no sooner than this, s. */
  public double shutS() {
    return kept < 1 ? kept * (layerS + wallS) : layerS + wallS;
  }

  /**
   * The time of flow through the open channel that is worth what gets through at least while it
   * narrows, s. Friction lets a bore pass as the square of its open section A and a slit creep as
   * the square of its gap; what only its own speed holds back passes as the section. With {@code t
   * = 1 − A + A ln A} for a layer in a bore and {@code A = 1 − √t} otherwise these are the
   * integrals over A.
   *
   * @param friction whether friction rules the flow
   */
  public double passesS(boolean friction) {
    if (layerS + wallS == Double.POSITIVE_INFINITY) {
      return Double.POSITIVE_INFINITY;
    }
    double wall = friction ? wallS / 6 : wallS / 3;
    double layer =
        shape == Shape.SLIT
            ? (friction ? layerS / 6 : layerS / 3)
            : (friction ? layerS / 9 : layerS / 4);
    return kept * (wall + layer);
  }
}
