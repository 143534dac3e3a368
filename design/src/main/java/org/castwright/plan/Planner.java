package org.castwright.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.castwright.cover.Cover;
import org.castwright.cover.CoverOptions;
import org.castwright.cover.CoverResult;
import org.castwright.cover.CoverTolerance;
import org.castwright.cover.Pull;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.material.Materials;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.parting.Parting;
import org.castwright.parting.PartingOptions;
import org.castwright.progress.Progress;
import org.castwright.side.MainAxis;
import org.castwright.side.SidePiece;
import org.castwright.side.SidePieces;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.stretch.StretchPlace;
import org.castwright.stretch.StretchResult;
import org.castwright.survey.Made;
import org.castwright.survey.Survey;
import org.castwright.survey.SurveyOptions;
import org.castwright.survey.SurveyResult;

/** The order of decisions. */
final class Planner {

  /** How often the block may grow when the seam leaves too little flat ground for keys. */
  private static final int TRIES = 3;

  /** Right angles to turn a mold by when it cannot be filled as it stands: over, then aside. */
  private static final int[] OTHER_SIDES = {2, 1, 3};

  /** So many pieces more than the least are a fair price for straight plugs and a plain seam. */
  private static final int PLUGS_COST = 1;

  /**
   * A piece that frees less is too small to hold, mm³: a cube of 8 mm (common practice, no source).
   */
  private static final double SPECK = 512;

  /** Pulls whose cosine is less than this are opposite: 0.5°. */
  private static final double OPPOSITE = -0.99996;

  private final TriMesh model;
  private final MoldOptions options;
  private final SolidKernel kernel;
  private final Progress progress;
  private final Material material;
  private final List<String> warnings = new ArrayList<>();

  /** What passes by stretching, once that is known; null if nothing has to. */
  private StretchResult stretch;

  Planner(TriMesh model, MoldOptions options, SolidKernel kernel, Progress progress) {
    this.model = model;
    this.options = options;
    this.kernel = kernel;
    this.progress = progress;
    Openings o = options.openings();
    this.material = Materials.of(options.material()).withBores(o.gateMm(), o.ventMm());
  }

  MoldPlan plan() {
    Vec3 scale = scale();
    TriMesh scaled = model.scaled(scale);
    SurveyResult survey = survey(scaled);
    if (!opens(survey) && !options.allowCaught() && options.pieces() == 2) {
      throw new CaughtException(scaled, survey, options.releaseMm());
    }
    CoverResult cover = cover(scaled, survey);
    boolean asked = !options.pulls().isEmpty() || !options.wishes().all().isEmpty();
    if (cover != null && (asked || !plugsMayDo(cover, scaled))) {
      return divided(scale, survey, cover);
    }
    if (!opens(survey) && options.pieces() == 2) {
      warnings.add(
          "The casting is caught: two rigid pieces cannot release it (allowed as asked). Use a"
              + " casting material that stretches, or expect it to break.");
    }
    progress.at("plan", 0);
    MoldFrame frame =
        FramePlanner.of(
            model,
            scale,
            survey.best().direction(),
            survey.best().free() || options.pieces() == 2,
            gateEnd().bottom());
    try {
      MoldPlan plan = turned(frame, survey, cover);
      boolean few = cover == null || plan.pieces().size() <= cover.pulls().size() + PLUGS_COST;
      boolean poured = cover == null || !plan.pour().channels().isEmpty();
      return few && poured ? plan : divided(scale, survey, cover);
    } catch (CaughtException e) {
      if (cover == null) {
        throw e;
      }
      return divided(scale, survey, cover);
    }
  }

  /** Whether two opposite pieces come off, by stretching where they are caught if they may. */
  private boolean opens(SurveyResult survey) {
    boolean creases = options.blockedOut() && survey.best().trappedVolume() <= options.leaveMm3();
    return survey.best().free() || stretch != null || creases;
  }

