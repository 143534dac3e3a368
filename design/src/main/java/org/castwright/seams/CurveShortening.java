package org.castwright.seams;

import java.util.Arrays;
import org.castwright.mesh.IntList;
import org.castwright.progress.Progress;

/**
 * Moves a seam downhill in cost: crossings along their edges, each to the place that is best for it
 * (the problem of one crossing is convex), and vertices from piece to piece where that lets the
 * seam run cheaper. No step gives a piece more of what it may not take, and none raises the cost of
 * seam, draft and what is caught together. The result is locally shortest, that is straight when
 * the facets are laid flat, wherever nothing holds it.
 */
final class CurveShortening {

  private static final int ROUNDS = 60;
  private static final int SWEEPS = 40;

  /** Sweeps round one vertex when its piece is tried. */
  private static final int TRIAL_SWEEPS = 8;

  /**
   * Seam worth a square millimeter freed, mm: little, for it is a guess; labels saw to the rest.
   */
  private static final double CAUGHT_WEIGHT = 0.1;

  private static final int NEWTON_STEPS = 6;

  /** Movement of a crossing not worth telling its neighbors, mm. */
  private static final double STILL_MM = 1e-4;

  /** A changed vertex must save more than this, mm of seam: keeps rounding from deciding. */
  private static final double WORTH_MM = 1e-5;

  /** Only vertices with a crossing this near are tried: share of the edge. */
  private static final double NEAR = 0.4;

  private final SeamCurve curve;
  private final SurfaceEdges edges;
  private final boolean[] fresh;
  private final double[] p = new double[3];
  private final double[] a = new double[3];
  private final double[] b = new double[3];
  private final IntList touched = new IntList();
  private final IntList near = new IntList();
  private final boolean[] taken;
  private int spokes;

  // derivatives of the cost by t at the place under trial
  private double first;
  private double second;

  private int[] live = new int[0];

  private CurveShortening(SeamCurve curve) {
    this.curve = curve;
    edges = curve.edges;
    fresh = new boolean[edges.count()];
    taken = new boolean[curve.base.length];
  }

  static void run(SeamCurve curve, Progress progress) {
    CurveShortening s = new CurveShortening(curve);
    s.list();
    for (int round = 0; round < ROUNDS; round++) {
      progress.at("seams: shortening", round / (double) ROUNDS);
      boolean moved = false;
      for (int i = 0; i < SWEEPS; i++) {
        moved = s.sweep();
        if (!moved) {
          break;
        }
      }
      boolean changed = s.vertices();
      if (!moved && !changed) {
        return;
      }
      s.list();
    }
  }

  private void list() {
    int n = 0;
    int[] found = new int[edges.count()];
    for (int e = 0; e < found.length; e++) {
      if (curve.crossed(e)) {
        found[n++] = e;
      }
    }
    live = Arrays.copyOf(found, n);
    for (int e : live) {
      fresh[e] = true;
    }
  }

  private boolean sweep() {
    boolean moved = false;
    for (int e : live) {
      if (fresh[e]) {
        fresh[e] = false;
        double before = curve.t[e];
        best(e);
        if (Math.abs(curve.t[e] - before) * edges.length(curve.mesh, e) > STILL_MM) {
          moved = true;
          refresh(edges.left[e]);
          refresh(edges.right[e]);
        }
      }
    }
    return moved;
  }

  private void refresh(int f) {
    for (int k = 0; k < 3; k++) {
      fresh[edges.of[3 * f + k]] = true;
    }
  }

  /** Moves one crossing to its best place: Newton's steps, held in a shrinking interval. */
  private void best(int e) {
    double lo = curve.least[e];
    double hi = curve.most[e];
    if (lo >= hi) {
      return;
    }
    int f = edges.left[e];
    int g = edges.right[e];
    curve.beyond(f, e, a);
    curve.beyond(g, e, b);
    double slope = curve.draftSlope(f, e) + curve.draftSlope(g, e);
    double before = curve.t[e];
    double t = before;
    for (int i = 0; i < NEWTON_STEPS && lo < hi; i++) {
      curve.t[e] = t;
      curve.point(e, p);
      first = slope;
      second = 0;
      pull(e, a, curve.weight(f));
      pull(e, b, curve.weight(g));
      if (first > 0) {
        hi = t;
      } else {
        lo = t;
      }
      double next = second > 0 ? t - first / second : Double.NaN;
      t = next >= lo && next <= hi ? next : (lo + hi) / 2;
    }
    curve.t[e] = settle(e, new double[] {before, t, curve.least[e], curve.most[e]}, slope);
  }

