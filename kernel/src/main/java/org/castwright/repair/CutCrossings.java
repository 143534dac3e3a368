package org.castwright.repair;

import java.util.Arrays;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * Where a surface passes through itself its triangles are cut out, with as many rings of neighbors
 * as it takes, and the holes are closed. The idea is that of M. Attene, A lightweight approach to
 * repairing digitized polygon meshes, The Visual Computer 26 (2010). Nothing is changed unless all
 * crossings go, no part of the surface moves farther than half the width of a hole that is closed
 * elsewhere, and as many shells are left as there were: surfaces that run far through each other
 * keep a part inside, which would become a hollow.
 */
final class CutCrossings {

  private static final int ROUNDS = 8;

  /** Loose scraps that cutting leaves have less than this share of the surface. */
  private static final double SCRAP = 0.002;

  /**
   * Holes wider than this share of the diagonal are not closed; what counts is how far it moves.
   */
  private static final double WIDE = 0.25;

  private final RepairOptions options;
  private final Progress progress;

  private CutCrossings(RepairOptions options, Progress progress) {
    this.options = options.withMaxHoleShare(WIDE);
    this.progress = progress.as("cutting out crossings");
  }

  /** Returns whether no crossings are left. */
  static boolean apply(Draft draft, int pairs, RepairOptions options, Progress progress) {
    TriMesh given = draft.mesh();
    CutCrossings work = new CutCrossings(options, progress);
    TriMesh mended = work.mended(given);
    if (mended == null) {
      return false;
    }
    double moved = moved(given, mended);
    if (moved > options.maxHoleShare() * given.bounds().diagonal() / 2) {
      return false;
    }
    String words =
        Draft.many(pairs, "pair of triangles", "pairs of triangles")
            + " that passed through each other cut out and the holes closed, the surface moved by up"
            + " to "
            + Draft.number(moved)
            + " mm";
    draft.replace(mended, new HealingStep("cut-crossings", words, pairs, moved));
    return true;
  }

  /** The farthest that a corner or the middle of a triangle lies from the new surface, mm. */
  private static double moved(TriMesh from, TriMesh to) {
    SurfaceQueries surface = new SurfaceQueries(new TriangleTree(to));
    double far = from.bounds().diagonal();
    double most = 0;
    for (int v = 0; v < from.vertexCount(); v++) {
      Vec3 p = from.vertex(v);
      most = Math.max(most, surface.distance(p.x(), p.y(), p.z(), far));
    }
    for (int f = 0; f < from.triangleCount(); f++) {
      Vec3 p = from.center(f);
      most = Math.max(most, surface.distance(p.x(), p.y(), p.z(), far));
    }
    return most;
  }

  private TriMesh mended(TriMesh given) {
    int shells = MeshCheck.of(given).components();
    TriMesh mesh = given;
    for (int round = 0; round < ROUNDS; round++) {
      boolean[] crossing = crossing(mesh);
      if (crossing == null) {
        return MeshCheck.of(mesh).components() == shells ? mesh : null;
      }
      for (int r = 0; r < round; r++) {
        widen(mesh, crossing);
      }
      TriMesh closed = closed(mesh, crossing);
      // from a mesh that did not close the next round cuts wider
      mesh = closed == null ? mesh : closed;
    }
    return null;
  }

  /** The triangles that meet others, or null if none does. */
  private boolean[] crossing(TriMesh mesh) {
    int[] self = new int[mesh.triangleCount()];
    Arrays.setAll(self, f -> f);
    long[] pairs = new Crossings(new TriangleTree(mesh), self, progress).labelPairs();
    if (pairs.length == 0) {
      return null;
    }
    boolean[] out = new boolean[self.length];
    for (long p : pairs) {
      out[(int) (p >> 32)] = true;
      out[(int) p] = true;
    }
    return out;
  }

  private static void widen(TriMesh mesh, boolean[] marked) {
    int[] t = mesh.tri();
    boolean[] corner = new boolean[mesh.vertexCount()];
    for (int i = 0; i < t.length; i++) {
      corner[t[i]] |= marked[i / 3];
    }
    for (int i = 0; i < t.length; i++) {
      marked[i / 3] |= corner[t[i]];
    }
  }

  /** The mesh without the triangles marked, its holes closed; null if they do not close. */
  private TriMesh closed(TriMesh mesh, boolean[] cut) {
    boolean[] kept = new boolean[cut.length];
    for (int f = 0; f < kept.length; f++) {
      kept[f] = !cut[f];
    }
    TriMesh open = Draft.keep(mesh, kept);
    if (open.isEmpty()) {
      return null;
    }
    Draft work = new Draft(withoutScraps(open));
    SplitTouching.apply(work);
    CloseHoles.apply(work, options, progress);
    return MeshCheck.of(work.mesh()).closedManifold() ? work.mesh() : null;
  }

  /** Drops open pieces of surface that are small: the rest of what was cut out round them. */
  private static TriMesh withoutScraps(TriMesh mesh) {
    Shells shells = new Shells(mesh);
    EdgeTable edges = new EdgeTable(mesh.tri(), mesh.vertexCount());
    boolean[] open = new boolean[shells.count()];
    for (int e = 0; e < edges.count(); e++) {
      if (edges.size(e) == 1) {
        open[shells.labels()[edges.half(e, 0) / 3]] = true;
      }
    }
    double limit = SCRAP * mesh.area();
    boolean[] kept = new boolean[open.length];
    for (int s = 0; s < kept.length; s++) {
      kept[s] = !open[s] || shells.area(s) > limit;
    }
    return shells.keep(kept);
  }
}
