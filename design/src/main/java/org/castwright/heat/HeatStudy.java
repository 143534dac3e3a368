package org.castwright.heat;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * Cools or cures a casting in its mold, on a grid over the block: heat flows through casting, wall
 * and the air's film, melts give off their latent heat, mixes their reaction heat. What stands in
 * gate and vents counts as casting. Seams are not in the grid, and pieces count as one block.
 */
public final class HeatStudy {

  /** The grid of the band has this share of the cells. */
  private static final double BAND_CELLS = 0.1;

  private static final int FEWEST_BAND_CELLS = 8000;

  /** Share of the whole work that the band takes, for the progress. */
  private static final double BAND_WORK = 0.3;

  /** Rounding of mold-frame coordinates, as a share of the block's size. */
  private static final double TOUCHING = 1e-6;

  /**
   * A mix that may come to this temperature can smoke, crack or warp its mold, °C: common practice,
   * no source.
   */
  private static final double OVERHEATED_C = 100;

  private static final double HOUR_S = 3600;

  /** A casting whose volume over surface is less than this many cells has walls of few cells. */
  private static final double THIN = 1.5;

  private final TriMesh casting;
  private final TriMesh liquid;
  private final Box3 block;
  private final ThermalMaterial material;
  private final MoldWall wall;
  private final HeatOptions options;
  private final Progress progress;

  private HeatStudy(
      Poured poured,
      Box3 block,
      ThermalMaterial material,
      MoldWall wall,
      HeatOptions options,
      Progress progress) {
    this.casting = poured.casting();
    this.liquid = poured.all();
    this.block = block;
    this.material = material;
    this.wall = wall;
    this.options = options;
    this.progress = progress;
  }

  /**
   * Computes how a casting cools or cures.
   *
   * @param poured the casting and what stands in its channels
   * @param block box of the mold round it, mold frame, mm
   * @param material what is poured
   * @param wall what the mold is made of
   * @throws IllegalArgumentException if figures are missing, the casting reaches out of the block
   *     or is lost between the cells, or it can never set in that air
   * @throws Progress.CancelledException if the person has asked to stop
   */
  public static HeatResult of(
      Poured poured,
      Box3 block,
      ThermalMaterial material,
      MoldWall wall,
      HeatOptions options,
      Progress progress) {
    HeatStudy study = new HeatStudy(poured, block, material, wall, options, progress);
    study.check();
    return study.run();
  }

  private void check() {
    List<String> missing = new ArrayList<>();
    material.missing().forEach(m -> missing.add("the " + m + " of " + material.name()));
    wall.material()
        .missing()
        .forEach(m -> missing.add("the " + m + " of " + wall.material().name()));
    if (!missing.isEmpty()) {
      String words = String.join(" ", material.notes());
      throw new IllegalArgumentException(
          "heat cannot be computed without "
              + String.join(", ", missing)
              + (words.isEmpty() ? "" : ". " + words));
    }
    double touching = TOUCHING * block.diagonal();
    Box3 box = casting.bounds();
    Vec3 low = box.min().minus(block.min());
    Vec3 high = block.max().minus(box.max());
    if (Math.min(least(low), least(high)) < -touching) {
      throw new IllegalArgumentException(
          "the casting reaches out of the block: " + box + " in " + block);
    }
    if (material.setting() != Setting.REACTION) {
      double sets = material.solidusC().low();
      if (options.airC() >= sets) {
        throw new IllegalArgumentException(
            material.name()
                + " sets at "
                + sets
                + " °C and can never do so in air of "
                + options.airC()
                + " °C: choose colder air");
      }
      if (options.pourC() != null && options.pourC() < material.solidusC().high()) {
        throw new IllegalArgumentException(
            material.name()
                + " is not liquid at "
                + options.pourC()
                + " °C: pour it hotter than "
                + material.solidusC().high()
                + " °C");
      }
    }
  }

  private static double least(Vec3 v) {
    return Math.min(v.x(), Math.min(v.y(), v.z()));
  }

  private HeatResult run() {
    Cells cells = Cells.over(block, options.cells());
    List<String> notes = new ArrayList<>(material.notes());
    notes.addAll(wall.material().notes());
    try (Crew crew = new Crew(options.threads())) {
      double share = options.band() ? BAND_WORK : 0;
      Band band = options.band() ? band(crew, share) : null;
      Run main = run(cells, Corner.MIDDLE, crew, part(share, 1));
      addNotes(cells, main, band, notes);
      return result(cells, main, band, notes);
    }
  }

