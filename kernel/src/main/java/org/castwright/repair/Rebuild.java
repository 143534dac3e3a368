package org.castwright.repair;

import java.util.stream.IntStream;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * The last rung: a new surface round everything whose winding number is above one half, made on a
 * cubic grid. Each of its points lies within the tetrahedron of a cell of which one edge crosses
 * the old surface (or, over a hole, the half-way surface that closes it), so it is within √3 cells
 * of it. The other way round there is no such bound: walls thinner than a cell, and surface buried
 * in overlaps, can be lost, and are counted in the step. The result is closed and manifold.
 */
final class Rebuild {

  /** Halvings of a grid edge where it does not cross exactly one triangle: to 1/4096 of it. */
  private static final int HALVINGS = 12;

  /** Two hits nearer to each other than this share of an edge are one, on a side two share. */
  private static final double SAME_HIT = 1e-9;

  private Rebuild() {}

  static void apply(Draft draft, RepairOptions options, Progress progress) {
    TriMesh old = draft.mesh().volume() < 0 ? draft.mesh().reversed() : draft.mesh();
    double cell =
        options.remeshCell() > 0
            ? options.remeshCell()
            : old.bounds().longestSide() / RepairOptions.REMESH_CELLS;
    progress.at("rebuilding the surface", 0);
    TriangleTree tree = new TriangleTree(old);
    WindingTree winding = new WindingTree(tree);
    WindingGrid grid = new WindingGrid(old, winding, cell, progress);
    progress.at("rebuilding the surface", 0.7);
    ThreadLocal<SurfaceQueries> queries = ThreadLocal.withInitial(() -> new SurfaceQueries(tree));
    TriMesh made = Tetrahedra.surface(grid, (p, q) -> crossing(queries.get(), winding, p, q));
    if (made.isEmpty()) {
      throw new MeshException(
          "the rebuilt surface is empty: the model encloses nothing wider than a cell of "
              + Draft.number(cell)
              + " mm");
    }
    progress.at("rebuilding the surface", 0.9);
    tell(draft, old, made, cell);
  }

  private static void tell(Draft draft, TriMesh old, TriMesh made, double cell) {
    double bound = Math.sqrt(3) * cell;
    double[] far = distances(old, made, bound);
    int lost = 0;
    double moved = 0;
    for (double d : far) {
      lost += d >= bound ? 1 : 0;
      moved = d < bound ? Math.max(moved, d) : moved;
    }
    String words =
        "surface rebuilt with "
            + Draft.many(made.triangleCount(), "triangle", "triangles")
            + " on a grid of "
            + Draft.number(cell)
            + " mm, within "
            + Draft.number(bound)
            + " mm of the old one";
    if (lost > 0) {
      words +=
          "; "
              + lost
              + " of "
              + old.vertexCount()
              + " old vertices, buried in overlaps or on walls thinner than a cell, are not on it";
    }
    draft.replace(made, new HealingStep("rebuild", words, made.triangleCount(), moved));
  }

  /** The distance of each old vertex from the new surface, at most {@code limit}. */
  private static double[] distances(TriMesh old, TriMesh made, double limit) {
    TriangleTree tree = new TriangleTree(made);
    ThreadLocal<SurfaceQueries> queries = ThreadLocal.withInitial(() -> new SurfaceQueries(tree));
    double[] x = old.xyz();
    return IntStream.range(0, old.vertexCount())
        .parallel()
        .mapToDouble(v -> queries.get().distance(x[3 * v], x[3 * v + 1], x[3 * v + 2], limit))
        .toArray();
  }

  private static double crossing(
      SurfaceQueries queries, WindingTree winding, double[] p, double[] q) {
    double[] hits = new double[2];
    int n = queries.hits(p, q, hits);
    if (n == 1 || (n == 2 && Math.abs(hits[0] - hits[1]) < SAME_HIT)) {
      return hits[0];
    }
    double lo = 0;
    double hi = 1;
    boolean startsInside = inside(winding, p, q, 0);
    for (int i = 0; i < HALVINGS; i++) {
      double mid = (lo + hi) / 2;
      if (inside(winding, p, q, mid) == startsInside) {
        lo = mid;
      } else {
        hi = mid;
      }
    }
    return (lo + hi) / 2;
  }

  private static boolean inside(WindingTree winding, double[] p, double[] q, double t) {
    return winding.at(p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2]))
        > 0.5;
  }
}
