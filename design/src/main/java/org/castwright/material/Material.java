package org.castwright.material;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * One class of casting material. The figures are starting points for a first test cast; each group
 * names its source.
 *
 * @param id short name for the command line, e.g. {@code plaster-pottery}
 * @param name name for people
 * @param shrink linear change from mold to casting, or null when the table knows none
 * @param density or null; of what is weighed out or leaves the mold; plaster loses water later and
 *     ends lighter
 * @param viscosityPaS at the pour, Pa·s, or null
 * @param gateMm bore of the gate's throat, mm
 * @param ventMm bore of a vent, mm
 * @param headMm height of the pour above the cavity, mm
 * @param demoldStrain strain the set casting takes without harm
 * @param pourC lowest and highest usual temperature at the pour, °C
 * @param workingTimeMin shortest and longest usual working time, minutes, or null for a melt
 * @param demoldTimeMin shortest and longest usual time to the opening, minutes
 * @param cautions texts, already looked up
 * @param notes one sentence for the job sheet
 * @param figures what else the table knows
 * @param mix how it is mixed, or null for what is not
 * @param filling which end it is better filled from, or null when the table does not say
 * @param release release agent, or null when the table knows none
 * @param origin of an entry of a user's table, else null
 */
public record Material(
    String id,
    String name,
    Shrink shrink,
    Density density,
    Double viscosityPaS,
    double gateMm,
    double ventMm,
    double headMm,
    DemoldStrain demoldStrain,
    List<Double> pourC,
    List<Double> workingTimeMin,
    List<Double> demoldTimeMin,
    List<String> cautions,
    String notes,
    Map<Quantity, Figure> figures,
    MixRule mix,
    Filling filling,
    Release release,
    Origin origin) {

  public Material {
    figures = figures == null ? Map.of() : Map.copyOf(figures);
    pourC = pourC == null ? List.of() : List.copyOf(pourC);
    demoldTimeMin = demoldTimeMin == null ? List.of() : List.copyOf(demoldTimeMin);
  }

  /**
   * Linear change, percent of the mold's length; above zero the casting ends smaller than the mold.
   */
  public record Shrink(double percent, double lowPercent, double highPercent, String source) {}

  /** kg/m³. */
  public record Density(double kgPerM3, String source) {}

  /** What keeps it from sticking. */
  public record Release(String words, String source) {}

  /**
   * Which end it is better filled from.
   *
   * @param bottom from below, by a sprue beside the casting
   * @param words why, in a sentence without its full stop
   */
  public record Filling(boolean bottom, String words, String source) {}

  /**
   * Where an entry of a user's table comes from.
   *
   * @param like id of the shipped material that it is like, or null if it is like none
   * @param figures that the user stated
   * @param stated names of all entries that the user stated
   */
  public record Origin(String like, Map<Quantity, Figure> figures, Set<String> stated) {
    public Origin {
      figures = figures == null ? Map.of() : Map.copyOf(figures);
      stated = Set.copyOf(stated);
    }
  }

  /** Share, 0.01 = 1 %. */
  public record DemoldStrain(double share, String source) {}

  /** A figure of the table, or null when it has none. */
  public Figure figure(Quantity q) {
    return figures.get(q);
  }

  /** Density to press and pour with: liquid if known, else as weighed, kg/m³. */
  public double liquidKgPerM3() {
    Figure f = figure(Quantity.LIQUID_DENSITY);
    return f == null ? density.kgPerM3() : f.usual();
  }

  /** The same with other bores of gate and vent, mm; 0 leaves its own. */
  public Material withBores(double gate, double vent) {
    return gate == 0 && vent == 0
        ? this
        : with(id, gate > 0 ? gate : gateMm, vent > 0 ? vent : ventMm);
  }

  /** The same under another id. */
  Material named(String other) {
    return with(other, gateMm, ventMm);
  }

  private Material with(String newId, double gate, double vent) {
    return new Material(
        newId,
        name,
        shrink,
        density,
        viscosityPaS,
        gate,
        vent,
        headMm,
        demoldStrain,
        pourC,
        workingTimeMin,
        demoldTimeMin,
        cautions,
        notes,
        figures,
        mix,
        filling,
        release,
        origin);
  }

  /** What a mold cannot be made without and the table does not know, in words. */
  public List<String> gaps() {
    List<String> out = new ArrayList<>();
    if (shrink == null) {
      out.add("shrink");
    }
    if (density == null) {
      out.add("density");
    }
    if (demoldStrain == null) {
      out.add("strain when opening");
    }
    return out;
  }

  /**
   * The factor to scale the model by so that the casting ends at the model's size: {@code 1/(1-s)}.
   */
  public double scaleFactor() {
    return scaleFactor(shrink.percent());
  }

  /**
   * The factor for a linear shrink in percent.
   *
   * @throws IllegalArgumentException outside -20 to 20 percent
   */
  public static double scaleFactor(double shrinkPercent) {
    if (!(shrinkPercent >= -20 && shrinkPercent <= 20)) {
      throw new IllegalArgumentException(
          "a shrink of " + shrinkPercent + " % is outside -20 to 20 %");
    }
    return 1 / (1 - shrinkPercent / 100);
  }
}
