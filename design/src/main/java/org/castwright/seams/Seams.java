package org.castwright.seams;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/** Decides which piece forms which part of a casting and runs the seams between them. */
public final class Seams {

  private static final int MERGE_ROUNDS = 4;

  /** Times that facets beside the seams found so far are split and labels chosen anew at most. */
  private static final int CLOSER_LOOKS = 3;

  private Seams() {}

  /**
   * Labels, seams and the split mesh, with freedom read off depth images.
   *
   * @param casting closed mesh, mm
   * @param pulls unit vectors in the casting's frame, in the order the pieces leave
   * @param wishes in the casting's frame
   * @throws MeshException if the mesh is open or a wish names what there is not
   */
  public static SeamResult of(
      TriMesh casting, List<Vec3> pulls, Wishes wishes, SeamOptions options, Progress progress) {
    Freedom freedom = ShadowFreedom.of(casting, pulls, options.releaseMm(), options.mostPixels());
    return of(casting, pulls, freedom, wishes, options, progress);
  }

  /** The same with freedom from elsewhere. */
  public static SeamResult of(
      TriMesh casting,
      List<Vec3> pulls,
      Freedom freedom,
      Wishes wishes,
      SeamOptions options,
      Progress progress) {
    if (freedom.pieces() != pulls.size()) {
      throw new IllegalArgumentException(
          pulls.size() + " pulls, but freedom of " + freedom.pieces() + " pieces");
    }
    wishes.check(pulls.size(), casting.triangleCount());
    FacetFacts facts =
        Refinement.of(Tiling.whole(casting), null, pulls, freedom, wishes, options, progress);
    SurfaceEdges edges = SurfaceEdges.of(facts.mesh());
    byte[] label = FacetLabels.of(facts, edges, options, progress);
    for (int i = 0; i < CLOSER_LOOKS; i++) {
      byte[] beside = Refinement.besideSeams(facts.tiling.labeled(label), edges);
      int before = label.length;
      facts =
          Refinement.of(
              facts.tiling.labeled(beside), facts, pulls, freedom, wishes, options, progress);
      if (facts.mesh().triangleCount() == before) {
        break;
      }
      edges = SurfaceEdges.of(facts.mesh());
      label = FacetLabels.of(facts, edges, options, progress);
    }
    double first = length(facts.tiling.labeled(label), edges);
    SeamCurve curve = CurveStart.of(facts, label, freedom, options);
    CurveShortening.run(curve, progress);
    Tiling cut = CurveCut.of(curve, facts);
    return finished(casting, cut, first, pulls, freedom, wishes, options);
  }

  private static SeamResult finished(
      TriMesh casting,
      Tiling cut,
      double firstLengthMm,
      List<Vec3> pulls,
      Freedom freedom,
      Wishes wishes,
      SeamOptions options) {
    FacetFacts facts = FacetFacts.of(cut, pulls, freedom, wishes, options);
    SurfaceEdges edges = SurfaceEdges.of(cut.mesh);
    PatchMerge.run(facts, edges, cut.label, options, MERGE_ROUNDS);
    SeamMeasures measures = SeamMeasures.of(facts, edges, cut.label, firstLengthMm);
    Tiling joined = Rejoin.of(casting, cut, edges);
    return new SeamResult(joined, new SeamLines(joined, SurfaceEdges.of(joined.mesh)), measures);
  }

  private static double length(Tiling tiling, SurfaceEdges edges) {
    double sum = 0;
    for (int e = 0; e < edges.count(); e++) {
      sum += CurveStart.seam(tiling, edges, e) ? edges.length(tiling.mesh, e) : 0;
    }
    return sum;
  }
}