  /** The survey of a pull along which all that is caught may stretch, else the same. */
  private SurveyResult stretched(TriMesh scaled, SurveyResult survey, SurveyOptions o) {
    double strain = Math.max(material.demoldStrain().share(), options.moldStrain());
    if (survey.best().free() || options.allowCaught() || !(strain > 0) || !twoWill()) {
      return survey;
    }
    ByStretch found = ByStretch.of(scaled, survey, strain, o, progress);
    if (found == null) {
      return survey;
    }
    stretch = found.result();
    for (StretchPlace p : stretch.places()) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "What is caught near (%.1f, %.1f, %.1f) of the scaled model passes by stretching"
                  + " %.1f %%, of %.1f %% allowed: open slowly there.",
              p.center().x(),
              p.center().y(),
              p.center().z(),
              100 * p.strain(),
              100 * p.limit()));
    }
    return found.survey();
  }

  /** Whether nothing is asked that two opposite pieces cannot do. */
  private boolean twoWill() {
    return options.wishes().all().isEmpty()
        && (options.pulls().isEmpty() || options.pullOfFirst() != null);
  }

  private MoldPlan divided(Vec3 scale, SurveyResult survey, CoverResult cover) {
    refuseTooMany(scale, survey, cover);
    double least = cover.pulls().stream().mapToDouble(Pull::ownVolumeMm3).min().orElse(SPECK);
    if (least < SPECK && options.mayFill(model)) {
      throw CaughtException.speck(model.scaled(scale), survey, options.releaseMm(), cover, least);
    }
    return new DividedPlanner(model, options, material, kernel, progress)
        .plan(scale, survey, cover, warnings);
  }

  /**
   * Each body that leaves by itself is a piece, whatever it shares its pull with. Where that makes
   * too many, the pulls that free least are let go, and what stays caught then is told.
   */
  private void refuseTooMany(Vec3 scale, SurveyResult survey, CoverResult cover) {
    if (cover.pieces() <= options.pieces()) {
      return;
    }
    List<Pull> kept = new ArrayList<>(cover.pulls());
    kept.sort(Comparator.comparingDouble(Pull::ownVolumeMm3).reversed());
    while (kept.size() > 1 && kept.stream().mapToInt(Pull::bodies).sum() > options.pieces()) {
      kept.remove(kept.size() - 1);
    }
    TriMesh scaled = model.scaled(scale);
    List<Vec3> fixed = kept.stream().map(Pull::direction).toList();
    CoverOptions o = coverOptions().withPieces(kept.size()).withFixed(fixed);
    CoverResult less = Cover.of(scaled, o, progress);
    if (!less.opens()) {
      throw CaughtException.tooMany(
          scaled, survey, options.releaseMm(), cover, less, options.pieces());
    }
  }

  /** The fewest pulls, where more than two pieces may be made and two do not open. */
  private CoverResult cover(TriMesh scaled, SurveyResult survey) {
    boolean two = opens(survey) || options.pieces() == 2 || options.allowCaught();
    if (two && twoWill()) {
      return null;
    }
    CoverOptions o = coverOptions().withFixed(options.fixedPulls(), options.fixedPlaces());
    CoverResult r = Cover.of(scaled, o, progress);
    if (!r.opens() || r.pulls().size() > options.pieces()) {
      throw new CaughtException(scaled, survey, options.releaseMm(), r, options.pieces());
    }
    return r;
  }

  private CoverOptions coverOptions() {
    CoverTolerance d = CoverTolerance.DEFAULT;
    return CoverOptions.DEFAULT
        .withTolerance(
            new CoverTolerance(d.areaMm2(), d.areaShare(), options.leaveMm3(), d.widthMm()))
        .withThreads(options.threads());
  }

  /**
   * Whether two opposite pieces with side pieces may do as well as pieces along the pulls found.
   */
  private static boolean plugsMayDo(CoverResult cover, TriMesh scaled) {
    return cover.pulls().size() > 2 || opposite(cover) || Made.of(scaled);
  }

  /** Whether two of the pulls are opposite: then two main pieces may do with side pieces. */
  private static boolean opposite(CoverResult cover) {
    for (Pull a : cover.pulls()) {
      for (Pull b : cover.pulls()) {
        if (a.direction().dot(b.direction()) < OPPOSITE) {
          return true;
        }
      }
    }
    return false;
  }

  private MoldPlan turned(MoldFrame frame, SurveyResult survey, CoverResult cover) {
    MoldPlan first = planIn(frame, survey, cover);
    if (first.pieces().size() == 2 || pours(first)) {
      return first;
    }
    // a side piece takes the top, where gate or vents would go: stand the mold on another side
    for (int turns : OTHER_SIDES) {
      MoldPlan plan = planIn(FramePlanner.turned(model, frame, turns), survey, cover);
      if (pours(plan)) {
        return plan;
      }
    }
    return first;
  }

  /** Whether there is a gate and no pocket of air without a way out. */
  private static boolean pours(MoldPlan plan) {
    return !plan.pour().channels().isEmpty() && plan.pour().warnings().isEmpty();
  }

  private MoldPlan planIn(MoldFrame frame, SurveyResult survey, CoverResult cover) {
    GateChoice end = gateEnd();
    MoldPlan plan = planIn(frame, survey, cover, end);
    GateChoice found = plan.pour().gate();
    // the block had room for a sprue that cannot be: without it the mold is smaller
    return end.bottom() && !found.bottom() ? planIn(frame, survey, cover, found) : plan;
  }

  /** Where the gate is wanted, as far as it can be known before the block is. */
  private GateChoice gateEnd() {
    GateChoice wanted = GateChoice.wanted(options.openings().gate(), material);
    if (!wanted.bottom()) {
      return wanted;
    }
    if (options.pour() == Pour.PULL) {
      return wanted.fallenBack("in a lying mold channels run up along the pull");
    }
    if (options.block() == BlockShape.CONTOUR) {
      return wanted.fallenBack(
          "a block that follows the casting has no ground for a sprue beside it");
    }
    return options.openings().gateAt() == null
        ? wanted
        : wanted.fallenBack("its place was asked for");
  }

  private MoldPlan planIn(MoldFrame frame, SurveyResult survey, CoverResult cover, GateChoice end) {
    TriMesh casting = frame.toMold(model);
    Sizes sizes = Sizes.of(casting.bounds(), material, options).with(options.openings());
    MoldPlan plan = null;
    for (int k = 0; k < TRIES; k++) {
      plan = attempt(survey, cover, frame, casting, sizes, end, k * (sizes.keyDiameter() + 2));
      if (plan.keys().size() >= 3) {
        return plan;
      }
    }
    plan.warnings()
        .add("No flat ground for three keys was found: hold the pieces in register by hand.");
    return plan;
  }

  private Vec3 scale() {
    if (options.shrinkPercent() == null) {
      double s = material.scaleFactor();
      return new Vec3(s, s, s);
    }
    Vec3 p = options.shrinkPercent();
    return new Vec3(
        Material.scaleFactor(p.x()), Material.scaleFactor(p.y()), Material.scaleFactor(p.z()));
  }

  private SurveyResult survey(TriMesh scaled) {
    SurveyOptions o =
        SurveyOptions.DEFAULT.withThreads(options.threads()).withReleaseMm(options.releaseMm());
    progress.at("survey", 0);
    Vec3 given = options.pullOfFirst();
    if (given == null && !options.pulls().isEmpty()) {
      given = options.pulls().get(0).direction();
    }
    if (given != null) {
      return stretched(scaled, Survey.along(scaled, given.unit(), o, progress.as("survey")), o);
    }
    SurveyResult two = stretched(scaled, Survey.of(scaled, o, progress.as("survey")), o);
    if (opens(two) || options.pieces() == 2) {
      return two;
    }
    Vec3 axis =
        MainAxis.of(scaled, two.best().direction(), options.releaseMm(), progress.as("survey"));
    return axis.equals(two.best().direction())
        ? two
        : Survey.along(scaled, axis, o, progress.as("survey"));
  }

  private MoldPlan attempt(
      SurveyResult survey,
      CoverResult cover,
      MoldFrame frame,
      TriMesh casting,
      Sizes sizes,
      GateChoice end,
      double extra) {
    SprueRoom sprue = end.bottom() ? SprueRoom.of(casting, sizes) : SprueRoom.NONE;
    BlockPlanner blocks = new BlockPlanner(casting, sizes, options, sprue, extra);
    BlockPlan block = blocks.plan(extra);
    PartingOptions po = PartingOptions.DEFAULT.withReleaseMm(options.releaseMm());
    List<SidePiece> reaching = sides(survey, cover, casting, block.box(), po);
    progress.at("parting", 0);
    MainPieces main =
        reaching.isEmpty()
            ? MainPieces.of(casting, block.box(), po, kernel, progress.as("parting"))
            : MainPieces.of(casting, reaching, block.box(), po, kernel, progress.as("parting"));
    Parting parting = main.parting();
    List<SidePiece> sides = within(block.box(), reaching);
    Ground ground = new PartedGround(parting, sides, block.box());
    progress.at("plan", 0.5);
    Room room = new Room(ground, block.outline());
    List<String> notes = new ArrayList<>(warnings);
    PourPlan pour =
        new ChannelPlanner(casting, room, block.box(), sizes, parting.seamLoops())
            .plan(options.pour(), AskedPlaces.of(options.openings(), frame), end);
    notes.addAll(pour.warnings());
    KeyPlanner keyPlanner = new KeyPlanner(room, block.box(), sizes);
    int count = options.keyCount() > 0 ? options.keyCount() : keyPlanner.usualCount();
    int first = sides.size() + 1;
    List<Key> keys =
        keyPlanner.place(count, options.keyShape(), options.clearance()).stream()
            .map(k -> k.between(first + 1, first))
            .toList();
    List<Feature> features =
        new FeaturePlanner(room, block).plan(options.closing(), pour.channels());
    features = new ArrayList<>(features);
    Grips grips = new Grips(block, pour.channels(), keys, features);
    for (int i = 0; i < sides.size(); i++) {
      if (!grips.add(i + 1, sides.get(i).pull(), sides.get(i).body().mesh())) {
        notes.add(Grips.none(i + 1));
      }
    }
    features.addAll(grips.features());
    List<RawPiece> pieces = new ArrayList<>();
    sides.forEach(s -> pieces.add(new RawPiece(s.pull(), s.body())));
    pieces.add(new RawPiece(MoldPlan.PULL, main.upper()));
    pieces.add(new RawPiece(MoldPlan.PULL.negate(), main.lower()));
    return new MoldPlan(
        options,
        material,
        survey,
        cover,
        stretch,
        frame,
        casting,
        block,
        main.casting(),
        pieces,
        SeamRun.of(parting),
        pour,
        keys,
        features,
        notes);
  }

  private List<SidePiece> sides(
      SurveyResult survey, CoverResult cover, TriMesh casting, BlockBox box, PartingOptions po) {
    if (opens(survey) || options.pieces() == 2) {
      return List.of();
    }
    int pieces =
        cover == null
            ? options.pieces()
            : Math.min(options.pieces(), cover.pulls().size() + PLUGS_COST);
    SidePieces sides =
        SidePieces.of(
            casting,
            MainPieces.grown(box, MainPieces.REACH),
            pieces - 2,
            options.leaveMm3(),
            cover != null && !options.allowCaught(),
            po,
            kernel,
            progress.as("side pieces"));
    if (!options.allowCaught()
        && (sides.leftMm3() > Math.max(SidePieces.NOTHING, options.leaveMm3())
            || sides.pieces().size() > pieces - 2)) {
      throw new CaughtException(model.scaled(scale()), survey, options.releaseMm(), sides, pieces);
    }
    return sides.pieces();
  }

  private List<SidePiece> within(BlockBox box, List<SidePiece> reaching) {
    Solid block = kernel.solid("block", box.mesh());
    return reaching.stream()
        .map(s -> new SidePiece(s.pull(), kernel.intersection(s.body().name(), s.body(), block)))
        .toList();
  }
}