  /** Adds the derivatives by t of a weighted distance from the crossing. */
  private void pull(int e, double[] to, double weight) {
    double[] v = curve.mesh.xyz();
    int low = 3 * edges.low[e];
    int high = 3 * edges.high[e];
    double along = 0;
    double edge = 0;
    double far = 0;
    for (int k = 0; k < 3; k++) {
      double d = v[high + k] - v[low + k];
      double r = p[k] - to[k];
      along += d * r;
      edge += d * d;
      far += r * r;
    }
    if (far > 0) {
      double length = Math.sqrt(far);
      first += weight * along / length;
      second += weight * (edge * far - along * along) / (far * length);
    }
  }

  /** The cheapest of some places of a crossing; the first of those that cost the same. */
  private double settle(int e, double[] places, double slope) {
    double best = places[0];
    double least = Double.POSITIVE_INFINITY;
    for (double place : places) {
      curve.t[e] = place;
      curve.point(e, p);
      double cost =
          curve.weight(edges.left[e]) * SeamCurve.distance(p, a)
              + curve.weight(edges.right[e]) * SeamCurve.distance(p, b)
              + slope * place;
      if (cost < least) {
        least = cost;
        best = place;
      }
    }
    return best;
  }

  private boolean vertices() {
    boolean changed = false;
    boolean[] seen = new boolean[curve.mesh.vertexCount()];
    for (int e : live) {
      changed |= visit(edges.low[e], seen);
      changed |= visit(edges.high[e], seen);
    }
    return changed;
  }

  private boolean visit(int v, boolean[] seen) {
    if (seen[v] || curve.held(v)) {
      return false;
    }
    seen[v] = true;
    boolean close = false;
    int labels = 0;
    for (int i = edges.start[v]; i < edges.start[v + 1]; i++) {
      int e = edges.of[edges.corner[i]];
      int w = edges.low[e] == v ? edges.high[e] : edges.low[e];
      if (curve.piece[w] != curve.piece[v]) {
        labels |= 1 << curve.piece[w];
        close |= curve.shareFrom(v, e) < NEAR;
      }
    }
    for (byte l = 0; close && labels >> l != 0; l++) {
      if ((labels >> l & 1) == 1 && curve.mayHave(v, l) && change(v, l)) {
        return true;
      }
    }
    return false;
  }

  /** Gives a vertex to another piece if that is cheaper once the seam near it has settled. */
  private boolean change(int v, byte label) {
    gather(v);
    double[] t = new double[touched.size()];
    for (int i = 0; i < t.length; i++) {
      t[i] = curve.t[touched.get(i)];
    }
    double before = around();
    double caught = caught();
    byte old = curve.piece[v];
    curve.piece[v] = label;
    for (int i = 0; i < spokes; i++) {
      curve.begin(touched.get(i), v);
    }
    for (int s = 0; s < TRIAL_SWEEPS; s++) {
      for (int i = 0; i < t.length; i++) {
        if (curve.crossed(touched.get(i))) {
          best(touched.get(i));
        }
      }
    }
    double more = caught() - caught;
    if (more <= 0 && around() + CAUGHT_WEIGHT * more < before - WORTH_MM) {
      return true;
    }
    curve.piece[v] = old;
    for (int i = 0; i < t.length; i++) {
      curve.t[touched.get(i)] = t[i];
    }
    for (int i = 0; i < spokes; i++) {
      curve.limit(touched.get(i));
    }
    return false;
  }

  /** Lists the edges at a vertex, then those opposite, and all facets beside either. */
  private void gather(int v) {
    touched.clear();
    near.clear();
    for (int i = edges.start[v]; i < edges.start[v + 1]; i++) {
      touched.add(edges.of[edges.corner[i]]);
    }
    spokes = touched.size();
    for (int i = edges.start[v]; i < edges.start[v + 1]; i++) {
      int f = edges.corner[i] / 3;
      int opposite = edges.of[SurfaceEdges.next(edges.corner[i])];
      touched.add(opposite);
      take(f);
      take(edges.across(opposite, f));
    }
    for (int i = 0; i < near.size(); i++) {
      taken[near.get(i)] = false;
    }
  }

  private void take(int f) {
    if (!taken[f]) {
      taken[f] = true;
      near.add(f);
    }
  }

  private double around() {
    double sum = 0;
    for (int i = 0; i < near.size(); i++) {
      sum += curve.cost(near.get(i));
    }
    return sum;
  }

  private double caught() {
    double sum = 0;
    for (int i = 0; i < spokes; i++) {
      sum += curve.caught[touched.get(i)];
    }
    return sum;
  }
}
