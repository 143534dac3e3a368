package org.castwright.parting;

import java.util.Arrays;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;

/**
 * A sheet that covers the whole plan: outside the shadow as any sheet, inside it between the lowest
 * and the highest casting. Starts with points in the middle of the gap and adds, round by round, in
 * every triangle the point where the sheet leaves the gap worst.
 */
final class ThroughSheet {

  private static final double INNER_MM = 2;
  private static final int MAX_ROUNDS = 8;

  /** Share of the gap kept free above and below a node of the sheet. */
  private static final double GAP_SHARE = 0.3;

  /** A gap narrower than this is met in its middle, mm. */
  private static final double NARROW_MM = 0.2;

  /** Leaving the gap by less is rounding, mm. */
  private static final double LEAVES_MM = 1e-4;

  /** No two nodes closer than this, mm. */
  private static final double APART_MM = 0.05;

  /** How far inside the outline the sheet is looked at besides the grid, mm. */
  private static final double[] BESIDE_MM = {0.08, 0.25};

  private final SheetJob job;

  /** Starting heights, or null if the sheet is a plane. */
  private final GridSheet guide;

  private final SheetNodes nodes = new SheetNodes();
  private final PlanClusters taken = new PlanClusters(APART_MM, new DoubleList(), 4096);

  /**
   * Places where the sheet must keep inside the casting's gap, packed x y lower upper. Nearer to
   * the outline than the release tolerance it need not.
   */
  private final DoubleList watched = new DoubleList();

  private Triangulation plan;
  private double[] z;
  private TriMesh mesh;
  private int lips;

  ThroughSheet(SeamSearch.Found found, SheetJob job) {
    this.job = job;
    guide = found.guide();
    OutlinePieces outline =
        new OutlinePieces(found.seam(), found.crossings(), job.columns(), nodes);
    if (guide != null && found.crossings().faults() > 0) {
      OutlineEvening.of(nodes, job);
    }
    nodes.walls(job.box(), job.ringMm(), job.wall(), guide == null);
    nodes.outside(job.grid(), job.ringMm(), guide, job.wall());
    double[] xy = nodes.points();
    for (int i = 0; i < xy.length; i += 2) {
      taken.pointAt(xy[i], xy[i + 1]);
    }
    watch(outline.pieces());
    if (guide != null) {
      inner();
    }
    for (int round = 0; round <= MAX_ROUNDS; round++) {
      solve();
      if (!refine(round < MAX_ROUNDS)) {
        break;
      }
    }
  }

  /** The sheet's triangles, facing up, every coordinate a float. */
  TriMesh mesh() {
    return mesh;
  }

  /** The mesh's vertices on each wall, as {@link BlockShell#add} wants them. */
  int[][] walls() {
    int[][] w = new int[4][];
    for (int k = 0; k < 4; k++) {
      w[k] = nodes.walls[k].toArray();
    }
    return w;
  }

  /** Watched places at which the sheet still leaves the gap. */
  int lips() {
    return lips;
  }

  private void watch(double[] pieces) {
    DepthGrid grid = job.grid();
    for (int o = 0; o < grid.nx * grid.ny; o++) {
      if (grid.in(o) && !(grid.rim(o) && OutlineCheck.near(job, grid.x(o), grid.y(o), true))) {
        watch(grid.x(o), grid.y(o), grid.lower[o], grid.upper[o]);
      } else if (!grid.in(o) && grid.ceiling[o] < Double.MAX_VALUE) {
        watch(grid.x(o), grid.y(o), -Double.MAX_VALUE, grid.ceiling[o]);
      }
    }
    Column c = new Column();
    for (int i = 0; i < pieces.length; i += 4) {
      for (double d : BESIDE_MM) {
        double x = (float) (pieces[i] + d * pieces[i + 2]);
        double y = (float) (pieces[i + 1] + d * pieces[i + 3]);
        if (job.columns().at(x, y, c)) {
          watch(x, y, c.lower, c.upper);
        }
      }
    }
  }

  private void watch(double x, double y, double lower, double upper) {
    watched.add(x);
    watched.add(y);
    watched.add(lower);
    watched.add(upper);
  }

  private void inner() {
    DepthGrid grid = job.grid();
    int s = Math.max(1, (int) Math.round(INNER_MM / Math.max(grid.gx, grid.gy)));
    for (int j = 0; j < grid.ny; j += s) {
      for (int i = 0; i < grid.nx; i += s) {
        int o = j * grid.nx + i;
        if (grid.in(o)) {
          node(grid.x(o), grid.y(o), grid.lower[o], grid.upper[o]);
        }
      }
    }
  }

  /** Adds a node inside the gap unless another is close; says whether it did. */
  private boolean node(double px, double py, double lower, double upper) {
    double x = (float) px;
    double y = (float) py;
    if (taken.find(x, y) >= 0) {
      return false;
    }
    taken.pointAt(x, y);
    double gap = upper - lower;
    if (guide == null) {
      nodes.add(x, y, Math.max(lower, Math.min(upper, job.wall())), SheetNodes.SEAM);
    } else if (lower == -Double.MAX_VALUE) {
      nodes.addBetween(x, y, guide.applyAsDouble(x, y), lower, upper);
    } else if (gap < NARROW_MM) {
      nodes.add(x, y, (lower + upper) / 2, SheetNodes.SEAM);
    } else {
      nodes.addBetween(
          x, y, guide.applyAsDouble(x, y), lower + GAP_SHARE * gap, upper - GAP_SHARE * gap);
    }
    return true;
  }

  private void solve() {
    plan = new Triangulation(nodes.points(), nodes.edges());
    if (!plan.whole()) {
      // rather a lip than no sheet: without constraints there is always a triangulation
      plan = new Triangulation(nodes.points(), new int[0]);
    }
    z = nodes.heights();
    if (guide != null) {
      boolean[] all = new boolean[plan.tri.length / 3];
      Arrays.fill(all, true);
      SheetHeights heights = new SheetHeights(plan, all, nodes.kinds(), z);
      heights.solve(nodes.lows(), nodes.highs(), job.slope(), job.options().landMm());
    }
    MeshBuilder out = new MeshBuilder();
    for (int i = 0; i < z.length; i++) {
      out.vertex(plan.xy[2 * i], plan.xy[2 * i + 1], (float) z[i]);
    }
    for (int c = 0; c < plan.tri.length; c += 3) {
      out.triangle(plan.tri[c], plan.tri[c + 1], plan.tri[c + 2]);
    }
    mesh = out.build();
  }

  /** Counts where the sheet leaves the gap; adds the worst place of each triangle if asked. */
  private boolean refine(boolean add) {
    Columns sheet = new Columns(mesh);
    Column c = new Column();
    int n = plan.tri.length / 3;
    double[] worst = new double[n];
    int[] where = new int[n];
    lips = 0;
    for (int w = 0; w < watched.size(); w += 4) {
      if (!sheet.at(watched.get(w), watched.get(w + 1), c)) {
        continue;
      }
      double off = Math.max(watched.get(w + 2) - c.upper, c.upper - watched.get(w + 3));
      if (off > LEAVES_MM) {
        lips++;
        if (off > worst[c.upperFacet]) {
          worst[c.upperFacet] = off;
          where[c.upperFacet] = w;
        }
      }
    }
    boolean added = false;
    for (int t = 0; add && t < n; t++) {
      if (worst[t] > 0) {
        int w = where[t];
        added |= node(watched.get(w), watched.get(w + 1), watched.get(w + 2), watched.get(w + 3));
      }
    }
    return added;
  }
}
