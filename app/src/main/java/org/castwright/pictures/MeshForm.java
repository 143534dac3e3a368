package org.castwright.pictures;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * What the light needs to know of a mesh: a normal for every corner, smooth where neighbors turn by
 * less than the crease angle, and the edges where they turn by more.
 */
final class MeshForm {

  /** Round a hub of more facets than this the corner keeps its facet's normal: it is a flat cap. */
  private static final int HUB = 64;

  /** Corners are still smoothed this much above the crease angle, or coarse curves look cut. */
  private static final double SMOOTHER = 10;

  private final TriMesh mesh;
  private final double cosCrease;
  private final double cosSmooth;
  private final double[] unit;
  private final int[] start;
  private final int[] around;
  private final float[] corners;
  private int[] creases = new int[64];
  private int creaseInts;

  private MeshForm(TriMesh mesh, double creaseDegrees) {
    this.mesh = mesh;
    cosCrease = StrictMath.cos(Math.toRadians(creaseDegrees));
    cosSmooth = StrictMath.cos(Math.toRadians(creaseDegrees + SMOOTHER));
    unit = unitNormals(mesh);
    start = new int[mesh.vertexCount() + 1];
    around = new int[mesh.tri().length];
    corners = new float[9 * mesh.triangleCount()];
    gatherFacetsAround();
  }

  static MeshForm of(TriMesh mesh, double creaseDegrees) {
    MeshForm form = new MeshForm(mesh, creaseDegrees);
    form.smoothCorners();
    form.findCreases();
    return form;
  }

  /** Nine floats a facet: the normals of its three corners, not of unit length. */
  float[] cornerNormals() {
    return corners;
  }

  /** Four ints a crease: its two vertices and its two facets. */
  int[] creases() {
    return creases;
  }

  private static double[] unitNormals(TriMesh mesh) {
    double[] xyz = mesh.xyz();
    int[] tri = mesh.tri();
    double[] n = new double[tri.length];
    for (int f = 0; f < tri.length; f += 3) {
      int a = 3 * tri[f];
      int b = 3 * tri[f + 1];
      int c = 3 * tri[f + 2];
      double ux = xyz[b] - xyz[a];
      double uy = xyz[b + 1] - xyz[a + 1];
      double uz = xyz[b + 2] - xyz[a + 2];
      double vx = xyz[c] - xyz[a];
      double vy = xyz[c + 1] - xyz[a + 1];
      double vz = xyz[c + 2] - xyz[a + 2];
      double nx = uy * vz - uz * vy;
      double ny = uz * vx - ux * vz;
      double nz = ux * vy - uy * vx;
      double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
      if (length > 0) {
        n[f] = nx / length;
        n[f + 1] = ny / length;
        n[f + 2] = nz / length;
      }
    }
    return n;
  }

  private void gatherFacetsAround() {
    int[] tri = mesh.tri();
    for (int v : tri) {
      start[v + 1]++;
    }
    for (int v = 0; v < mesh.vertexCount(); v++) {
      start[v + 1] += start[v];
    }
    int[] fill = Arrays.copyOf(start, mesh.vertexCount());
    for (int i = 0; i < tri.length; i++) {
      around[fill[tri[i]]++] = i / 3;
    }
  }

  /**
   * Weights after N. Max, "Weights for computing vertex normals from facet normals", Journal of
   * Graphics Tools 4(2), 1999: the cross product of the two edges at the corner over the squares of
   * their lengths.
   */
  private void smoothCorners() {
    double[] w = new double[3 * HUB];
    for (int v = 0; v < mesh.vertexCount(); v++) {
      int from = start[v];
      int k = start[v + 1] - from;
      if (k > HUB) {
        for (int i = 0; i < k; i++) {
          keepFlat(around[from + i], v);
        }
        continue;
      }
      for (int i = 0; i < k; i++) {
        weigh(around[from + i], v, w, 3 * i);
      }
      for (int i = 0; i < k; i++) {
        smooth(around[from + i], v, w, from, k);
      }
    }
  }