  private void addNotes(Cells cells, Run main, Band band, List<String> notes) {
    if (Chvorinov.modulusMm(casting) < THIN * cells.meanEdgeMm()) {
      notes.add(
          String.format(
              Locale.ROOT,
              "The casting is thin for cells of %.1f mm: take more cells.",
              cells.meanEdgeMm()));
    }
    if (main.demoldS() == null) {
      notes.add(
          String.format(
              Locale.ROOT, "It does not set within %.0f hours.", options.longestS() / HOUR_S));
    }
    if (material.setting() != Setting.REACTION) {
      return;
    }
    notes.add(
        "The speed of setting is fitted to working time and time to demold as if held at room"
            + " temperature, which errs on the hot side (common practice, no source).");
    double hottest = main.watch().peakC() + (band == null ? 0 : band.hotterK);
    if (hottest >= OVERHEATED_C) {
      notes.add(
          String.format(
              Locale.ROOT,
              "The mix may reach %.0f °C and can smoke, crack or run away: keep to the section that"
                  + " its supplier allows, pour in layers, and follow its safety data sheet.",
              hottest));
    }
  }

  private HeatResult result(Cells cells, Run main, Band band, List<String> notes) {
    Watch watch = main.watch();
    boolean melt = material.setting() == Setting.FREEZING && main.demoldS() != null;
    return new HeatResult(
        material.id(),
        wall.material().id(),
        material.setting(),
        main.demoldS(),
        band == null ? null : times(main.demoldS(), band.least),
        band == null ? null : times(main.demoldS(), band.greatest),
        watch.peakC(),
        band == null ? null : watch.peakC() + band.hotterK,
        watch.peakPlace(),
        watch.peakS(),
        main.wall(wall.material().limit()),
        main.demoldS() == null ? null : main.last(),
        melt ? HotSpots.of(cells, watch.setS(), main.channels()) : List.of(),
        watch.samples(),
        cells.meanEdgeMm(),
        cells.inside(),
        main.steps(),
        main.sweeps() + (band == null ? 0 : band.sweeps),
        notes);
  }

  private static Double times(Double s, Double factor) {
    return s == null || factor == null ? null : (Double) (s * factor);
  }

  /**
   * Factors of the time to demold; null where it does not set in time. The fast end of a mix can be
   * the late one: it sets sooner and cools longer.
   */
  private record Band(Double least, Double greatest, double hotterK, long sweeps) {}

  private Band band(Crew crew, double share) {
    int count = (int) Math.max(FEWEST_BAND_CELLS, BAND_CELLS * options.cells());
    Cells cells = Cells.over(block, Math.min(count, options.cells()));
    Run middle = run(cells, Corner.MIDDLE, crew, part(0, share / 3));
    Run fast = run(cells, Corner.FAST, crew, part(share / 3, 2 * share / 3));
    Run slow = run(cells, Corner.SLOW, crew, part(2 * share / 3, share));
    double hottest = Math.max(fast.watch().peakC(), slow.watch().peakC());
    Double quick = over(fast.demoldS(), middle.demoldS());
    Double late = over(slow.demoldS(), middle.demoldS());
    boolean both = quick != null && late != null;
    return new Band(
        both ? (Double) Math.min(1, Math.min(quick, late)) : quick,
        both ? (Double) Math.max(1, Math.max(quick, late)) : null,
        Math.max(0, hottest - middle.watch().peakC()),
        middle.sweeps() + fast.sweeps() + slow.sweeps());
  }

  private static Double over(Double a, Double b) {
    return a == null || b == null || b == 0 ? null : (Double) (a / b);
  }

  private Progress part(double from, double to) {
    return (stage, share) -> progress.at(stage, from + (to - from) * share);
  }

  private Run run(Cells cells, Corner corner, Crew crew, Progress part) {
    double skin = wall.infill() < 1 ? wall.skinMm() : Double.POSITIVE_INFINITY;
    Voxels voxels = Voxels.of(liquid, cells, Voxels.WALL, skin);
    BitSet channels = voxels.outside(casting);
    if (channels.cardinality() == voxels.count(Voxels.CASTING)) {
      throw new IllegalArgumentException(
          "the casting is lost between cells of " + cells.meanEdgeMm() + " mm: take more cells");
    }
    Ingredients ingredients = Ingredients.of(material, wall, options, corner);
    Run run = new Run(voxels, channels, material, wall.material(), ingredients, options, crew);
    run.finish(part);
    return run;
  }
}
