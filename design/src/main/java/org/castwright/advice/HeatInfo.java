package org.castwright.advice;

import java.util.List;

/**
 * How the casting cools or cures in its mold.
 *
 * @param fineness coarse or fine
 * @param cellMm edge of the grid's cells
 * @param setting freezing, cooling or reaction
 * @param wallOf id of what the mold is made of
 * @param airC of the air, °C
 * @param demoldS until it can leave the mold, null when that takes over a week
 * @param demoldFromS least by the ranges of the figures, null when not known
 * @param demoldToS greatest, null when not known
 * @param peakC highest temperature in the casting, °C
 * @param peakToC the same with all figures at their hot ends
 * @param peakPlace where, null when nothing got hotter than the pour
 * @param peakS when, s
 * @param wall the wall's surface at the casting
 * @param last what sets last, null when it does not set
 * @param pools of a melt: what freezes after all round it, last first, those in channels included
 * @param feed of a melt: whether the gate feeds what shrinks; null when not known
 * @param course the casting's course
 */
public record HeatInfo(
    String fineness,
    double cellMm,
    String setting,
    String wallOf,
    double airC,
    Double demoldS,
    Double demoldFromS,
    Double demoldToS,
    double peakC,
    Double peakToC,
    List<Double> peakPlace,
    double peakS,
    Wall wall,
    List<Double> last,
    List<Pool> pools,
    Feed feed,
    Course course) {

  public HeatInfo {
    pools = List.copyOf(pools);
  }

  /**
   * The wall where it touches the casting.
   *
   * @param softens {@code no}, {@code may} within the range of its limit, {@code yes} above it
   * @param limitC where that range begins, °C
   * @param limitToC where it ends, °C
   * @param limit what happens there
   * @param overS when it first passes the beginning, s; null if never
   * @param overShare share of the cavity's surface that does
   */
  public record Wall(
      String softens,
      double peakC,
      List<Double> place,
      double limitC,
      double limitToC,
      String limit,
      Double overS,
      double overShare) {}

  /**
   * The last liquid of its neighborhood.
   *
   * @param inChannels whether that is in the gate or a vent, and no matter of the casting
   * @param cutOffS when nothing feeds it any more
   * @param cutOffMm3 liquid in it then
   * @param sinkMm3 that this leaves as a sink or hollow; null when the densities are not known
   */
  public record Pool(
      List<Double> place,
      boolean inChannels,
      double setS,
      double cutOffS,
      double cutOffMm3,
      Double sinkMm3) {}

  /**
   * What the casting loses on freezing, and whether it is fed; sizes by Chvorinov's rule.
   *
   * @param shrinkPercent of the volume on freezing; below zero it grows
   * @param sinkMm3 that the whole casting lacks unless it is fed; negative when it grows
   * @param modulusMm volume over surface of the casting
   * @param gateModulusMm of the gate's bore, null without a gate
   * @param feeds whether all last liquid stands in gate and vents, none of it in the casting
   * @param riserMm diameter and height of a riser that would
   */
  public record Feed(
      double shrinkPercent,
      double sinkMm3,
      double modulusMm,
      Double gateModulusMm,
      boolean feeds,
      double riserMm) {}

  /** Share that has set, hottest place of casting and of the wall's surface, against time. */
  public record Course(
      List<Double> timeS, List<Double> setShare, List<Double> hottestC, List<Double> wallC) {}
}
