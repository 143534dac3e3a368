package org.castwright.heat;

/**
 * The numbers of one run: what the ranges of casting, wall and surroundings come to at one corner.
 *
 * @param substances by kind of cell
 * @param surfaces coefficients
 * @param pourC temperature of the casting at the start, °C
 * @param moldC of the mold at the start, °C
 * @param kinetics null when nothing reacts
 * @param reactionPerM3 heat of the whole reaction, J/m³
 */
@SuppressWarnings("ArrayRecordComponent") // four entries, never compared
record Ingredients(
    Substance[] substances,
    Surfaces surfaces,
    double pourC,
    double moldC,
    Kinetics kinetics,
    double reactionPerM3) {

  /** Shares set at the end of the working time and at demolding: common practice, no source. */
  static final double WORK_SHARE = 0.1;

  static final double DEMOLD_SHARE = 0.9;

  /** Temperature for which suppliers state times: common practice, no source. */
  private static final double REFERENCE_C = 23;

  private static final double S_PER_MIN = 60;
  private static final double J_PER_KJ = 1000;

  static Ingredients of(
      ThermalMaterial casting, MoldWall wall, HeatOptions options, Corner corner) {
    Setting setting = casting.setting();
    double moldC = options.moldC() == null ? options.airC() : options.moldC();
    double pour =
        options.pourC() != null
            ? options.pourC()
            : setting == Setting.REACTION
                ? corner.hastening(casting.pourC())
                : corner.slowing(casting.pourC());
    Substance[] s = new Substance[4];
    s[Voxels.CASTING] = casting(casting, corner, options.airC());
    if (setting == Setting.FREEZING) {
      // what is poured at its melting point is liquid
      pour = Math.max(pour, s[Voxels.CASTING].solidusC());
    }
    MoldMaterial m = wall.material();
    double k = corner.draining(m.k(), setting);
    double heat = corner.slowing(m.heatCapacity()) * m.density().middle();
    s[Voxels.WALL] = Substance.plain(heat, k, moldC);
    s[Voxels.INFILL] =
        Substance.plain(heat * wall.infill(), MoldWall.withAir(k, wall.infill()), moldC);
    Surfaces surfaces = Surfaces.even(corner.draining(options.air(), setting), options.contact());
    if (setting != Setting.REACTION) {
      return new Ingredients(s, surfaces, pour, moldC, null, 0);
    }
    Kinetics kinetics =
        Kinetics.through(
            (int) casting.order().low(),
            corner.slowing(casting.workMin()) * S_PER_MIN,
            WORK_SHARE,
            corner.slowing(casting.demoldMin()) * S_PER_MIN,
            DEMOLD_SHARE,
            REFERENCE_C,
            casting.activationKJPerMol() == null
                ? 0
                : Kinetics.activationK(casting.activationKJPerMol().middle()));
    double reaction =
        corner.hastening(casting.reactionKJPerKg()) * J_PER_KJ * casting.solidDensity().middle();
    return new Ingredients(s, surfaces, pour, moldC, kinetics, reaction);
  }

  /**
   * The temperature that the surface of a full wall takes in the moment of contact, °C; that of the
   * mold where there is a gap.
   */
  double contactC() {
    Substance c = substances[Voxels.CASTING];
    Substance w = substances[Voxels.WALL];
    return surfaces.contact() < Double.POSITIVE_INFINITY
        ? moldC
        : Contact.celsius(
            pourC,
            Contact.effusivity(c.liquidK(), c.liquidHeat()),
            moldC,
            Contact.effusivity(w.solidK(), w.solidHeat()));
  }

  private static Substance casting(ThermalMaterial m, Corner corner, double airC) {
    Setting setting = m.setting();
    double solidDensity = m.solidDensity().middle();
    double liquidDensity = or(m.liquidDensity(), m.solidDensity()).middle();
    double solidK = corner.draining(m.solidK(), setting);
    double liquidK = corner.draining(or(m.liquidK(), m.solidK()), setting);
    double solidHeat = corner.slowing(m.solidHeatCapacity()) * solidDensity;
    double liquidHeat =
        corner.slowing(or(m.liquidHeatCapacity(), m.solidHeatCapacity())) * liquidDensity;
    return switch (setting) {
      case FREEZING -> {
        double solidus = corner.hastening(m.solidusC());
        double liquidus = Math.max(solidus, corner.hastening(m.liquidusC()));
        double melt =
            corner.slowing(m.latentKJPerKg()) * J_PER_KJ * solidDensity
                + (liquidus - solidus) * (solidHeat + liquidHeat) / 2;
        yield new Substance(solidus, liquidus, melt, solidHeat, liquidHeat, solidK, liquidK);
      }
      case COOLING -> {
        double sets = corner.hastening(m.solidusC());
        yield new Substance(sets, sets, 0, solidHeat, liquidHeat, solidK, liquidK);
      }
      default -> Substance.plain(solidHeat, solidK, airC);
    };
  }

  private static Figure or(Figure f, Figure otherwise) {
    return f == null ? otherwise : f;
  }
}
