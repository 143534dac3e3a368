package org.castwright.meshio;

import java.util.Arrays;
import java.util.function.Supplier;
import org.castwright.mesh.TriMesh;

/** Faces of three corners and more, kept flat until all vertices are known, then cut. */
final class FaceList {

  /** Cutting an outline that is not convex takes time as the square of its corners. */
  static final int MOST_CORNERS = 4096;

  private final Source source;
  private final Supplier<String> where;

  /** Of each face the number of corners, then the corners. */
  private int[] data = new int[256];

  private int used;
  private int faces;
  private int start;
  private long triangles;

  /**
   * @param where tells the place of the face at hand in the file, for messages
   */
  FaceList(Source source, Supplier<String> where) {
    this.source = source;
    this.where = where;
  }

  void begin() {
    start = used;
    put(0);
  }

  void corner(int vertex) {
    put(vertex);
  }

  /** Corners of the face begun. */
  int corners() {
    return used - start - 1;
  }

  /** Takes in the face begun. */
  void end() {
    int n = corners();
    if (n < 3) {
      throw source.fault(
          where.get(), "a face has " + n + " corners where three are needed", Source.EXPORT_AGAIN);
    }
    if (n > MOST_CORNERS) {
      throw source.fault(
          where.get(),
          "a face has " + n + " corners, more than the limit of " + MOST_CORNERS,
          "let the program that made it cut faces into triangles");
    }
    data[start] = n;
    faces++;
    triangles += n - 2;
    if (triangles > source.limits().maxTriangles()) {
      source.allowed(triangles, where.get());
    }
  }

  /** The triangles; every corner must be the index of a vertex by now. */
  TriMesh cut(double[] xyz) {
    int[] tri = new int[(int) (3 * triangles)];
    PolygonCutter cutter = new PolygonCutter(xyz);
    int many = 0;
    int crossed = 0;
    int to = 0;
    for (int i = 0; i < used; i += data[i] + 1) {
      int n = data[i];
      if (n == 3) {
        System.arraycopy(data, i + 1, tri, to, 3);
      } else {
        many++;
        crossed += cutter.cut(data, i + 1, n, tri, to) ? 0 : 1;
      }
      to += 3 * (n - 2);
    }
    if (many > 0) {
      source.note(many + " of " + faces + " faces had more than three corners and were cut.");
    }
    if (crossed > 0) {
      source.note(crossed + " faces cross themselves or have no area; their cuts are a guess.");
    }
    return new TriMesh(xyz, tri);
  }

  private void put(int value) {
    if (used == data.length) {
      data = Arrays.copyOf(data, 2 * used);
    }
    data[used++] = value;
  }
}
