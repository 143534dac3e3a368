package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A binary STL file taken apart without the program's own reader: an 80-byte header, a
 * little-endian count, then 50 bytes a triangle: a normal and three corners of three floats each
 * and two bytes more. Corners with equal coordinates are one vertex.
 *
 * @param corners vertex number of each corner, three a triangle
 * @param xyz coordinates of the vertices
 */
record StlBytes(List<int[]> corners, List<float[]> xyz) {

  private static final int HEADER = 84;
  private static final int RECORD = 50;

  static StlBytes of(byte[] file) {
    ByteBuffer b = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
    int n = b.getInt(HEADER - 4);
    assertEquals(HEADER + (long) RECORD * n, file.length, "84 + 50 n bytes");
    Map<List<Float>, Integer> numbers = new HashMap<>();
    List<float[]> xyz = new ArrayList<>();
    List<int[]> corners = new ArrayList<>();
    for (int f = 0; f < n; f++) {
      int[] t = new int[3];
      for (int k = 0; k < 3; k++) {
        int at = HEADER + RECORD * f + 12 * (k + 1);
        float[] p = {b.getFloat(at), b.getFloat(at + 4), b.getFloat(at + 8)};
        Integer known = numbers.putIfAbsent(List.of(p[0], p[1], p[2]), xyz.size());
        t[k] = known == null ? xyz.size() : known;
        if (known == null) {
          xyz.add(p);
        }
      }
      corners.add(t);
    }
    return new StlBytes(corners, xyz);
  }

  /** Signed volume, mm³: tetrahedra to the first vertex. */
  double volume() {
    float[] o = xyz.get(0);
    double six = 0;
    for (int[] t : corners) {
      double[][] p = new double[3][3];
      for (int k = 0; k < 3; k++) {
        for (int c = 0; c < 3; c++) {
          p[k][c] = (double) xyz.get(t[k])[c] - o[c];
        }
      }
      six += p[0][0] * (p[1][1] * p[2][2] - p[1][2] * p[2][1]);
      six += p[0][1] * (p[1][2] * p[2][0] - p[1][0] * p[2][2]);
      six += p[0][2] * (p[1][0] * p[2][1] - p[1][1] * p[2][0]);
    }
    return six / 6;
  }

  /** Each directed edge once, and once the other way: what makes a surface closed and oriented. */
  void assertClosed(String name) {
    Set<Long> edges = new HashSet<>();
    for (int[] t : corners) {
      for (int k = 0; k < 3; k++) {
        assertTrue(edges.add((long) t[k] << 32 | t[(k + 1) % 3]), name + ": a directed edge twice");
      }
    }
    for (long e : edges) {
      assertTrue(edges.contains(e << 32 | e >>> 32), name + ": an edge without its opposite");
    }
  }

  /** V − E + F with E = 3 F / 2, which holds for a closed surface. */
  int euler() {
    assertEquals(0, corners.size() % 2);
    return xyz.size() - corners.size() * 3 / 2 + corners.size();
  }
}