  private void keepFlat(int f, int v) {
    set(f, v, unit[3 * f], unit[3 * f + 1], unit[3 * f + 2]);
  }

  private void smooth(int f, int v, double[] w, int from, int k) {
    double x = 0;
    double y = 0;
    double z = 0;
    for (int j = 0; j < k; j++) {
      if (dot(f, around[from + j]) >= cosSmooth) {
        x += w[3 * j];
        y += w[3 * j + 1];
        z += w[3 * j + 2];
      }
    }
    double length = Math.sqrt(x * x + y * y + z * z);
    if (length > 0) {
      set(f, v, x / length, y / length, z / length);
    } else {
      keepFlat(f, v);
    }
  }

  private void set(int f, int v, double x, double y, double z) {
    int corner = corner(f, v);
    corners[9 * f + 3 * corner] = (float) x;
    corners[9 * f + 3 * corner + 1] = (float) y;
    corners[9 * f + 3 * corner + 2] = (float) z;
  }

  private void weigh(int f, int v, double[] w, int at) {
    double[] xyz = mesh.xyz();
    int[] tri = mesh.tri();
    int corner = corner(f, v);
    int a = 3 * v;
    int b = 3 * tri[3 * f + (corner + 1) % 3];
    int c = 3 * tri[3 * f + (corner + 2) % 3];
    double ux = xyz[b] - xyz[a];
    double uy = xyz[b + 1] - xyz[a + 1];
    double uz = xyz[b + 2] - xyz[a + 2];
    double vx = xyz[c] - xyz[a];
    double vy = xyz[c + 1] - xyz[a + 1];
    double vz = xyz[c + 2] - xyz[a + 2];
    double over = (ux * ux + uy * uy + uz * uz) * (vx * vx + vy * vy + vz * vz);
    double s = over > 0 ? 1 / over : 0;
    w[at] = s * (uy * vz - uz * vy);
    w[at + 1] = s * (uz * vx - ux * vz);
    w[at + 2] = s * (ux * vy - uy * vx);
  }

  private int corner(int f, int v) {
    int[] tri = mesh.tri();
    return tri[3 * f] == v ? 0 : tri[3 * f + 1] == v ? 1 : 2;
  }

  private void findCreases() {
    int[] tri = mesh.tri();
    for (int f = 0; f < mesh.triangleCount(); f++) {
      for (int k = 0; k < 3; k++) {
        int a = tri[3 * f + k];
        int b = tri[3 * f + (k + 1) % 3];
        int g = across(f, a, b);
        if (g > f && dot(f, g) < cosCrease && !flat(f) && !flat(g)) {
          addCrease(a, b, f, g);
        }
      }
    }
    creases = CreaseChains.longOnes(mesh, Arrays.copyOf(creases, creaseInts));
  }

  private void addCrease(int a, int b, int f, int g) {
    if (creaseInts == creases.length) {
      creases = Arrays.copyOf(creases, 2 * creaseInts);
    }
    creases[creaseInts++] = a;
    creases[creaseInts++] = b;
    creases[creaseInts++] = f;
    creases[creaseInts++] = g;
  }

  /** The facet that has edge {@code b, a}, or -1. */
  private int across(int f, int a, int b) {
    int v = start[a + 1] - start[a] <= start[b + 1] - start[b] ? a : b;
    int[] tri = mesh.tri();
    for (int i = start[v]; i < start[v + 1]; i++) {
      int g = around[i];
      if (g == f) {
        continue;
      }
      for (int k = 0; k < 3; k++) {
        if (tri[3 * g + k] == b && tri[3 * g + (k + 1) % 3] == a) {
          return g;
        }
      }
    }
    return -1;
  }

  private double dot(int f, int g) {
    return unit[3 * f] * unit[3 * g]
        + unit[3 * f + 1] * unit[3 * g + 1]
        + unit[3 * f + 2] * unit[3 * g + 2];
  }

  private boolean flat(int f) {
    return unit[3 * f] == 0 && unit[3 * f + 1] == 0 && unit[3 * f + 2] == 0;
  }
}
