package org.castwright.parting;

import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import org.castwright.mesh.TriMesh;

/**
 * Moves the seam inside the band of possible seams. Along a near-vertical wall, or where noise
 * makes the outline zigzag, facets may change sides as long as the part that does stays within a
 * tolerance of the outside: facets that cross the target sheet there are cut along it. Vertices
 * close to the sheet and, unless the target is a plane, vertices of sharp outlines stay on the
 * seam.
 */
final class BandCut {

  /** Vertices closer to the sheet than this are taken as on it, mm: no slivers. */
  private static final double SNAP_MM = 0.02;

  /** Tolerance away from hot spots, mm: nothing but rounding. */
  static final double TIGHT_MM = 1e-3;

  /** Edges of a part that changes sides are looked at this often, mm, and at most so many times. */
  private static final double SAMPLE_MM = 0.7;

  private static final int MAX_SAMPLES = 12;

  /** Corners of a triangle cut by one line. */
  private static final int MAX_PART = 4;

  private static final int PROBES = 16;
  private static final double[] PROBE_X = new double[PROBES];
  private static final double[] PROBE_Y = new double[PROBES];
  private static final int FRONT = 1;
  private static final int BACK = 2;
  private static final int WALL = 4;

  static {
    for (int k = 0; k < PROBES; k++) {
      double a = (k + 0.37) * 2 * Math.PI / PROBES; // an odd start: no probe along an axis
      PROBE_X[k] = StrictMath.cos(a);
      PROBE_Y[k] = StrictMath.sin(a);
    }
  }

  private final TriMesh mesh;
  private final byte[] direction;
  private final Columns columns;
  private final int[] near;
  private final byte[] facing;

  /** {@code direction}: the side of every facet by direction alone. */
  BandCut(TriMesh mesh, byte[] direction, Columns columns, DepthGrid grid) {
    this.mesh = mesh;
    this.direction = direction;
    this.columns = columns;
    double[] v = mesh.xyz();
    near =
        IntStream.range(0, mesh.vertexCount())
            .filter(i -> grid.nearOutside(v[3 * i], v[3 * i + 1]))
            .toArray();
    facing = facings();
  }

  private byte[] facings() {
    byte[] out = new byte[mesh.vertexCount()];
    for (int f = 0; f < mesh.triangleCount(); f++) {
      var n = mesh.areaVector(f);
      double limit = Sides.LEVEL_SINE * n.length();
      int bit = limit == 0 ? 0 : n.z() > limit ? FRONT : n.z() < -limit ? BACK : WALL;
      for (int k = 0; k < 3; k++) {
        out[mesh.tri()[3 * f + k]] |= (byte) bit;
      }
    }
    return out;
  }

  /** The casting as it is, sides by direction. */
  Labeled uncut() {
    return new Labeled(mesh, direction.clone());
  }

  /**
   * The casting cut along the target.
   *
   * @param level whether the target is a plane
   * @param hot where {@code toleranceMm} holds; null for everywhere, else {@link #TIGHT_MM} holds
   *     elsewhere
   */
  Labeled cut(DoubleBinaryOperator target, boolean level, double toleranceMm, HotSpots hot) {
    return new Cutting(target, level, toleranceMm, hot).result();
  }

  /** One cut: heights above the target, the band, the cut edges. */
  private final class Cutting {
    private final DoubleBinaryOperator target;
    private final boolean level;
    private final double tolerance;
    private final HotSpots hot;
    private final double[] above = new double[mesh.vertexCount()];
    private final boolean[] band = new boolean[mesh.vertexCount()];
    private final boolean[] moves = new boolean[mesh.triangleCount()];
    private final EdgeMap cutAt = new EdgeMap(1024);
    private final DoubleList added = new DoubleList();
    private final Column column = new Column();

    Cutting(DoubleBinaryOperator target, boolean level, double tolerance, HotSpots hot) {
      this.target = target;
      this.level = level;
      this.tolerance = tolerance;
      this.hot = hot;
      double[] v = mesh.xyz();
      IntStream.range(0, near.length)
          .parallel()
          .forEach(k -> band[near[k]] = inBand(v[3 * near[k]], v[3 * near[k] + 1], new Column()));
      for (int i = 0; i < above.length; i++) {
        above[i] = height(i);
      }
    }

    private boolean isHot(double x, double y) {
      return hot != null && hot.has(x, y);
    }

    private boolean inBand(double x, double y, Column c) {
      double r = hot == null || hot.has(x, y) ? tolerance : Math.min(tolerance, TIGHT_MM);
      for (int k = 0; k < PROBES; k++) {
        if (!columns.at(x + r * PROBE_X[k], y + r * PROBE_Y[k], c)) {
          return true;
        }
      }
      return false;
    }

    private double height(int i) {
      double[] v = mesh.xyz();
      double z = v[3 * i + 2] - target.applyAsDouble(v[3 * i], v[3 * i + 1]);
      boolean pinned = !level && facing[i] == (FRONT | BACK) && !isHot(v[3 * i], v[3 * i + 1]);
      return band[i] && (Math.abs(z) < SNAP_MM || pinned) ? 0 : z;
    }

