package org.castwright.pipeline;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.castwright.blocking.BlockOut;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.mesh.TriMesh;
import org.castwright.mold.Mold;
import org.castwright.mold.Piece;
import org.castwright.plan.Channel;
import org.castwright.plan.Feature;
import org.castwright.plan.Key;
import org.castwright.plan.KeyShape;
import org.castwright.plan.MoldPlan;
import org.castwright.plan.SeamRun;
import org.castwright.proof.Proof;
import org.castwright.proof.ProofLimits;
import org.castwright.stretch.StretchPlace;
import org.castwright.survey.CaughtPlaces;
import org.castwright.survey.DraftShares;
import org.castwright.survey.Opening;
import org.castwright.survey.SurveyResult;

/** Turns results into the records of {@code report.json}. */
final class ReportMaker {

  private static final double MM3_PER_M3 = 1e9;

  /** The source of a shrink that comes from the maker and not from the table. */
  static final String STATED = "given by the maker";

  /** Volumes in cells are told to within this factor. */
  private static final double MEASURED = 1.1;

  /** Filled places that hold less are only counted, mm³. */
  private static final double TOLD_MM3 = 0.5;

  private ReportMaker() {}

  /** All but the pour, which is worked out from the files. */
  static Report of(
      String version,
      Model model,
      Mold mold,
      JobOptions options,
      Proof proof,
      Map<String, Double> timings,
      List<String> warnings) {
    MoldPlan plan = mold.plan();
    List<Report.PieceFile> pieces = mold.pieces().stream().map(ReportMaker::piece).toList();
    return new Report(
        version,
        input(model),
        material(plan),
        array(plan.frame().scale()),
        frame(plan),
        block(plan),
        pieces,
        casting(mold),
        new Report.ChannelsFile(
            mold.channels().isEmpty() ? null : MoldFiles.CHANNELS, mold.volumes().channels()),
        plan.pour().channels().stream().map(ReportMaker::channel).toList(),
        plan.keys().stream().map(ReportMaker::key).toList(),
        plan.features().stream().map(ReportMaker::feature).toList(),
        blockedOut(model.blockedOut()),
        survey(plan.survey(), plan.options().releaseMm()),
        plan.cover() == null ? null : CoverInfo.of(plan.cover()),
        stretch(plan),
        parting(plan),
        pour(mold),
        volumes(mold),
        null,
        limits(mold, options),
        proof == null ? null : Report.ProofInfo.of(proof),
        timings,
        warnings);
  }

  static Report.Input input(Model model) {
    return new Report.Input(
        model.source(),
        model.trianglesRead(),
        model.units().symbol(),
        array(model.mesh().bounds().size()),
        model.repair().steps().stream()
            .map(
                s ->
                    new Report.Healing(
                        s.name(), s.words(), s.count(), round(s.largestMovementMm(), 6)))
            .toList());
  }

  private static Report.MaterialUsed material(MoldPlan plan) {
    Material m = plan.material();
    Vec3 s = plan.frame().scale();
    List<Double> shrink = List.of(percent(s.x()), percent(s.y()), percent(s.z()));
    String source = plan.options().shrinkPercent() == null ? m.shrink().source() : STATED;
    return new Report.MaterialUsed(
        m.id(), m.name(), shrink, source, m.density().kgPerM3(), m.density().source());
  }

  private static double percent(double scale) {
    return round(100 * (1 - 1 / scale), 6);
  }

  private static Report.Frame frame(MoldPlan plan) {
    var axes = plan.frame().axes();
    return new Report.Frame(
        List.of(array(axes.u()), array(axes.v()), array(axes.w())), array(plan.frame().origin()));
  }

  private static Report.Block block(MoldPlan plan) {
    var b = plan.block().box();
    return new Report.Block(
        lower(plan.block().shape()),
        new Report.Box(List.of(b.x0(), b.y0(), b.z0()), List.of(b.x1(), b.y1(), b.z1())),
        round(plan.block().wallMm(), 3),
        plan.block().volume(),
        MoldFiles.BLOCK);
  }

  private static Report.PieceFile piece(Piece p) {
    return new Report.PieceFile(
        p.name(),
        MoldFiles.piece(p),
        MoldFiles.print(p),
        lower(p.pose().foot()),
        p.order(),
        array(p.pull()),
        p.mesh().volume(),
        p.mesh().triangleCount(),
        box(p.mesh()));
  }

