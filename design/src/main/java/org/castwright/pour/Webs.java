package org.castwright.pour;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Thin places of a body: columns along the three axes, each of which sees the walls that face it
 * most. Between two facets that look apart the column's length times the wall's slope is the
 * thickness, exactly for parallel walls. Columns side by side make one web. Wedges that open wider
 * than 37° are edges and no webs.
 */
public final class Webs {

  /** Two walls whose normals have at least this cosine between them are taken as parallel. */
  private static final double APART = -0.8;

  /** Columns this many spacings apart still belong together. */
  private static final double TOGETHER = 2.5;

  /** Places of fewer columns are noise. */
  private static final int FEWEST = 4;

  /** Share of a web's columns that may be thinner than what is told as its thickness. */
  private static final double THINNEST = 0.1;

  private final TriMesh body;
  private final double thanMm;
  private final double spacing;
  private final List<Sample> samples = new ArrayList<>();

  private Webs(TriMesh body, double thanMm, double spacing) {
    this.body = body;
    this.thanMm = thanMm;
    this.spacing = spacing;
  }

  /**
   * A thin place.
   *
   * @param place a point in its middle
   * @param thicknessMm of nearly its thinnest part
   * @param depthMm area over greatest extent: how far it reaches from what it hangs on, about
   * @param thickMm thickness of each of its columns
   * @param shareMm2 area that each stands for
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  public record Web(
      Vec3 place,
      double thicknessMm,
      double depthMm,
      double areaMm2,
      double[] thickMm,
      double[] shareMm2) {

    /** Area of it that is thinner: along a sharp edge some always is, but little. */
    public double areaThinner(double thanMm) {
      double sum = 0;
      for (int i = 0; i < thickMm.length; i++) {
        sum += thickMm[i] < thanMm ? shareMm2[i] : 0;
      }
      return sum;
    }
  }

  private record Sample(Vec3 at, double thicknessMm, double areaMm2) {}

  private record Hit(double at, int facet) {}

  /**
   * Finds them.
   *
   * @param body closed, outward-oriented
   * @param thanMm thinner than this
   * @param spacing of the columns, mm
   * @return largest first
   */
  public static List<Web> of(TriMesh body, double thanMm, double spacing) {
    Webs w = new Webs(body, thanMm, spacing);
    for (int axis = 0; axis < 3; axis++) {
      w.look(axis);
    }
    return w.group();
  }

  private void look(int axis) {
    int b = (axis + 1) % 3;
    int c = (axis + 2) % 3;
    double[] low = {get(body.bounds().min(), b), get(body.bounds().min(), c)};
    double[] high = {get(body.bounds().max(), b), get(body.bounds().max(), c)};
    int nb = (int) Math.ceil((high[0] - low[0]) / spacing) + 1;
    int nc = (int) Math.ceil((high[1] - low[1]) / spacing) + 1;
    // off round coordinates, where edges of made things lie
    double b0 = low[0] - spacing * 0.4271;
    double c0 = low[1] - spacing * 0.3917;
    Map<Integer, List<Hit>> columns = new HashMap<>();
    double[] v = body.xyz();
    int[] t = body.tri();
    for (int f = 0; f < body.triangleCount(); f++) {
      int p = 3 * t[3 * f];
      int q = 3 * t[3 * f + 1];
      int r = 3 * t[3 * f + 2];
      double det =
          (v[q + b] - v[p + b]) * (v[r + c] - v[p + c])
              - (v[q + c] - v[p + c]) * (v[r + b] - v[p + b]);
      if (det == 0) {
        continue;
      }
      int i0 = first(Math.min(v[p + b], Math.min(v[q + b], v[r + b])), b0);
      int j0 = first(Math.min(v[p + c], Math.min(v[q + c], v[r + c])), c0);
      double bMost = Math.max(v[p + b], Math.max(v[q + b], v[r + b]));
      double cMost = Math.max(v[p + c], Math.max(v[q + c], v[r + c]));
      for (int i = i0; i <= nb && b0 + i * spacing <= bMost; i++) {
        for (int j = j0; j <= nc && c0 + j * spacing <= cMost; j++) {
          double x = b0 + i * spacing - v[p + b];
          double y = c0 + j * spacing - v[p + c];
          double s = (x * (v[r + c] - v[p + c]) - y * (v[r + b] - v[p + b])) / det;
          double u = (y * (v[q + b] - v[p + b]) - x * (v[q + c] - v[p + c])) / det;
          if (s >= 0 && u >= 0 && s + u <= 1) {
            double at =
                v[p + axis] + s * (v[q + axis] - v[p + axis]) + u * (v[r + axis] - v[p + axis]);
            columns.computeIfAbsent(i * (nc + 2) + j, k -> new ArrayList<>()).add(new Hit(at, f));
          }
        }
      }
    }
    List<Integer> keys = new ArrayList<>(columns.keySet());
    keys.sort(Comparator.naturalOrder());
    for (int key : keys) {
      int row = key / (nc + 2);
      double y = b0 + row * spacing;
      double z = c0 + (key % (nc + 2)) * spacing;
      column(columns.get(key), axis, y, z);
    }
  }

  private int first(double low, double origin) {
    return Math.max(0, (int) Math.ceil((low - origin) / spacing));
  }

  private void column(List<Hit> hits, int axis, double y, double z) {
    hits.sort(Comparator.comparingDouble(Hit::at).thenComparingInt(Hit::facet));
    for (int i = 0; i + 1 < hits.size(); i++) {
      Vec3 in = body.areaVector(hits.get(i).facet()).unit();
      Vec3 out = body.areaVector(hits.get(i + 1).facet()).unit();
      if (!(get(in, axis) < 0 && get(out, axis) > 0 && in.dot(out) < APART && faces(in, axis))) {
        continue;
      }
      double slope = Math.min(-get(in, axis), get(out, axis));
      double thick = (hits.get(i + 1).at() - hits.get(i).at()) * slope;
      if (thick < thanMm) {
        double middle = (hits.get(i).at() + hits.get(i + 1).at()) / 2;
        samples.add(new Sample(place(axis, middle, y, z), thick, spacing * spacing / slope));
      }
    }
  }

  /** Whether no other axis sees a wall better; the first of equals. */
  private static boolean faces(Vec3 n, int axis) {
    for (int k = 0; k < 3; k++) {
      double other = Math.abs(get(n, k));
      double own = Math.abs(get(n, axis));
      if (other > own || (k < axis && other == own)) {
        return false;
      }
    }
    return true;
  }

  private static double get(Vec3 v, int axis) {
    return axis == 0 ? v.x() : axis == 1 ? v.y() : v.z();
  }

  private static Vec3 place(int axis, double a, double b, double c) {
    return axis == 0 ? new Vec3(a, b, c) : axis == 1 ? new Vec3(c, a, b) : new Vec3(b, c, a);
  }

  private List<Web> group() {
    double cell = TOGETHER * spacing;
    Map<List<Long>, List<Integer>> cells = new HashMap<>();
    int[] parent = new int[samples.size()];
    for (int i = 0; i < parent.length; i++) {
      parent[i] = i;
      Vec3 p = samples.get(i).at();
      long x = (long) Math.floor(p.x() / cell);
      long y = (long) Math.floor(p.y() / cell);
      long z = (long) Math.floor(p.z() / cell);
      for (long dx = -1; dx <= 1; dx++) {
        for (long dy = -1; dy <= 1; dy++) {
          for (long dz = -1; dz <= 1; dz++) {
            for (int o : cells.getOrDefault(List.of(x + dx, y + dy, z + dz), List.of())) {
              if (samples.get(o).at().minus(p).length() <= cell) {
                parent[root(parent, i)] = root(parent, o);
              }
            }
          }
        }
      }
      cells.computeIfAbsent(List.of(x, y, z), k -> new ArrayList<>()).add(i);
    }
    Map<Integer, List<Sample>> groups = new TreeMap<>();
    for (int i = 0; i < parent.length; i++) {
      groups.computeIfAbsent(root(parent, i), k -> new ArrayList<>()).add(samples.get(i));
    }
    List<Web> out = new ArrayList<>();
    groups.values().stream().filter(g -> g.size() >= FEWEST).forEach(g -> out.add(web(g)));
    out.sort(Comparator.comparingDouble(w -> -w.areaMm2()));
    return List.copyOf(out);
  }

  private static int root(int[] parent, int i) {
    int r = i;
    while (parent[r] != r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  }

  private Web web(List<Sample> group) {
    double area = 0;
    Vec3 sum = Vec3.ZERO;
    double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (Sample s : group) {
      area += s.areaMm2();
      sum = sum.plus(s.at());
      for (int k = 0; k < 3; k++) {
        low[k] = Math.min(low[k], get(s.at(), k));
        high[k] = Math.max(high[k], get(s.at(), k));
      }
    }
    Vec3 mean = sum.times(1.0 / group.size());
    double extent = spacing;
    for (int k = 0; k < 3; k++) {
      extent = Math.max(extent, high[k] - low[k] + spacing);
    }
    double[] thick = group.stream().mapToDouble(Sample::thicknessMm).sorted().toArray();
    Vec3 nearest =
        group.stream()
            .map(Sample::at)
            .min(Comparator.comparingDouble(p -> p.minus(mean).length()))
            .orElse(mean);
    return new Web(
        nearest,
        thick[(int) (THINNEST * thick.length)],
        area / extent,
        area,
        group.stream().mapToDouble(Sample::thicknessMm).toArray(),
        group.stream().mapToDouble(Sample::areaMm2).toArray());
  }
}
