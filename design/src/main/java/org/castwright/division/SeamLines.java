package org.castwright.division;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.castwright.geom.Vec3;

/** Where sheets come out of the casting: level lines of a sheet's height over the roof. */
public final class SeamLines {

  /** A point this far above an earlier sheet, mm, has left with an earlier piece. */
  private static final double GONE = 0.3;

  /** Neighbors on each side that a point is averaged with, and how often. */
  private static final int REACH = 2;

  private static final int ROUNDS = 8;

  private final Division division;
  private final int piece;
  private final Sheet sheet;
  private final int nx;
  private final int ny;

  private SeamLines(Division division, int piece) {
    this.division = division;
    this.piece = piece;
    sheet = division.sheets().get(piece);
    nx = sheet.raster().nx();
    ny = sheet.raster().ny();
  }

  /** Open polylines of packed points, mm, in the frame of the casting. */
  public static List<double[]> of(Division division) {
    List<double[]> out = new ArrayList<>();
    for (int n = 0; n < division.sheets().size(); n++) {
      new SeamLines(division, n).trace(out);
    }
    return out;
  }

  private boolean inside(int o) {
    return sheet.height(o) < sheet.roofAt(o);
  }

  /**
   * A crossing on a grid edge has the number of its lower node, twice, plus one if it is upright.
   */
  private int edge(int o, boolean upright) {
    return 2 * o + (upright ? 1 : 0);
  }

  private void trace(List<double[]> out) {
    int[] a = new int[2 * nx * ny];
    int[] b = new int[2 * nx * ny];
    Arrays.fill(a, -1);
    Arrays.fill(b, -1);
    for (int j = 0; j + 1 < ny; j++) {
      for (int i = 0; i + 1 < nx; i++) {
        cell(j * nx + i, a, b);
      }
    }
    boolean[] done = new boolean[a.length];
    // open lines from their ends first, then closed ones
    for (int pass = 0; pass < 2; pass++) {
      for (int e = 0; e < a.length; e++) {
        if (!done[e] && a[e] >= 0 && (pass == 1 || b[e] < 0)) {
          follow(e, a, b, done, out);
        }
      }
    }
  }

  private void follow(int start, int[] a, int[] b, boolean[] done, List<double[]> out) {
    List<Vec3> line = new ArrayList<>();
    int e = start;
    while (e >= 0 && !done[e]) {
      done[e] = true;
      Vec3 p = point(e);
      if (gone(p)) {
        put(line, out);
        line = new ArrayList<>();
      } else {
        line.add(p);
      }
      e = a[e] >= 0 && !done[a[e]] ? a[e] : b[e] >= 0 && !done[b[e]] ? b[e] : -1;
    }
    put(line, out);
  }

  private static void put(List<Vec3> raw, List<double[]> out) {
    if (raw.size() < 2) {
      return;
    }
    List<Vec3> line = raw;
    for (int r = 0; r < ROUNDS; r++) {
      line = averaged(line);
    }
    double[] p = new double[3 * line.size()];
    for (int i = 0; i < line.size(); i++) {
      p[3 * i] = line.get(i).x();
      p[3 * i + 1] = line.get(i).y();
      p[3 * i + 2] = line.get(i).z();
    }
    out.add(p);
  }

  /** Points on the edges of a grid go in steps; averages of neighbors do not. */
  private static List<Vec3> averaged(List<Vec3> line) {
    List<Vec3> out = new ArrayList<>();
    int n = line.size();
    for (int i = 0; i < n; i++) {
      int reach = Math.min(REACH, Math.min(i, n - 1 - i));
      Vec3 sum = Vec3.ZERO;
      for (int k = i - reach; k <= i + reach; k++) {
        sum = sum.plus(line.get(k));
      }
      out.add(sum.times(1.0 / (2 * reach + 1)));
    }
    return out;
  }

  private boolean gone(Vec3 p) {
    for (int n = 0; n < piece; n++) {
      if (division.sheets().get(n).above(p) > GONE) {
        return true;
      }
    }
    return false;
  }

  private Vec3 point(int e) {
    int o = e / 2;
    int q = e % 2 == 0 ? o + 1 : o + nx;
    double ga = sheet.height(o) - sheet.roofAt(o);
    double gb = sheet.height(q) - sheet.roofAt(q);
    if (Double.isInfinite(ga) || Double.isInfinite(gb)) {
      // at the rim of the shadow the run of solid has shrunk to the seam
      int rim = Double.isInfinite(ga) ? q : o;
      return sheet.point(rim, sheet.middleOfRun(rim));
    }
    double t = ga == gb ? 0.5 : ga / (ga - gb);
    Vec3 p = sheet.point(o, sheet.height(o));
    return p.plus(sheet.point(q, sheet.height(q)).minus(p).times(t));
  }

  private void cell(int o, int[] a, int[] b) {
    int[] corner = {o, o + 1, o + nx + 1, o + nx};
    int[] edges = {edge(o, false), edge(o + 1, true), edge(o + nx, false), edge(o, true)};
    int[] hit = new int[4];
    int n = 0;
    for (int k = 0; k < 4; k++) {
      if (inside(corner[k]) != inside(corner[(k + 1) % 4])) {
        hit[n++] = edges[k];
      }
    }
    for (int k = 0; k + 1 < n; k += 2) {
      link(hit[k], hit[k + 1], a, b);
      link(hit[k + 1], hit[k], a, b);
    }
  }

  private static void link(int from, int to, int[] a, int[] b) {
    if (a[from] < 0) {
      a[from] = to;
    } else {
      b[from] = to;
    }
  }
}
