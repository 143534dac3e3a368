package org.castwright.parting;

import java.util.function.DoubleBinaryOperator;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * Finds the seam: a ladder of tolerances for the band cut, each looser than the last, until the
 * seam's image in the plane is free of crossings and the seam no longer zigzags up and down a wall.
 * Above the first rung only the neighborhoods of such places are loosened. If no rung will do, the
 * tightest cut is the answer and its crossings are reported.
 */
final class SeamSearch {

  /** Rungs below the release tolerance, as shares of it; the tight one comes first. */
  private static final double[] RUNGS = {0.2, 0.6, 1};

  /** How far inside the outline a plane must fit to be taken at once, as a share of the release. */
  private static final double FLAT_SHARE = 0.6;

  /** Steep runs of the seam that are not worth moving it for, all together, mm. */
  private static final double LITTLE_MM = 3;

  /** A looser seam is taken only if its score is this much smaller. */
  private static final double BETTER = 0.7;

  /** The score of a seam that crosses itself: more than any climb. */
  private static final double CROSSED = 1e9;

  private final TriMesh casting;
  private final Columns columns;
  private final DepthGrid grid;
  private final BlockBox box;
  private final PartingOptions options;
  private final double ringMm;

  SeamSearch(
      TriMesh casting,
      Columns columns,
      DepthGrid grid,
      BlockBox box,
      PartingOptions options,
      double ringMm) {
    this.casting = casting;
    this.columns = columns;
    this.grid = grid;
    this.box = box;
    this.options = options;
    this.ringMm = ringMm;
  }

  /**
   * A seam, its crossings, and the sheet it was cut along.
   *
   * @param guide the rough sheet, or null for a plane
   * @param wall height at the wall, mm
   */
  record Found(Seam seam, Crossings crossings, GridSheet guide, double wall, double toleranceMm) {}

  Found run(Progress progress) {
    byte[] direction = Sides.byDirection(casting, columns);
    BandCut cut = new BandCut(casting, direction, columns, grid);
    Labeled exact = cut.uncut();
    Sides.adoptHidden(exact.mesh(), exact.side(), columns);
    Seam outline = Seam.of(exact);
    FlatTest flat = FlatTest.of(outline, columns, FLAT_SHARE * options.releaseMm());
    Target target = new Target(outline, flat);
    Found tight = attempt(cut, target, BandCut.TIGHT_MM, null);
    double slope = StrictMath.tan(Math.toRadians(options.maxSlopeDeg()));
    double steep = SteepRuns.of(tight.seam, slope, null);
    if (tight.crossings.faults() == 0 && steep < LITTLE_MM) {
      return tight;
    }
    double enough = Math.max(LITTLE_MM, BETTER * steep);
    Found best = tight;
    double bestScore = score(tight, slope);
    HotSpots hot = new HotSpots();
    heat(tight, slope, hot);
    for (int i = 0; i < RUNGS.length && bestScore > enough; i++) {
      progress.at("parting: seam", 0.3 + 0.05 * i);
      double tolerance = RUNGS[i] * options.releaseMm();
      if (!target.flat() && RUNGS[i] > FLAT_SHARE) {
        target = new Target(outline, FlatTest.of(outline, columns, tolerance));
      }
      Found found = attempt(cut, target, tolerance, target.flat() ? null : hot);
      if (score(found, slope) < BETTER * bestScore) {
        best = found;
        bestScore = score(found, slope);
      }
      heat(found, slope, hot);
    }
    return best.crossings.faults() > 0 && target.flat()
        ? attempt(cut, target, options.releaseMm(), null)
        : best;
  }

  /** What is wrong with a seam: any crossing weighs more than all steep runs. */
  private static double score(Found found, double slope) {
    return found.crossings.faults() > 0 ? CROSSED : SteepRuns.of(found.seam, slope, null);
  }

  private static void heat(Found found, double slope, HotSpots hot) {
    hot.addAll(found.seam, found.crossings);
    SteepRuns.of(found.seam, slope, hot);
  }

  private Found attempt(BandCut cut, Target target, double tolerance, HotSpots hot) {
    Labeled labeled = cut.cut(target.height, target.flat(), tolerance, hot);
    Sides.adoptHidden(labeled.mesh(), labeled.side(), columns);
    Seam seam = Seam.of(labeled);
    return new Found(seam, new Crossings(seam), target.guide, target.wall, tolerance);
  }

  /** What the band cut aims at: a plane, or the rough sheet. */
  private final class Target {
    final double wall;
    final GridSheet guide;
    final DoubleBinaryOperator height;

    Target(Seam outline, FlatTest test) {
      double slope = StrictMath.tan(Math.toRadians(options.maxSlopeDeg()));
      wall =
          test.flat() ? test.height() : WallHeight.of(outline, box, ringMm, slope, test.height());
      guide = test.flat() ? null : new GridSheet(grid, wall, ringMm, slope);
      height = test.flat() ? (x, y) -> wall : guide;
    }

    boolean flat() {
      return guide == null;
    }
  }
}
