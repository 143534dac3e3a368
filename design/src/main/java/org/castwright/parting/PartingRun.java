package org.castwright.parting;

import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/** One parting from start to end: the order of the steps stands here and nowhere else. */
final class PartingRun {

  /** Longest seam edge beside a sheet that is no plane, mm. */
  private static final double SEAM_EDGE_MM = 2.5;

  /** The least distance between casting and block, mm. */
  private static final double LEAST_MARGIN_MM = 1;

  private final TriMesh casting;
  private final BlockBox box;
  private final PartingOptions options;
  private final SolidKernel kernel;
  private final Progress progress;
  private final Clock clock;

  PartingRun(
      TriMesh casting,
      BlockBox box,
      PartingOptions options,
      SolidKernel kernel,
      Progress progress) {
    this.casting = casting;
    this.box = box;
    this.options = options;
    this.kernel = kernel;
    this.progress = progress;
    clock = new Clock(progress);
  }

  PartingResult run() {
    double ringMm = checked();
    clock.begin("envelopes", 0);
    Columns columns = new Columns(casting);
    DepthGrid grid = new DepthGrid(casting, box);
    clock.begin("seam", 0.2);
    SeamSearch.Found found =
        new SeamSearch(casting, columns, grid, box, options, ringMm).run(progress);
    SheetJob job = new SheetJob(casting, box, options, columns, grid, found.wall(), ringMm);
    String why = "";
    if (options.method() != Method.BOOLEAN) {
      clock.begin("stitch", 0.4);
      Stitch.Outcome outcome = stitch(found, job);
      if (outcome.halves() != null) {
        return result(job, found, outcome.seam(), outcome.halves(), "");
      }
      why = outcome.refusal();
    }
    if (options.method() == Method.STITCH) {
      throw new MeshException(
          "The halves cannot be stitched because " + why + "; use the boolean way.");
    }
    clock.begin("sheet", 0.45);
    ThroughSheet sheet = new ThroughSheet(found, job);
    clock.begin("boolean", 0.5);
    Halves halves = SlabCut.of(sheet, job, kernel);
    return result(job, found, found.seam(), halves, why);
  }

  private double checked() {
    if (casting.isEmpty()) {
      throw new MeshException("There is no casting: the mesh has no triangles.");
    }
    for (double v : casting.xyz()) {
      if ((float) v != v) {
        throw new IllegalArgumentException("casting coordinate " + v + " is not a 32-bit float");
      }
    }
    Box3 b = casting.bounds();
    double side = box.sideMargin(b);
    if (!(side >= LEAST_MARGIN_MM && box.heightMargin(b) >= LEAST_MARGIN_MM)) {
      throw new IllegalArgumentException(
          "the block must leave " + LEAST_MARGIN_MM + " mm all around the casting");
    }
    return Math.min(options.flatRingMm(), side / 2);
  }

  private Stitch.Outcome stitch(SeamSearch.Found found, SheetJob job) {
    if (found.crossings().x.size() > 0) {
      return new Stitch.Outcome(null, null, "the seam crosses itself in plan");
    }
    Seam seam = found.guide() == null ? found.seam() : SeamSplit.of(found.seam(), SEAM_EDGE_MM);
    return Stitch.of(seam, job, found.guide());
  }

  private PartingResult result(
      SheetJob job, SeamSearch.Found found, Seam seam, Halves halves, String why) {
    clock.begin("figures", 0.9);
    SheetSlope slope = SheetSlope.of(halves.sheet(), job.columns(), options.maxSlopeDeg());
    int slivers =
        Slivers.count(halves.upper()) + Slivers.count(halves.lower()) - Slivers.count(casting);
    Columns sheetColumns = new Columns(halves.sheet());
    OutlineDistance outline = new OutlineDistance(seam);
    List<double[]> loops = SeamLoops.of(seam);
    List<PartingStats.StageSeconds> seconds = clock.end();
    PartingStats stats =
        new PartingStats(
            slope.maxDeg(),
            slope.steepShare(),
            found.crossings().faults(),
            job.grid().trappedMm3,
            halves.leftovers(),
            halves.loose(),
            halves.lips(),
            Math.max(0, slivers),
            halves.upper().triangleCount() + halves.lower().triangleCount(),
            found.toleranceMm(),
            why,
            seconds);
    return new PartingResult(
        job,
        new Solid("upper half", halves.upper()),
        new Solid("lower half", halves.lower()),
        halves.parted(),
        halves.sheet(),
        sheetColumns,
        outline,
        loops,
        found.guide() == null,
        halves.used(),
        stats);
  }
}