    Labeled result() {
      for (int f = 0; f < moves.length; f++) {
        if (mayMove(f)) {
          moves[f] = true;
          for (int k = 0; k < 3; k++) {
            cutEdge(3 * f + k);
          }
        }
      }
      return split();
    }

    /** Whether facet f has a part on the wrong side of the target that may change sides. */
    private boolean mayMove(int f) {
      int s = direction[f];
      boolean any = false;
      for (int k = 0; k < 3; k++) {
        int v = mesh.tri()[3 * f + k];
        if (above[v] * s < 0) {
          any = true;
          if (!band[v]) {
            return false;
          }
        }
      }
      return any && partInBand(f, s);
    }

    /** Whether the outline of the part of facet f on the wrong side lies in the band. */
    private boolean partInBand(int f, int s) {
      double[] xy = new double[2 * MAX_PART];
      int n = 0;
      for (int c = 3 * f; c < 3 * f + 3; c++) {
        int p = mesh.tri()[c];
        int q = mesh.tri()[Neighbors.next(c)];
        if (above[p] * s <= 0) {
          xy[2 * n] = mesh.xyz()[3 * p];
          xy[2 * n++ + 1] = mesh.xyz()[3 * p + 1];
        }
        if (above[p] * above[q] < 0) {
          double[] x = point(p, q);
          if (!inBand(x[0], x[1], column)) {
            return false;
          }
          xy[2 * n] = x[0];
          xy[2 * n++ + 1] = x[1];
        }
      }
      for (int i = 0; i < n; i++) {
        int j = (i + 1) % n;
        if (!edgeInBand(xy[2 * i], xy[2 * i + 1], xy[2 * j], xy[2 * j + 1])) {
          return false;
        }
      }
      return true;
    }

    private boolean edgeInBand(double x0, double y0, double x1, double y1) {
      int n = 1 + (int) Math.min(MAX_SAMPLES, Math.hypot(x1 - x0, y1 - y0) / SAMPLE_MM);
      for (int i = 0; i < n; i++) {
        double t = (i + 0.5) / n;
        if (!inBand(x0 + t * (x1 - x0), y0 + t * (y1 - y0), column)) {
          return false;
        }
      }
      return true;
    }

    private double[] point(int p, int q) {
      double[] v = mesh.xyz();
      int a = 3 * Math.min(p, q);
      int b = 3 * Math.max(p, q);
      double t = above[a / 3] / (above[a / 3] - above[b / 3]);
      double x = (float) (v[a] + t * (v[b] - v[a]));
      double y = (float) (v[a + 1] + t * (v[b + 1] - v[a + 1]));
      double z = level ? target.applyAsDouble(x, y) : v[a + 2] + t * (v[b + 2] - v[a + 2]);
      return new double[] {x, y, (float) z};
    }

    private void cutEdge(int corner) {
      int p = mesh.tri()[corner];
      int q = mesh.tri()[Neighbors.next(corner)];
      if (above[p] * above[q] < 0 && !cutAt.has(EdgeMap.both(p, q))) {
        cutAt.put(EdgeMap.both(p, q), mesh.vertexCount() + added.size() / 3);
        for (double x : point(p, q)) {
          added.add(x);
        }
      }
    }

    private Labeled split() {
      MeshEdit edit = new MeshEdit(mesh, added);
      for (int f = 0; f < moves.length; f++) {
        int lone = -1;
        int cuts = 0;
        int[] at = new int[3];
        for (int k = 0; k < 3; k++) {
          int c = 3 * f + k;
          at[k] = cutAt.get(EdgeMap.both(mesh.tri()[c], mesh.tri()[Neighbors.next(c)]));
          if (at[k] >= 0) {
            cuts++;
          }
          if (cuts > 0 && lone < 0) {
            lone = k;
          }
        }
        if (cuts == 0) {
          double sum = 0;
          for (int k = 0; k < 3; k++) {
            sum += above[mesh.tri()[3 * f + k]];
          }
          edit.facet(mesh.tri(), 3 * f, side(f, sum));
        } else if (cuts == 1) {
          one(edit, f, lone, at[lone]);
        } else {
          two(edit, f, at);
        }
      }
      return edit.result();
    }

    private byte side(int f, double height) {
      if (!moves[f] || height == 0) {
        return direction[f];
      }
      return height > 0 ? Sides.UPPER : Sides.LOWER;
    }

    private int corner(int f, int k) {
      return mesh.tri()[3 * f + k % 3];
    }

    private void one(MeshEdit edit, int f, int k, int m) {
      int a = corner(f, k);
      int b = corner(f, k + 1);
      int c = corner(f, k + 2);
      edit.facet(a, m, c, side(f, above[a]));
      edit.facet(m, b, c, side(f, above[b]));
    }

    private void two(MeshEdit edit, int f, int[] at) {
      int k = at[0] < 0 ? 0 : at[1] < 0 ? 1 : 2;
      int a = corner(f, k);
      int b = corner(f, k + 1);
      int c = corner(f, k + 2);
      int mb = at[(k + 1) % 3];
      int mc = at[(k + 2) % 3];
      edit.facet(mb, c, mc, side(f, above[c]));
      edit.facet(a, b, mb, side(f, above[a]));
      edit.facet(a, mb, mc, side(f, above[a]));
    }
  }
}
