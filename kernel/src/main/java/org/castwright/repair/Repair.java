package org.castwright.repair;

import java.util.List;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.mesh.Weld;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidException;
import org.castwright.solid.SolidKernel;

/**
 * The healing ladder: each rung is one class, taken in the order written in {@link #heal}, and
 * tells what it did. A mesh that is a sound body already climbs past every rung untouched.
 */
public final class Repair {

  private final Draft draft;
  private final RepairOptions options;
  private final SolidKernel kernel;
  private final Progress progress;

  private Repair(TriMesh raw, RepairOptions options, SolidKernel kernel, Progress progress) {
    this.draft = new Draft(raw);
    this.options = options;
    this.kernel = kernel;
    this.progress = progress;
  }

  /**
   * Makes a body of a mesh.
   *
   * @param raw any triangles, millimeters
   * @param kernel unites overlapping parts; used only if there are any
   * @throws MeshException if that cannot be done within the options; the message says what remains,
   *     where, and what to do
   */
  public static RepairResult heal(
      TriMesh raw, RepairOptions options, SolidKernel kernel, Progress progress) {
    refuseHopeless(raw);
    MeshHealth before = MeshHealth.of(raw, progress);
    Repair repair = new Repair(raw, options, kernel, progress);
    if (!before.closedManifold()) {
      repair.mend();
    }
    Nesting nesting = repair.settle();
    List<EnclosedVoid> voids = Voids.apply(repair.draft, nesting, options);
    TriMesh mesh = repair.draft.mesh();
    if (!MeshCheck.of(mesh).closedManifold() || !(mesh.volume() > 0)) {
      throw new MeshException(
          "after healing the model still has " + MeshCheck.of(mesh).faults() + Faults.ADVICE);
    }
    return new RepairResult(mesh, repair.draft.steps(), voids, before);
  }

  private static void refuseHopeless(TriMesh raw) {
    if (raw.isEmpty()) {
      throw new MeshException("the model has no triangles: export it again as a mesh");
    }
    for (double v : raw.xyz()) {
      if (!Double.isFinite(v)) {
        throw new MeshException(
            "a coordinate of the model is not a finite number: export it again");
      }
    }
  }

  /** From loose triangles to closed, manifold shells. */
  private void mend() {
    if (options.mode() == HealMode.NONE) {
      throw new MeshException(Faults.words(draft.mesh()) + ": use --heal standard to mend it");
    }
    progress.at("mending the surface", 0);
    weldExact();
    CleanTriangles.degenerate(draft);
    NearWeld.apply(draft, options);
    CleanTriangles.apply(draft);
    refuseNothing("is left after dropping degenerate triangles");
    InnerWalls.apply(draft);
    Patches.orient(draft);
    SplitTouching.apply(draft);
    CloseHoles.apply(draft, options, progress);
    if (MeshCheck.of(draft.mesh()).closedManifold()) {
      return;
    }
    if (options.mode() != HealMode.REMESH) {
      throw new MeshException(Faults.words(draft.mesh()) + Faults.ADVICE);
    }
    Rebuild.apply(draft, options, progress);
  }

  private void weldExact() {
    TriMesh welded = Weld.exact(draft.mesh());
    int merged = draft.mesh().vertexCount() - welded.vertexCount();
    if (merged > 0) {
      String words =
          Draft.many(merged, "vertex", "vertices") + " in the very same place as another joined";
      draft.replace(welded, new HealingStep("weld-exact", words, merged, 0));
    }
  }

  /** From closed shells to bodies that do not overlap. */
  private Nesting settle() {
    TriMesh given = draft.mesh();
    Nesting nesting = SettleShells.apply(draft, options, progress);
    refuseNothing("encloses a volume");
    if (options.mode() == HealMode.NONE) {
      refuseChange(given, nesting);
      return nesting;
    }
    try {
      nesting = UniteParts.apply(draft, nesting, kernel, progress);
    } catch (SolidException e) {
      if (options.mode() != HealMode.REMESH) {
        throw new MeshException(
            "the overlapping parts of the model cannot be united ("
                + e.getMessage()
                + "): unite them in the modeling program, or use --heal remesh",
            e);
      }
      return rebuild();
    }
    if (nesting.crossingPairs() == 0) {
      return nesting;
    }
    if (CutCrossings.apply(draft, nesting.crossingPairs(), options, progress)) {
      return SettleShells.apply(draft, options, progress);
    }
    if (options.mode() == HealMode.REMESH) {
      return rebuild();
    }
    String words =
        Draft.many(nesting.crossingPairs(), "pair of triangles passes", "pairs of triangles pass")
            + " through each other; left as they are, the surface is closed";
    draft.replace(
        draft.mesh(), new HealingStep("self-intersections", words, nesting.crossingPairs(), 0));
    return nesting;
  }

  private Nesting rebuild() {
    Rebuild.apply(draft, options, progress);
    Nesting nesting = SettleShells.apply(draft, options, progress);
    refuseNothing("encloses a volume");
    return nesting;
  }

  private void refuseNothing(String what) {
    if (draft.mesh().isEmpty()) {
      throw new MeshException("nothing in the model " + what + ": it needs thickness to be cast");
    }
  }

  private void refuseChange(TriMesh given, Nesting nesting) {
    int overlapping = UniteParts.overlapping(nesting);
    if (draft.mesh() != given || overlapping > 0) {
      String what =
          overlapping > 0
              ? overlapping + " parts of the model overlap"
              : draft
                  .steps()
                  .get(0)
                  .words()
                  .replace(" turned to face", " should be turned to face");
      throw new MeshException(what + ": use --heal standard to mend it");
    }
  }
}
