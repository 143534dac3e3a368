package org.castwright.pipeline;

import java.util.PriorityQueue;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FacetDistance;
import org.castwright.mesh.TriMesh;
import org.castwright.trial.Facts;

/** Where air that is held at a place of the casting's surface rises to, along the surface. */
final class AirWay {

  /** Dips no deeper than this are shaken out, mm; common practice, no source. */
  private static final double SHAKEN = 0.5;

  private final TriMesh casting;
  private final Vec3 up;
  private final int[] start;
  private final int[] near;

  AirWay(TriMesh casting, Vec3 up) {
    this.casting = casting;
    this.up = up;
    int[] tri = casting.tri();
    start = new int[casting.vertexCount() + 1];
    for (int v : tri) {
      start[v + 1] += 2;
    }
    for (int v = 1; v < start.length; v++) {
      start[v] += start[v - 1];
    }
    int[] at = start.clone();
    near = new int[2 * tri.length];
    for (int i = 0; i < tri.length; i += 3) {
      for (int k = 0; k < 3; k++) {
        near[at[tri[i + k]]++] = tri[i + (k + 1) % 3];
        near[at[tri[i + k]]++] = tri[i + (k + 2) % 3];
      }
    }
  }

  Facts.AirAt from(int note, Vec3 place) {
    int facet = nearest(place);
    Vec3 n = casting.areaVector(facet);
    double lean = n.length() > 0 ? n.dot(up) / n.length() : 0;
    double roof = Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, lean))));
    return new Facts.AirAt(note, roof, ReportMaker.array(casting.vertex(peak(facet))));
  }

  private int nearest(Vec3 p) {
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int f = 0; f < casting.triangleCount(); f++) {
      double d = FacetDistance.of(casting, f, p);
      if (d < least) {
        least = d;
        best = f;
      }
    }
    return best;
  }

  /** The highest vertex reached by ways that never fall more than what is shaken out. */
  private int peak(int facet) {
    PriorityQueue<int[]> queue = new PriorityQueue<>((a, b) -> order(a[0], b[0]));
    boolean[] seen = new boolean[casting.vertexCount()];
    for (int k = 0; k < 3; k++) {
      seen[casting.tri()[3 * facet + k]] = true;
      queue.add(new int[] {casting.tri()[3 * facet + k]});
    }
    int best = queue.peek()[0];
    while (!queue.isEmpty()) {
      int v = queue.poll()[0];
      if (height(v) < height(best) - SHAKEN) {
        break;
      }
      best = height(v) > height(best) ? v : best;
      for (int k = start[v]; k < start[v + 1]; k++) {
        if (!seen[near[k]]) {
          seen[near[k]] = true;
          queue.add(new int[] {near[k]});
        }
      }
    }
    return best;
  }

  private double height(int v) {
    return casting.vertex(v).dot(up);
  }

  /** Highest first, then by index. */
  private int order(int a, int b) {
    int c = Double.compare(height(b), height(a));
    return c != 0 ? c : Integer.compare(a, b);
  }
}
