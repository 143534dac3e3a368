package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.cover.CoverResult;
import org.castwright.cover.Pull;
import org.castwright.division.Asked;
import org.castwright.division.Division;
import org.castwright.division.OrderException;
import org.castwright.division.SeamLines;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Beside;
import org.castwright.progress.Progress;
import org.castwright.seams.Wishes;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.survey.SurveyResult;

/**
 * Plans a mold whose pieces leave along any pulls: stands it, vents it straight up, and divides the
 * space round casting and channels among the pieces.
 */
final class DividedPlanner {

  /** Room round channels for the piece that holds them, mm. */
  private static final double BESIDE = 4;

  /** Wishes missed by less, mm or mm², are met. */
  private static final double TOLD = 0.5;

  private final TriMesh model;
  private final MoldOptions options;
  private final Material material;
  private final SolidKernel kernel;
  private final Progress progress;

  DividedPlanner(
      TriMesh model,
      MoldOptions options,
      Material material,
      SolidKernel kernel,
      Progress progress) {
    this.model = model;
    this.options = options;
    this.material = material;
    this.kernel = kernel;
    this.progress = progress;
  }

  MoldPlan plan(Vec3 scale, SurveyResult survey, CoverResult cover, List<String> notes) {
    progress.at("plan", 0);
    options.wishes().check(cover.pulls().size(), model.triangleCount());
    List<Vec3> pulls = cover.pulls().stream().map(Pull::direction).toList();
    Stands.Stand stand = new Stands(model, scale, pulls, options, material).best(gateEnd());
    MoldFrame frame = stand.frame();
    List<Vec3> local = pulls.stream().map(p -> frame.axes().toLocal(p)).toList();
    TriMesh casting = stand.casting();
    Sizes sizes = stand.sizes();
    BlockPlan block = stand.block();
    PourPlan pour = stand.pour();
    int drawn = stand.up().pull();
    List<String> warnings = new ArrayList<>(notes);
    warnings.addAll(pour.warnings());
    if (options.block() != BlockShape.BOX) {
      warnings.add("A mold with pieces that leave along any pulls is made as a box.");
    }
    TriMesh filled = filled(casting, pour);
    Box3 box = block.box().mesh().bounds();
    Beside<Solid> space =
        Beside.begin(
            () ->
                kernel.difference(
                    "space",
                    kernel.solid("block", block.box().mesh()),
                    List.of(kernel.solid("casting", casting))));
    Wishes wishes = options.wishes().placed(frame::pointToModel);
    Division division;
    try {
      UprightCover beside = new UprightCover(pour.channels(), BESIDE);
      Asked asked =
          new Asked(
              places(local.size()),
              casting,
              wishes,
              p -> drawn >= 0 && beside.test(p) ? drawn : -1);
      division = Division.of(filled, box, local, asked, options.releaseMm(), progress);
    } catch (OrderException e) {
      throw new CaughtException(model.scaled(scale), survey, options.releaseMm(), e.getMessage());
    }
    warnings.addAll(division.notes());
    List<Key> keys = new SheetKeys(division, block.box(), sizes, options).place();
    if (keys.size() < 2 * division.sheets().size()) {
      warnings.add("Some pieces have fewer than two keys: hold them in register by hand.");
    }
    List<Solid> bodies = division.cut(space.get(), kernel, progress);
    List<RawPiece> pieces = new ArrayList<>();
    for (int i = 0; i < bodies.size(); i++) {
      pieces.add(new RawPiece(division.pulls().get(i), bodies.get(i)));
    }
    UprightCover covered = new UprightCover(pour.channels());
    SeamMeasure measure = SurfaceSeam.of(casting, division::pieceAt, covered, wishes);
    warnings.addAll(unmet(measure));
    List<double[]> lines = covered.clip(SeamLines.of(division));
    SeamRun seam = new SeamRun(SeamRun.DIVISION, false, 0, lines, false, 0, measure);
    return new MoldPlan(
        options,
        material,
        survey,
        cover,
        null,
        frame,
        casting,
        block,
        casting,
        pieces,
        seam,
        pour,
        keys,
        features(division, block, pour, keys, bodies, warnings),
        warnings);
  }

  private GateChoice gateEnd() {
    GateChoice wanted = GateChoice.wanted(options.openings().gate(), material);
    return wanted.bottom()
        ? wanted.fallenBack(
            "pieces that leave along any pulls take channels along only straight up")
        : wanted;
  }

  /** Pulls with a place stand at it in the cover already. */
  private List<Integer> places(int pieces) {
    List<Integer> places = new ArrayList<>(Asked.nothing(pieces).places());
    options.pulls().forEach(p -> places.set(p.piece() - 1, p.piece() - 1));
    return places;
  }

  /** Wishes that the shape does not allow. */
  private static List<String> unmet(SeamMeasure m) {
    List<String> out = new ArrayList<>();
    if (m.noSeamMm() > TOLD) {
      out.add(
          String.format(
              Locale.ROOT,
              "%.0f mm of seam run where none was wished: no one piece gets all of it past the casting.",
              m.noSeamMm()));
    }
    if (m.missedMm2() > TOLD) {
      out.add(
          String.format(
              Locale.ROOT,
              "%.0f mm² are formed by another piece than wished, which cannot leave with them.",
              m.missedMm2()));
    }
    return out;
  }

  /** The casting with its gate and vents. */
  private static TriMesh filled(TriMesh casting, PourPlan pour) {
    List<TriMesh> all = new ArrayList<>(List.of(casting));
    pour.channels().forEach(c -> all.addAll(ChannelBody.of(c)));
    return TriMesh.together(all);
  }

  private List<Feature> features(
      Division division,
      BlockPlan block,
      PourPlan pour,
      List<Key> keys,
      List<Solid> bodies,
      List<String> notes) {
    List<Feature> out = new ArrayList<>();
    List<double[]> strips = List.of();
    if (options.closing() == Closing.BANDS) {
      SeamsAlong along = new SeamsAlong(division, block.box());
      BandGrooves grooves = BandGrooves.of(block, along::at);
      out.addAll(grooves.features());
      strips = grooves.strips();
    }
    out.addAll(new OuterFaces(division, block.box(), strips, pour.channels()).plan());
    Grips grips = new Grips(block, pour.channels(), keys, out);
    for (int i = 0; i < bodies.size(); i++) {
      if (!pried(i + 1, out) && !grips.add(i + 1, division.pulls().get(i), bodies.get(i).mesh())) {
        notes.add(Grips.none(i + 1));
      }
    }
    out.addAll(grips.features());
    return List.copyOf(out);
  }

  /** Whether a slot to pry at lies between a piece and another. */
  private static boolean pried(int piece, List<Feature> features) {
    return features.stream()
        .anyMatch(
            f ->
                f.kind() == Feature.Kind.PRY_SLOT
                    && List.of(f.name().split("-")).contains(Integer.toString(piece)));
  }
}
