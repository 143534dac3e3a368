package org.castwright.trial;

import java.util.List;

/**
 * What the answers rest on: the mold that was cast, as its report states it. Places in the mold
 * frame.
 *
 * @param material id
 * @param printer name of the maker's own, may be empty
 * @param process fdm or resin
 * @param shrinkPercent in force, along the model's longest side
 * @param shrinkByAxis in force along the model's axes, percent
 * @param clearanceMm of the keys
 * @param closing bands, bolts, clamps or none
 * @param wallMm round the cavity
 * @param wallNeededMm that gives way by no more than is allowed, or null
 * @param closingN that must hold the pieces together, or null
 * @param gateMm bore
 * @param ventMm bore of the vents, or of those the material's rule would give
 * @param channels mouths of the gate (first) and vents in the cavity
 * @param pockets highest points of air that the filling shuts in
 * @param longestMm longest side of the casting
 * @param divided whether pieces leave along any pulls, so that vents run straight up
 * @param releaseMm catch that counts as free
 * @param pieces most pieces asked for
 * @param allowedCaught whether the mold was built though it is caught
 * @param caught places that two pieces hold fast
 * @param pulls other pulls that open the model as well, each with what it does at the notes' places
 * @param air where air of the noted places goes
 * @param pourC usual temperatures at the pour, lowest and highest; empty when not known
 * @param releaseAgent of the table, or null
 * @param wall how warm the mold's inner wall gets by the report, or null when that is not known
 */
public record Facts(
    String material,
    String printer,
    String process,
    double shrinkPercent,
    List<Double> shrinkByAxis,
    double clearanceMm,
    String closing,
    double wallMm,
    Double wallNeededMm,
    Double closingN,
    double gateMm,
    double ventMm,
    List<List<Double>> channels,
    List<List<Double>> pockets,
    double longestMm,
    boolean divided,
    double releaseMm,
    int pieces,
    boolean allowedCaught,
    List<CaughtSpot> caught,
    List<DraftAt> pulls,
    List<AirAt> air,
    List<Double> pourC,
    String releaseAgent,
    Wall wall) {

  /**
   * The mold's inner wall, as it was reckoned.
   *
   * @param peakC highest temperature, °C
   * @param of name of what the mold is made of
   * @param limitC where that begins to soften, °C
   * @param limitToC where it is soft, °C
   * @param limit what happens there
   * @param airC of air and mold at the pour, °C
   * @param pourC of the pour, °C; null when the material warms itself
   * @param firmer printed plastics whose limit lies above the peak, by name
   */
  public record Wall(
      double peakC,
      String of,
      double limitC,
      double limitToC,
      String limit,
      double airC,
      Double pourC,
      List<String> firmer) {}

  /** A caught place. */
  public record CaughtSpot(List<Double> center, double depthMm, double widthMm) {}

  /**
   * The draft of a noted place.
   *
   * @param note index of the note
   * @param draftDeg of the facets there along the pull of the piece that takes them; below zero
   *     where they lean over
   * @param better another pull in the model's frame that opens the model too and gives more draft
   *     there, or null
   * @param betterDeg its draft there
   */
  public record DraftAt(int note, double draftDeg, List<Double> better, double betterDeg) {}

  /**
   * Where air of a noted place goes.
   *
   * @param note index of the note
   * @param roofDeg how far the cavity's surface there leans over: 90 for a level roof, 0 for an
   *     upright wall, below zero for a floor
   * @param peak where air rises to along the surface
   */
  public record AirAt(int note, double roofDeg, List<Double> peak) {}
}
