package org.castwright.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;

/** Gathers caught samples into connected places: samples in cells that touch belong together. */
final class Regions {

  // places beyond this many are specks
  private static final int MOST = 20;

  private final Trial trial;
  private final SpaceGrid grid;

  Regions(Trial trial) {
    this.trial = trial;
    grid = trial.samples().grid();
  }

  /**
   * The places, largest first: by volume in cells' sides cubed plus area in sides squared.
   *
   * @param list caught samples, ascending
   * @param widths at each of them, mm
   */
  List<CaughtRegion> of(int[] list, double[] widths) {
    int[] label = label(list);
    int count = Arrays.stream(label).max().orElse(-1) + 1;
    List<CaughtRegion> out = new ArrayList<>();
    for (int[] members : members(label, count)) {
      out.add(region(list, widths, members));
    }
    double side = grid.cell();
    out.sort((a, b) -> Double.compare(size(b, side), size(a, side)));
    return out.subList(0, Math.min(MOST, out.size()));
  }

  private static double size(CaughtRegion r, double side) {
    return r.caught().volumeMm3() + r.caught().areaMm2() * side;
  }

  private static int[][] members(int[] label, int count) {
    int[] sizes = new int[count];
    for (int k : label) {
      sizes[k]++;
    }
    int[][] out = new int[count][];
    Arrays.setAll(out, k -> new int[sizes[k]]);
    for (int i = label.length - 1; i >= 0; i--) {
      out[label[i]][--sizes[label[i]]] = i;
    }
    return out;
  }

  /** Numbers the places: for each sample of the list the number of its own. */
  private int[] label(int[] list) {
    Samples samples = trial.samples();
    int[] own = new int[list.length];
    boolean[] caught = new boolean[grid.size()];
    for (int i = 0; i < list.length; i++) {
      own[i] = grid.at(samples.x(list[i]), samples.y(list[i]), samples.z(list[i]));
      mark(caught, own[i], samples.isCell(list[i]));
    }
    int[] place = new int[grid.size()];
    Arrays.fill(place, -1);
    int count = 0;
    int[] queue = new int[grid.size()];
    for (int c : own) {
      if (place[c] < 0) {
        flood(caught, place, c, count++, queue);
      }
    }
    for (int i = 0; i < own.length; i++) {
      own[i] = place[own[i]];
    }
    return own;
  }

  /** A sample that may stand for eight cells marks its neighbors too. */
  private void mark(boolean[] caught, int c, boolean wide) {
    caught[c] = true;
    for (int k = 0; k < 27 && wide; k++) {
      int o = neighbor(c, k);
      if (o >= 0 && !grid.solid(o)) {
        caught[o] = true;
      }
    }
  }

  private int neighbor(int c, int k) {
    int i = c % grid.nx() + k % 3 - 1;
    int j = c / grid.nx() % grid.ny() + k / 3 % 3 - 1;
    int l = c / (grid.nx() * grid.ny()) + k / 9 - 1;
    boolean in = i >= 0 && j >= 0 && l >= 0 && i < grid.nx() && j < grid.ny() && l < grid.nz();
    return in ? (l * grid.ny() + j) * grid.nx() + i : -1;
  }

  private void flood(boolean[] caught, int[] place, int first, int number, int[] queue) {
    int end = 0;
    queue[end++] = first;
    place[first] = number;
    for (int at = 0; at < end; at++) {
      for (int k = 0; k < 27; k++) {
        int o = neighbor(queue[at], k);
        if (o >= 0 && caught[o] && place[o] < 0) {
          place[o] = number;
          queue[end++] = o;
        }
      }
    }
  }

  private CaughtRegion region(int[] list, double[] widths, int[] members) {
    Samples samples = trial.samples();
    double[] points = new double[3 * members.length];
    int[] own = new int[members.length];
    int[] facets = new int[members.length];
    int n = 0;
    double width = 0;
    double sum = 0;
    Vec3 center = Vec3.ZERO;
    for (int i = 0; i < own.length; i++) {
      int s = list[members[i]];
      own[i] = s;
      Vec3 p = new Vec3(samples.x(s), samples.y(s), samples.z(s));
      points[3 * i] = p.x();
      points[3 * i + 1] = p.y();
      points[3 * i + 2] = p.z();
      double w = samples.weight(s);
      center = center.plus(p.times(w));
      sum += w;
      width = Math.max(width, widths[members[i]]);
      if (!samples.isCell(s)) {
        facets[n++] = samples.id(s);
      }
    }
    center = center.times(1 / sum);
    List<Integer> touched = Arrays.stream(facets, 0, n).sorted().distinct().boxed().toList();
    Caught c = trial.sum(own);
    return new CaughtRegion(
        center,
        Box3.of(points),
        new Caught(c.areaMm2(), c.volumeMm3(), width),
        touched.isEmpty() ? List.of(nearest(center)) : touched);
  }

  private int nearest(Vec3 p) {
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    int[] tri = trial.mesh().tri();
    for (int f = 0; f < tri.length / 3; f++) {
      Vec3 sum = Vec3.ZERO;
      for (int k = 0; k < 3; k++) {
        sum = sum.plus(trial.mesh().vertex(tri[3 * f + k]));
      }
      double d = sum.times(1 / 3.0).minus(p).length();
      if (d < least) {
        least = d;
        best = f;
      }
    }
    return best;
  }
}
