package org.castwright.pipeline;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Map;
import org.castwright.advice.PourAdvice;
import org.castwright.proof.Proof;
import org.castwright.proof.ProofCheck;

/**
 * What {@code report.json} holds. Lengths mm, volumes mm³, areas mm², angles degrees, masses kg,
 * times s. Frames: {@code survey} directions are in the model's frame; everything else is in the
 * mold frame (z the pull of piece 1, y up while pouring) unless the name says otherwise. The pour
 * is null until the files are written, from which it is worked out. The JSON Schema stands beside
 * this class.
 */
@JsonInclude(JsonInclude.Include.ALWAYS)
public record Report(
    String castwright,
    Input input,
    MaterialUsed material,
    List<Double> scale,
    Frame moldFrame,
    Block block,
    List<PieceFile> pieces,
    CastingFile casting,
    ChannelsFile channelsBody,
    List<ChannelInfo> channels,
    List<KeyInfo> keys,
    List<FeatureInfo> features,
    BlockedOut blockedOut,
    SurveyInfo survey,
    CoverInfo cover,
    List<StretchInfo> stretch,
    PartingInfo parting,
    PourInfo pour,
    Volumes volumes,
    PourAdvice pouring,
    Limits limits,
    ProofInfo proof,
    Map<String, Double> timingsS,
    List<String> warnings) {

  /** The same with another pour. */
  Report with(PourAdvice other) {
    return new Report(
        castwright,
        input,
        material,
        scale,
        moldFrame,
        block,
        pieces,
        casting,
        channelsBody,
        channels,
        keys,
        features,
        blockedOut,
        survey,
        cover,
        stretch,
        parting,
        pour,
        volumes,
        other,
        limits,
        proof,
        timingsS,
        warnings);
  }

  /** The model file and what healing did to it. */
  public record Input(
      String file, int triangles, String units, List<Double> sizeMm, List<Healing> healing) {}

  /** One healing step. */
  public record Healing(String name, String words, int count, double largestMovementMm) {}

  /** The material and the figures used of it. */
  public record MaterialUsed(
      String id,
      String name,
      List<Double> shrinkPercent,
      String shrinkSource,
      double densityKgPerM3,
      String densitySource) {}

  /** From the scaled model to the mold frame: {@code p_mold = rows · p − origin}. */
  public record Frame(List<List<Double>> rows, List<Double> origin) {}

  /** Lowest corner, highest corner. */
  public record Box(List<Double> min, List<Double> max) {}

  /** The outer body. */
  public record Block(String shape, Box box, double wallMm, double volumeMm3, String file) {}

  /**
   * A piece and its files; {@code standsOn} says how the print file lies: {@code outer_face},
   * {@code flat_face} or {@code none}.
   */
  public record PieceFile(
      String name,
      String file,
      String printFile,
      String standsOn,
      int order,
      List<Double> pull,
      double volumeMm3,
      int triangles,
      Box box) {}

  /** The casting and its file. */
  public record CastingFile(String file, double volumeMm3, double massKg, int triangles, Box box) {}

  /** Gate and vents as cast material fills them; no file when there are none. */
  public record ChannelsFile(String file, double volumeMm3) {}

  /** A gate or vent; the axis runs from the casting to the outside. */
  public record ChannelInfo(
      String name,
      String kind,
      String course,
      double boreMm,
      double mouthMm,
      List<List<Double>> axis) {}

  /** A key on one piece with its socket in another. */
  public record KeyInfo(
      String name,
      String shape,
      List<Double> center,
      List<Double> axis,
      double diameterMm,
      double heightMm,
      double draftDeg,
      double clearanceMm,
      String keyPiece,
      String socketPiece) {}

  /**
   * Something cut from the outside; its size is the width of a groove, the diameter of a hole, grip
   * or seat, the height of a slot, and null for the rest.
   */
  public record FeatureInfo(String name, String kind, int piece, Double sizeMm) {}

  /**
   * What was filled in the casting so that two pieces do; null if nothing was.
   *
   * @param pull along which it opens, in the model's frame
   * @param caughtMm3 what two pieces would have caught
   * @param addedMm3 what the casting holds more, what was filled up to the seam and for draft
   *     included
   * @param places largest first, in the model's frame
   * @param smaller number of places too small to tell
   */
  public record BlockedOut(
      List<Double> pull, double caughtMm3, double addedMm3, List<FilledInfo> places, int smaller) {}

  /** One of them; the height is along the pull. */
  public record FilledInfo(
      List<Double> center, double volumeMm3, double areaMm2, double heightMm) {}

  /** How the model opens. */
  public record SurveyInfo(
      boolean free,
      List<Double> direction,
      double trappedVolumeMm3,
      double noiseFloorMm3,
      double caughtAreaMm2,
      double caughtDepthMm,
      double caughtWidthMm,
      double releaseMm,
      double drawDepthMm,
      double drawAboveMm,
      double drawBelowMm,
      double shadowAreaMm2,
      double flatnessMm,
      double seamSlopeDeg,
      Map<String, Double> shareOfAreaUnderDraft,
      int silhouetteLoops,
      int directionsTried,
      boolean simplified,
      double simplifyBoundMm,
      List<CaughtInfo> caught,
      List<Alternative> alternatives) {}

  /** A caught place; center in the model's frame, scaled. */
  public record CaughtInfo(
      List<Double> center, double areaMm2, double depthMm, double widthMm, int facets) {}

  /**
   * A caught place that passes by stretching: strains as shares, center and pull in the model's
   * frame, scaled.
   */
  public record StretchInfo(
      List<Double> center,
      List<Double> pull,
      double volumeMm3,
      double depthMm,
      double widthMm,
      double strain,
      double limit) {}

  /** Another direction. */
  public record Alternative(
      List<Double> direction, double trappedVolumeMm3, double caughtWidthMm, double drawDepthMm) {}

  /**
   * The seam, on the casting alone. Visible is what lies outside regions marked hide; show, what
   * crosses faces marked show; no-seam, what runs where none was wished; missed, the surface that
   * another piece forms than was wished.
   */
  public record PartingInfo(
      String method,
      boolean flat,
      double wallHeightMm,
      int loops,
      double seamLengthMm,
      double visibleSeamMm,
      double showSeamMm,
      double showShare,
      double noSeamMm,
      double wishMissedMm2,
      double steepestDeg) {

    /** Whether pieces leave along any pulls: such a mold has no pour arrows, and keys by twos. */
    public boolean divided() {
      return method.equals("division");
    }
  }

  /** How it is filled. */
  public record PourInfo(
      String position,
      List<Double> up,
      int roofPeaks,
      GateInfo gate,
      int gates,
      int vents,
      double volumeToPourMm3,
      double massToPourKg) {}

  /**
   * Which end of the casting the gate joins.
   *
   * @param asked top, bottom or auto
   * @param at top or bottom
   * @param why the rule with its source, or why it could not be
   */
  public record GateInfo(String asked, String at, String why) {}

  /** The volume balance as designed. */
  public record Volumes(
      double blockMm3,
      double piecesMm3,
      double castingMm3,
      double channelsMm3,
      double keyClearanceMm3,
      double featuresMm3) {}

  /** What the proof holds the mold against. */
  public record Limits(
      double releaseMm,
      double minimumWallMm,
      List<Double> bedMm,
      boolean allowCaught,
      double shakeShare,
      double wedgeDeg,
      double minimumWebMm,
      double creaseMm3) {}

  /** The proof made from the files. */
  public record ProofInfo(boolean passed, List<CheckInfo> checks) {

    public static ProofInfo of(Proof proof) {
      return new ProofInfo(proof.passed(), proof.checks().stream().map(CheckInfo::of).toList());
    }
  }

  /**
   * One check; no value when nothing could be measured, since JSON knows none that is no number.
   */
  public record CheckInfo(
      String name, boolean passed, Double value, double limit, String unit, String words) {

    private static CheckInfo of(ProofCheck c) {
      Double value = Double.isFinite(c.value()) ? c.value() : null;
      return new CheckInfo(c.name(), c.passed(), value, c.limit(), c.unit(), c.words());
    }
  }
}
