package org.castwright.proof;

import java.util.Arrays;
import org.castwright.geom.Box3;

/**
 * Exact columns through single points: the triangles of a mesh (given in a frame) sorted into flat
 * square bins by what they cover of the (u, v) plane. A long thin triangle is listed only in the
 * bins that it passes, row by row. Build once; each thread asks through its own {@link Probe}.
 */
final class ColumnQuery {

  /** Shares of a bin that triangles are listed beyond their bounds: rounding loses no bin. */
  private static final double SLACK = 5e-4;

  private final double[] uvw;
  private final int[] tri;
  private final double u0;
  private final double v0;
  private final double step;
  private final int across;
  private final int along;
  private final int[] start;
  private final int[] listed;

  /**
   * @param mostAcross bins along the longer side at most: more are made slower and asked faster
   */
  ColumnQuery(double[] uvw, int[] tri, int mostAcross) {
    this.uvw = uvw;
    this.tri = tri;
    Box3 box = Box3.of(uvw);
    u0 = box.min().x();
    v0 = box.min().y();
    int cells = (int) Math.max(1, Math.min(mostAcross, Math.sqrt(tri.length / 3.0)));
    double side = Math.max(box.size().x(), box.size().y());
    step = side > 0 ? side / cells : 1;
    across = (int) (box.size().x() / step) + 1;
    along = (int) (box.size().y() / step) + 1;
    start = new int[across * along + 1];
    for (int f = 0; f < tri.length / 3; f++) {
      rows(f, null);
    }
    for (int i = 0; i < across * along; i++) {
      start[i + 1] += start[i];
    }
    listed = new int[start[across * along]];
    int[] at = Arrays.copyOf(start, across * along);
    for (int f = 0; f < tri.length / 3; f++) {
      rows(f, at);
    }
  }

  private int bin(double x, double zero, int count) {
    return (int) Math.max(0, Math.min(count - 1, Math.floor((x - zero) / step)));
  }

  /** Counts triangle {@code f} into its bins, or lists it there when {@code at} is given. */
  private void rows(int f, int[] at) {
    double va = uvw[3 * tri[3 * f] + 1];
    double vb = uvw[3 * tri[3 * f + 1] + 1];
    double vc = uvw[3 * tri[3 * f + 2] + 1];
    double slack = step * SLACK;
    int first = bin(Math.min(va, Math.min(vb, vc)), v0, along);
    int last = bin(Math.max(va, Math.max(vb, vc)), v0, along);
    if (first == last) {
      double ua = uvw[3 * tri[3 * f]];
      double ub = uvw[3 * tri[3 * f + 1]];
      double uc = uvw[3 * tri[3 * f + 2]];
      put(f, first, Math.min(ua, Math.min(ub, uc)), Math.max(ua, Math.max(ub, uc)), at);
      return;
    }
    for (int j = first; j <= last; j++) {
      double lowV = v0 + j * step - slack;
      double highV = v0 + (j + 1) * step + slack;
      double min = Double.POSITIVE_INFINITY;
      double max = Double.NEGATIVE_INFINITY;
      for (int k = 0; k < 3; k++) {
        int p = 3 * tri[3 * f + k];
        int q = 3 * tri[3 * f + (k + 1) % 3];
        if (Math.max(uvw[p + 1], uvw[q + 1]) < lowV || Math.min(uvw[p + 1], uvw[q + 1]) > highV) {
          continue;
        }
        double one = clipped(p, q, lowV, highV);
        double other = clipped(q, p, lowV, highV);
        min = Math.min(min, Math.min(one, other));
        max = Math.max(max, Math.max(one, other));
      }
      put(f, j, min, max, at);
    }
  }

  /** Puts a triangle into the bins of row {@code j} from one u to another. */
  private void put(int f, int j, double min, double max, int[] at) {
    double slack = step * SLACK;
    int end = bin(max + slack, u0, across);
    for (int i = bin(min - slack, u0, across); i <= end && max >= min; i++) {
      if (at == null) {
        start[j * across + i + 1]++;
      } else {
        listed[at[j * across + i]++] = f;
      }
    }
  }

  /** The u of the end {@code p} of edge p–q after clipping the edge to a band that it meets. */
  private double clipped(int p, int q, double lowV, double highV) {
    double vp = uvw[p + 1];
    double vq = uvw[q + 1];
    double v = Math.max(lowV, Math.min(highV, vp));
    return v == vp ? uvw[p] : uvw[p] + (v - vp) / (vq - vp) * (uvw[q] - uvw[p]);
  }

  /** Asks for columns; holds the scratch space, so one a thread. */
  final class Probe {

    private final Slice slice = new Slice(uvw);
    private final Crossings crossings = new Crossings();
    private final Spans spans = new Spans(1, 8);

    /** The spans of body over {@code (u, v)}, as column 0; valid until the next call. */
    Spans at(double u, double v) {
      crossings.clear();
      double i = Math.floor((u - u0) / step);
      double j = Math.floor((v - v0) / step);
      if (i >= 0 && i < across && j >= 0 && j < along) {
        int bin = ((int) j) * across + (int) i;
        for (int k = start[bin]; k < start[bin + 1]; k++) {
          int a = tri[3 * listed[k]];
          int b = tri[3 * listed[k] + 1];
          int c = tri[3 * listed[k] + 2];
          if (!slice.misses(a, b, c, u)
              && slice.cut(a, b, c, v)
              && u >= slice.lowU
              && u < slice.highU) {
            crossings.add(0, slice.heightAt(u), slice.entering);
          }
        }
      }
      crossings.spansInto(spans);
      return spans;
    }
  }
}
