package org.castwright.seams;

import java.util.Arrays;
import java.util.List;
import org.castwright.mesh.TriMesh;

/** The connected parts of a labelling of facets; facets touch across edges. */
final class Patches {

  final int[] of;
  final int count;
  private final double[] area;

  Patches(TriMesh mesh, SurfaceEdges edges, byte[] label) {
    int n = label.length;
    of = new int[n];
    Arrays.fill(of, -1);
    double[] areas = new double[n];
    IntQueue queue = new IntQueue(64);
    int patches = 0;
    for (int seed = 0; seed < n; seed++) {
      if (of[seed] >= 0) {
        continue;
      }
      of[seed] = patches;
      queue.add(seed);
      while (!queue.isEmpty()) {
        int f = queue.take();
        areas[patches] += mesh.areaVector(f).length();
        for (int k = 0; k < 3; k++) {
          int g = edges.across(edges.of[3 * f + k], f);
          if (of[g] < 0 && label[g] == label[f]) {
            of[g] = patches;
            queue.add(g);
          }
        }
      }
      patches++;
    }
    count = patches;
    area = Arrays.copyOf(areas, patches);
  }

  double areaMm2(int patch) {
    return area[patch];
  }

  /** The number of patches with each of k labels. */
  List<Integer> counts(int k, byte[] label) {
    Integer[] n = new Integer[k];
    Arrays.fill(n, 0);
    boolean[] counted = new boolean[count];
    for (int f = 0; f < label.length; f++) {
      if (!counted[of[f]]) {
        counted[of[f]] = true;
        n[label[f]]++;
      }
    }
    return List.of(n);
  }

  /** The area with each of k labels, mm². */
  List<Double> areas(int k, byte[] label) {
    Double[] sum = new Double[k];
    Arrays.fill(sum, 0.0);
    boolean[] counted = new boolean[count];
    for (int f = 0; f < label.length; f++) {
      if (!counted[of[f]]) {
        counted[of[f]] = true;
        sum[label[f]] += area[of[f]];
      }
    }
    return List.of(sum);
  }
}
