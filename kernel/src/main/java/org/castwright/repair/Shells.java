package org.castwright.repair;

import java.util.Arrays;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * The connected shells of a mesh, numbered by their first triangle, with what can be measured on
 * each. Triangles that share a vertex are in one shell.
 */
final class Shells {

  private final TriMesh mesh;
  private final int[] shellOf;
  private final int count;
  private final int[] firstVertex;
  private final int[] triangles;
  private final double[] volume;
  private final double[] area;
  private final double[] boxes;

  Shells(TriMesh mesh) {
    this.mesh = mesh;
    this.shellOf = new int[mesh.triangleCount()];
    this.count = label();
    this.firstVertex = new int[count];
    this.triangles = new int[count];
    this.volume = new double[count];
    this.area = new double[count];
    this.boxes = new double[6 * count];
    measure();
  }

  private int label() {
    int[] tri = mesh.tri();
    Sets sets = new Sets(mesh.vertexCount());
    for (int i = 0; i < tri.length; i += 3) {
      sets.unite(tri[i], tri[i + 1]);
      sets.unite(tri[i], tri[i + 2]);
    }
    int[] number = new int[mesh.vertexCount()];
    Arrays.fill(number, -1);
    int n = 0;
    for (int f = 0; f < shellOf.length; f++) {
      int root = sets.find(tri[3 * f]);
      if (number[root] < 0) {
        number[root] = n++;
      }
      shellOf[f] = number[root];
    }
    return n;
  }

  private void measure() {
    double[] x = mesh.xyz();
    Arrays.fill(firstVertex, -1);
    for (int s = 0; s < count; s++) {
      Arrays.fill(boxes, 6 * s, 6 * s + 3, Double.POSITIVE_INFINITY);
      Arrays.fill(boxes, 6 * s + 3, 6 * s + 6, Double.NEGATIVE_INFINITY);
    }
    for (int f = 0; f < shellOf.length; f++) {
      int s = shellOf[f];
      triangles[s]++;
      if (firstVertex[s] < 0) {
        firstVertex[s] = mesh.tri()[3 * f];
      }
      Vec3 normal = mesh.areaVector(f);
      area[s] += normal.length();
      volume[s] +=
          normal.dot(mesh.vertex(mesh.tri()[3 * f]).minus(mesh.vertex(firstVertex[s]))) / 3;
      for (int i = 3 * f; i < 3 * f + 3; i++) {
        for (int k = 0; k < 3; k++) {
          double v = x[3 * mesh.tri()[i] + k];
          boxes[6 * s + k] = Math.min(boxes[6 * s + k], v);
          boxes[6 * s + 3 + k] = Math.max(boxes[6 * s + 3 + k], v);
        }
      }
    }
  }

  int count() {
    return count;
  }

  /** The shell of each triangle; not to be written to. */
  int[] labels() {
    return shellOf;
  }

  int triangles(int s) {
    return triangles[s];
  }

  /** Signed volume, mm³. */
  double volume(int s) {
    return volume[s];
  }

  double area(int s) {
    return area[s];
  }

  Vec3 point(int s) {
    return mesh.vertex(firstVertex[s]);
  }

  Box3 box(int s) {
    int b = 6 * s;
    return new Box3(
        new Vec3(boxes[b], boxes[b + 1], boxes[b + 2]),
        new Vec3(boxes[b + 3], boxes[b + 4], boxes[b + 5]));
  }

  /** Whether the box of shell {@code s} lies in that of shell {@code t}. */
  boolean boxInside(int s, int t) {
    for (int k = 0; k < 3; k++) {
      if (boxes[6 * s + k] < boxes[6 * t + k] || boxes[6 * s + 3 + k] > boxes[6 * t + 3 + k]) {
        return false;
      }
    }
    return true;
  }

  /** The volume of the largest shell, mm³, whichever way it faces. */
  double largestVolume() {
    double largest = 0;
    for (double v : volume) {
      largest = Math.max(largest, Math.abs(v));
    }
    return largest;
  }

  /** The mesh of the shells marked. */
  TriMesh keep(boolean[] marked) {
    boolean[] kept = new boolean[shellOf.length];
    for (int f = 0; f < kept.length; f++) {
      kept[f] = marked[shellOf[f]];
    }
    return Draft.keep(mesh, kept);
  }

  /** The mesh with the shells marked seen from the other side. */
  TriMesh turn(boolean[] marked) {
    boolean[] turned = new boolean[shellOf.length];
    for (int f = 0; f < turned.length; f++) {
      turned[f] = marked[shellOf[f]];
    }
    return Patches.turn(mesh, turned);
  }
}