  private static Report.CastingFile casting(Mold mold) {
    double v = mold.casting().volume();
    return new Report.CastingFile(
        MoldFiles.CASTING, v, mass(mold, v), mold.casting().triangleCount(), box(mold.casting()));
  }

  private static double mass(Mold mold, double volume) {
    return round(volume / MM3_PER_M3 * mold.plan().material().density().kgPerM3(), 6);
  }

  private static Report.ChannelInfo channel(Channel c) {
    List<List<Double>> axis = new ArrayList<>();
    // a pointed end lies in the casting; the passage begins where it has its bore
    int first = c.stations().get(0).radius() > 0 ? 0 : 1;
    for (int i = first; i + 1 < c.stations().size(); i++) {
      axis.add(array(c.stations().get(i).center()));
    }
    return new Report.ChannelInfo(
        c.name(),
        lower(c.kind()),
        lower(c.course()),
        round(c.boreMm(), 3),
        round(c.mouthMm(), 3),
        List.copyOf(axis));
  }

  static Report.KeyInfo key(Key k) {
    return new Report.KeyInfo(
        k.name(),
        lower(k.shape()),
        array(k.center()),
        array(k.axis()),
        2 * k.radius(),
        k.height(),
        k.shape() == KeyShape.CONE ? Key.DRAFT_DEG : 0,
        k.clearance(),
        "piece-" + k.keyPiece(),
        "piece-" + k.socketPiece());
  }

  private static Report.FeatureInfo feature(Feature f) {
    return new Report.FeatureInfo(
        f.name(), lower(f.kind()).replace('_', '-'), f.piece(), featureSize(f));
  }

  /** Measured on what is cut away. */
  private static Double featureSize(Feature f) {
    Vec3 tool = f.tools().get(0).bounds().size();
    return switch (f.kind()) {
      case BAND_GROOVE -> round(tool.y(), 3);
      case BOLT_HOLE, CLAMP_SEAT -> round(tool.x(), 3);
      case PRY_SLOT -> round(tool.z(), 3);
      // holes lie along an axis and are deeper than wide
      case GRIP -> round(Math.min(tool.x(), Math.min(tool.y(), tool.z())), 3);
      case MARK, OUTLINE -> null;
    };
  }

  static Report.SurveyInfo survey(SurveyResult s, double release) {
    Opening o = s.best();
    return new Report.SurveyInfo(
        o.free(),
        array(o.direction()),
        round(o.trappedVolume(), 4),
        round(o.noiseFloor(), 4),
        round(o.caughtArea(), 3),
        round(o.caughtDepth(), 3),
        round(o.caughtWidth(), 4),
        release,
        round(o.drawDepth(), 4),
        round(o.drawAbove(), 4),
        round(o.drawBelow(), 4),
        round(o.shadowArea(), 2),
        round(o.flatness(), 4),
        round(o.seamSlope(), 2),
        draft(o.draft()),
        o.silhouetteLoops(),
        s.directionsTried(),
        s.simplified(),
        round(s.simplifyBound(), 5),
        caught(s.caught()),
        s.ranked().stream()
            .skip(1)
            .map(
                a ->
                    new Report.Alternative(
                        array(a.direction()),
                        round(a.trappedVolume(), 4),
                        round(a.caughtWidth(), 4),
                        round(a.drawDepth(), 4)))
            .toList());
  }

  private static Report.BlockedOut blockedOut(BlockOut b) {
    return b == null
        ? null
        : new Report.BlockedOut(
            array(b.pull()),
            round(b.caughtMm3(), 2),
            round(b.addedMm3(), 2),
            b.places().stream()
                .filter(p -> p.volumeMm3() >= TOLD_MM3)
                .map(
                    p ->
                        new Report.FilledInfo(
                            array(p.center()),
                            round(p.volumeMm3(), 2),
                            round(p.areaMm2(), 2),
                            round(p.heightMm(), 2)))
                .toList(),
            (int) b.places().stream().filter(p -> p.volumeMm3() < TOLD_MM3).count());
  }

  private static Map<String, Double> draft(DraftShares d) {
    Map<String, Double> out = new LinkedHashMap<>();
    out.put("0.5", round(d.underHalf(), 6));
    out.put("1", round(d.underOne(), 6));
    out.put("2", round(d.underTwo(), 6));
    out.put("3", round(d.underThree(), 6));
    out.put("5", round(d.underFive(), 6));
    return out;
  }

