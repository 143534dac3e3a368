package org.castwright.heat;

import java.util.List;
import org.castwright.geom.Vec3;

/**
 * How a casting cools or cures.
 *
 * @param material id of the casting's material
 * @param wallMaterial id of the mold's
 * @param setting how it sets
 * @param demoldS time until it can leave the mold, s, or null when that is beyond the longest time
 * @param demoldFromS the least of it with all figures at the ends of their ranges that set or cool
 *     fast, or slowly; null if not asked for or beyond the longest time
 * @param demoldToS the greatest
 * @param peakC highest temperature in the casting, °C
 * @param peakToC the same with all figures at their hot ends; null if not asked for
 * @param peakPlace where, mold frame; null when nothing got hotter than the pour
 * @param peakS when, s
 * @param wall the wall's surface at the casting
 * @param last the place that sets last, mold frame; null when it does not set in time
 * @param hotSpots of a melt: places that freeze after all round them, last first
 * @param samples the course of it
 * @param cellMm edge of the grid's cells, mm
 * @param cells cells of the grid
 * @param steps steps in time
 * @param sweeps passes over the grid, all runs together
 * @param notes what was missing, left out or assumed, in sentences
 */
public record HeatResult(
    String material,
    String wallMaterial,
    Setting setting,
    Double demoldS,
    Double demoldFromS,
    Double demoldToS,
    double peakC,
    Double peakToC,
    Place peakPlace,
    double peakS,
    Wall wall,
    Place last,
    List<HotSpot> hotSpots,
    List<Sample> samples,
    double cellMm,
    int cells,
    int steps,
    long sweeps,
    List<String> notes) {

  public HeatResult {
    hotSpots = List.copyOf(hotSpots);
    samples = List.copyOf(samples);
    notes = List.copyOf(notes);
  }

  /** A point of the mold frame, mm. */
  public record Place(double x, double y, double z) {
    static Place of(Vec3 p) {
      return new Place(p.x(), p.y(), p.z());
    }
  }

  /**
   * The wall's surface where it touches the casting.
   *
   * @param peakC highest temperature, °C
   * @param place where, mold frame; null for all of it, in the moment of contact
   * @param peakS when, s
   * @param limitC what it must not pass, °C
   * @param limit what happens there
   * @param over whether it passes it
   * @param overS when first, s, or null
   * @param overShare share of the cavity's surface that ever passes it
   */
  public record Wall(
      double peakC,
      Place place,
      double peakS,
      double limitC,
      String limit,
      boolean over,
      Double overS,
      double overShare) {}

  /**
   * A pool that freezes after all round it.
   *
   * @param place its last liquid, mold frame
   * @param inChannels whether that is in the gate or a vent, not in the casting
   * @param setS when that freezes, s
   * @param cutOffS when the pool is cut off from later ones, s: nothing feeds it from then on
   * @param cutOffMm3 what is liquid in it then, mm³
   */
  public record HotSpot(
      Place place, boolean inChannels, double setS, double cutOffS, double cutOffMm3) {}

  /**
   * A moment.
   *
   * @param timeS s after the pour
   * @param hottestC hottest place of the casting, °C
   * @param setShare share of the casting that has set
   * @param wallC hottest place of the wall's surface, °C
   */
  public record Sample(double timeS, double hottestC, double setShare, double wallC) {}
}
