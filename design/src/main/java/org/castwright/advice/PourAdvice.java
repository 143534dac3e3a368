package org.castwright.advice;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * The numbers of a pour, for the report. What is not known is null, and a note says why.
 *
 * @param material id
 * @param print fdm or resin
 * @param up unit direction, mold frame
 * @param fits whether nothing speaks against this pour
 * @param reasons what speaks against it, sentences for a person
 * @param freezing of a melt: whether the gate stays open; null when that is no question, or not
 *     known
 * @param heat null when it was not asked for or is not known
 * @param notes what is not known, and on what the numbers rest
 */
@JsonInclude(JsonInclude.Include.ALWAYS)
public record PourAdvice(
    String material,
    String print,
    List<Double> up,
    boolean fits,
    List<String> reasons,
    Fill fill,
    Flow flow,
    Freezing freezing,
    Detail detail,
    Pressure pressure,
    Walls walls,
    Size size,
    Bench bench,
    HeatInfo heat,
    List<String> notes) {

  /**
   * How the cavity fills.
   *
   * @param roofPeaks maxima of the casting's roof
   * @param pockets of air shut in for good
   * @param restMm3 air in pockets too small to count
   * @param mouthOverCastingMm lowest mouth over the casting's highest place, null without channels
   */
  public record Fill(
      int roofPeaks,
      List<PocketInfo> pockets,
      double restMm3,
      Double mouthOverCastingMm,
      List<Double> levelMm,
      List<Double> pouredMm3,
      List<Double> timeS) {}

  /** Air that stays. */
  public record PocketInfo(List<Double> top, double depthMm, double volumeMm3) {}

  /**
   * Flow through the gate while it is kept full.
   *
   * @param headMm from the casting's end of the gate to its mouth
   * @param lengthMm of the narrow part
   * @param fillS until the casting is full; low and high by the range of viscosity
   * @param workingS the shortest usual working time, null for a melt
   * @param ventHeadMm head of the liquid that pushes the air through the vents
   * @param thinnestSlitMm that fills 20 mm deep in a third of the working time
   */
  public record Flow(
      double headMm,
      double boreMm,
      double lengthMm,
      String regime,
      Double mlPerS,
      Double reynolds,
      Double fillS,
      Double fillLowS,
      Double fillHighS,
      Double workingS,
      Double ventHeadMm,
      Double thinnestSlitMm) {}

  /**
   * Freezing while it fills, by bounds that err on the side of freezing.
   *
   * @param gate {@code open} when it lets enough through while it narrows, {@code narrows} when it
   *     may not, {@code shuts} when it may even freeze shut before the casting is full, {@code
   *     unknown} without a time to fill
   * @param moldC of the mold at the pour, °C
   * @param closedS liquid that stands in the gate is frozen shut no sooner; null when the mold is
   *     too warm for it ever to be
   * @param passesS time of full flow that the narrowing gate is worth at least
   * @param fillS until the casting is full at the highest viscosity, null when not known
   * @param neededMm bore that stays open, null when this one does or none is known
   * @param neededMoldC warmth of the mold in which the gate stays open, null when this one does or
   *     the mold would soften
   * @param thinnestSlitMm that fills 20 mm deep before it freezes; null when the viscosity is not
   *     known
   */
  public record Freezing(
      String gate,
      double moldC,
      Double closedS,
      Double passesS,
      Double fillS,
      Double neededMm,
      Double neededMoldC,
      Double thinnestSlitMm) {}

  /**
   * What comes out in the casting.
   *
   * @param printMm finest detail of the mold's print
   * @param liquidMm narrowest slit that a liquid which does not wet enters at the casting's top;
   *     null when the surface tension is not known
   * @param webs thin places that do not fill in a third of the working time, or may freeze before,
   *     thinnest first; null when neither can be known
   */
  public record Detail(double printMm, Double liquidMm, List<WebInfo> webs) {}

  /**
   * A thin place of the casting.
   *
   * @param depthMm that the liquid must creep in
   * @param neededMm thickness that would fill
   */
  public record WebInfo(
      List<Double> place, double thicknessMm, double depthMm, double areaMm2, double neededMm) {}

  /**
   * Resting liquid up to the gate's mouth.
   *
   * @param closingN to hold the pieces together, safety included
   * @param safety factor on the opening force
   * @param holds bands, bolts or clamps
   * @param eachN for each of them, null when there are none
   * @param baseShare share of the lower half when held at base and top
   * @param heldN upward force on a model of the casting's shape held under this liquid, its own
   *     weight not taken off
   */
  public record Pressure(
      double highestPa,
      List<PieceLoad> pieces,
      double closingN,
      double safety,
      String holds,
      int holdCount,
      Double eachN,
      double baseShare,
      double heldN) {}

  /**
   * Load on a piece.
   *
   * @param openingN along its pull
   * @param liftN upward
   * @param heightMm of the line of the force over the mold's lowest place, null without force
   */
  public record PieceLoad(String piece, double openingN, double liftN, Double heightMm) {}

  /**
   * Bending of the block's walls under the highest pressure.
   *
   * @param modulusMpa of the print, with its source
   * @param neededMm wall that gives way by just {@code allowedMm}, the worst panel
   */
  public record Walls(
      double modulusMpa, String source, double allowedMm, double neededMm, List<Panel> panels) {}

  /**
   * A wall as a plate.
   *
   * @param held clamped and simply supported bound the truth, or a free edge along the seam, whose
   *     stress is not worked out
   */
  public record Panel(
      String side,
      String held,
      double shortMm,
      double longMm,
      double thicknessMm,
      double deflectionMm,
      Double stressMpa,
      double neededMm) {}

  /**
   * The size that comes out, along the model's axes.
   *
   * @param isoGrade finest grade of ISO 8062-3 for the band on the longest side, by analogy; null
   *     when none or beyond the table
   * @param dinMm tolerance of DIN 16742 TG6 across a seam for that side, by analogy
   */
  public record Size(
      List<Double> wantedMm,
      List<Double> expectedMm,
      List<Double> lowMm,
      List<Double> highMm,
      Integer isoGrade,
      Double dinMm) {}

  /** What to weigh, print and pay. */
  public record Bench(
      double pourMm3,
      double massKg,
      double withLossKg,
      List<MixPart> mix,
      String mixWords,
      double wettedMm2,
      String release,
      List<PrintInfo> print,
      BatchInfo batches,
      CostInfo cost) {}

  /** A component of one batch. */
  public record MixPart(String name, double massG, double volumeMl) {}

  /** A piece at the printer; simple rates. */
  public record PrintInfo(String piece, double plasticMm3, double massKg, double hours) {}

  /** Several castings. */
  public record BatchInfo(
      int castings, int molds, int perBatch, int batches, int rounds, double minutes) {}

  /** In the user's own money; what has no price is named. */
  public record CostInfo(Double casting, Double print, double total, List<String> unpriced) {}
}