  private static List<Report.CaughtInfo> caught(CaughtPlaces places) {
    return places.places().stream()
        .map(
            p ->
                new Report.CaughtInfo(
                    array(p.center()),
                    round(p.area(), 3),
                    round(p.depth(), 3),
                    round(p.width(), 3),
                    p.facets()))
        .toList();
  }

  private static List<Report.StretchInfo> stretch(MoldPlan plan) {
    return plan.stretch() == null
        ? List.of()
        : plan.stretch().places().stream()
            .map(
                p ->
                    new Report.StretchInfo(
                        array(p.center()),
                        array(p.pull()),
                        round(p.volume(), 3),
                        round(p.depth(), 3),
                        round(p.width(), 3),
                        round(p.strain(), 5),
                        round(p.limit(), 5)))
            .toList();
  }

  /**
   * What a piece may share with the casting on its way: creases, and where two pieces stretch past
   * it the space measured as caught, to within the cells it was measured in.
   */
  private static double crease(MoldPlan plan, boolean many) {
    if (plan.stretch() == null) {
      return many ? plan.options().leaveMm3() : 0;
    }
    double caught = plan.stretch().places().stream().mapToDouble(StretchPlace::volume).sum();
    return plan.options().leaveMm3() + MEASURED * caught;
  }

  private static Report.PartingInfo parting(MoldPlan plan) {
    SeamRun seam = plan.seam();
    return new Report.PartingInfo(
        seam.method(),
        seam.flat(),
        round(seam.wallHeight(), 4),
        seam.lines().size(),
        round(seam.measure().lengthMm(), 3),
        round(seam.measure().visibleMm(), 3),
        round(seam.measure().showMm(), 3),
        round(seam.measure().showShare(), 4),
        round(seam.measure().noSeamMm(), 3),
        round(seam.measure().missedMm2(), 3),
        round(seam.steepestDeg(), 2));
  }

  private static Report.PourInfo pour(Mold mold) {
    var pour = mold.plan().pour();
    double volume = mold.volumes().casting() + mold.volumes().channels();
    int gates = (int) pour.channels().stream().filter(c -> c.kind() == Channel.Kind.GATE).count();
    return new Report.PourInfo(
        lower(pour.pour()),
        array(pour.up()),
        pour.peaks(),
        new Report.GateInfo(
            lower(pour.gate().asked()), pour.gate().bottom() ? "bottom" : "top", pour.gate().why()),
        gates,
        pour.channels().size() - gates,
        volume,
        mass(mold, volume));
  }

  private static Report.Volumes volumes(Mold mold) {
    var v = mold.volumes();
    double pieces = mold.pieces().stream().mapToDouble(p -> p.mesh().volume()).sum();
    return new Report.Volumes(
        v.block(), pieces, v.casting(), v.channels(), v.keyClearance(), v.features());
  }

  private static Report.Limits limits(Mold mold, JobOptions options) {
    MoldPlan plan = mold.plan();
    double wall = Math.min(plan.options().process().minimumWallMm(), plan.block().wallMm());
    // where two pieces part the model decides; a seam with side pieces is ours to answer for, and
    // so is how thin the mold is beside what was filled
    boolean sound = mold.pieces().size() > 2 || mold.plan().seam().divided();
    boolean filled = plan.options().blockedOut();
    return new Report.Limits(
        plan.options().releaseMm(),
        wall,
        array(options.bed()),
        plan.options().allowCaught(),
        ProofLimits.DEFAULT.shakeShare(),
        sound ? options.wedgeDeg() : 0,
        sound || filled ? plan.options().process().minimumWebMm() : 0,
        round(crease(plan, sound || filled), 3));
  }

  private static Report.Box box(TriMesh mesh) {
    Box3 b = mesh.bounds();
    return new Report.Box(array(b.min()), array(b.max()));
  }

  static List<Double> array(Vec3 v) {
    // adding zero turns -0 into 0
    return List.of(v.x() + 0.0, v.y() + 0.0, v.z() + 0.0);
  }

  private static String lower(Enum<?> e) {
    return e.name().toLowerCase(Locale.ROOT);
  }

  static double round(double v, int digits) {
    double f = Math.pow(10, digits);
    return Double.isFinite(v) ? Math.rint(v * f) / f + 0.0 : v;
  }
}
