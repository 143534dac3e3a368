package org.castwright.repair;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * Joins vertices that lie almost in one place. Only ends of open edges are joined, to each other,
 * so sound surface is never touched. Three distances are tried, a hundredth, a tenth and the whole
 * of the tolerance; a try is kept only if it leaves fewer open edges and no more edges of three or
 * more triangles than there were.
 */
final class NearWeld {

  private static final double[] LADDER = {0.01, 0.1, 1};

  /** Of the healthy edges, the share that counts as short. */
  private static final double SHORT_QUANTILE = 0.01;

  private static final double SHARE_OF_SHORT = 0.25;

  private NearWeld() {}

  static void apply(Draft draft, RepairOptions options) {
    EdgeTable edges = draft.edges();
    if (openEdges(edges) == 0) {
      return;
    }
    double tolerance = tolerance(draft.mesh(), edges, options);
    for (double share : LADDER) {
      attempt(draft, share * tolerance);
    }
  }

  /** The larger of what the model's size and its short healthy edges allow is never used. */
  static double tolerance(TriMesh mesh, EdgeTable edges, RepairOptions options) {
    double[] lengths = new double[edges.count()];
    int n = 0;
    for (int e = 0; e < edges.count(); e++) {
      if (edges.size(e) == 2) {
        int h = edges.half(e, 0);
        double square = PointGrid.squareDistance(mesh.xyz(), edges.from(h), edges.to(h));
        if (square > 0) {
          lengths[n++] = Math.sqrt(square);
        }
      }
    }
    double bySize = options.nearWeldShare() * mesh.bounds().diagonal();
    if (n == 0) {
      return bySize;
    }
    Arrays.sort(lengths, 0, n);
    return Math.min(bySize, SHARE_OF_SHORT * lengths[(int) (n * SHORT_QUANTILE)]);
  }

  private static void attempt(Draft draft, double tolerance) {
    TriMesh mesh = draft.mesh();
    EdgeTable edges = draft.edges();
    int open = openEdges(edges);
    if (open == 0 || !(tolerance > 0)) {
      return;
    }
    int[] target = new int[mesh.vertexCount()];
    double moved = cluster(mesh, openVertices(mesh, edges), tolerance, target);
    int joined = 0;
    for (int v = 0; v < target.length; v++) {
      joined += target[v] == v ? 0 : 1;
    }
    if (joined == 0) {
      return;
    }
    int[] tri = new int[mesh.tri().length];
    Arrays.setAll(tri, i -> target[mesh.tri()[i]]);
    Draft tried = new Draft(Draft.compact(mesh.xyz(), tri));
    CleanTriangles.degenerate(tried);
    EdgeTable after = tried.edges();
    if (openEdges(after) < open && crowdedEdges(after) <= crowdedEdges(edges)) {
      String words =
          Draft.many(joined, "vertex", "vertices")
              + " on open edges joined to another within "
              + Draft.number(tolerance)
              + " mm";
      draft.replace(tried.mesh(), new HealingStep("weld-near", words, joined, moved));
    }
  }

  /** Sends each vertex marked to the first one near it; returns the longest way, mm. */
  private static double cluster(TriMesh mesh, boolean[] marked, double tolerance, int[] target) {
    int n = 0;
    for (boolean m : marked) {
      n += m ? 1 : 0;
    }
    PointGrid grid = new PointGrid(mesh.xyz(), tolerance, n);
    double farthest = 0;
    for (int v = 0; v < target.length; v++) {
      target[v] = v;
      if (marked[v]) {
        int near = grid.nearest(v);
        if (near >= 0) {
          target[v] = near;
          farthest = Math.max(farthest, PointGrid.squareDistance(mesh.xyz(), v, near));
        } else {
          grid.add(v);
        }
      }
    }
    return Math.sqrt(farthest);
  }

  private static boolean[] openVertices(TriMesh mesh, EdgeTable edges) {
    boolean[] open = new boolean[mesh.vertexCount()];
    for (int e = 0; e < edges.count(); e++) {
      if (edges.size(e) == 1) {
        open[edges.from(edges.half(e, 0))] = true;
        open[edges.to(edges.half(e, 0))] = true;
      }
    }
    return open;
  }

  static int openEdges(EdgeTable edges) {
    int n = 0;
    for (int e = 0; e < edges.count(); e++) {
      n += edges.size(e) == 1 ? 1 : 0;
    }
    return n;
  }

  private static int crowdedEdges(EdgeTable edges) {
    int n = 0;
    for (int e = 0; e < edges.count(); e++) {
      n += edges.size(e) > 2 ? 1 : 0;
    }
    return n;
  }
}
