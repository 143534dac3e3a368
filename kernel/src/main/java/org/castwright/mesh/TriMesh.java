package org.castwright.mesh;

import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;

/**
 * An indexed triangle mesh, immutable by agreement: nobody writes into the arrays after
 * construction. {@code xyz} holds 3 doubles a vertex (millimeters), {@code tri} 3 vertex indices a
 * triangle, counter-clockwise seen from outside. The arrays are shared, not copied: hot loops read
 * them directly.
 */
public final class TriMesh {

  private final double[] xyz;
  private final int[] tri;

  /**
   * Takes over both arrays.
   *
   * @throws IllegalArgumentException if a length is not a multiple of three or an index is out of
   *     range
   */
  public TriMesh(double[] xyz, int[] tri) {
    if (xyz.length % 3 != 0 || tri.length % 3 != 0) {
      throw new IllegalArgumentException("coordinates and indices come in threes");
    }
    int n = xyz.length / 3;
    for (int v : tri) {
      if (v < 0 || v >= n) {
        throw new IllegalArgumentException("vertex index " + v + " of " + n);
      }
    }
    this.xyz = xyz;
    this.tri = tri;
  }

  /** All triangles of some meshes in one, in their order; shells may overlap then. */
  public static TriMesh together(List<TriMesh> meshes) {
    double[] xyz = new double[meshes.stream().mapToInt(m -> m.xyz.length).sum()];
    int[] tri = new int[meshes.stream().mapToInt(m -> m.tri.length).sum()];
    int coordinates = 0;
    int corners = 0;
    for (TriMesh m : meshes) {
      System.arraycopy(m.xyz, 0, xyz, coordinates, m.xyz.length);
      for (int v : m.tri) {
        tri[corners++] = coordinates / 3 + v;
      }
      coordinates += m.xyz.length;
    }
    return new TriMesh(xyz, tri);
  }

  public double[] xyz() {
    return xyz;
  }

  public int[] tri() {
    return tri;
  }

  public int vertexCount() {
    return xyz.length / 3;
  }

  public int triangleCount() {
    return tri.length / 3;
  }

  public boolean isEmpty() {
    return tri.length == 0;
  }

  public Vec3 vertex(int i) {
    return new Vec3(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
  }

  public Box3 bounds() {
    return Box3.of(xyz);
  }

  /**
   * The signed volume by the divergence theorem, mm³, summed about the center of the box so that a
   * model far from the origin loses no digits. Means a volume only for a closed mesh.
   */
  public double volume() {
    if (isEmpty()) {
      return 0;
    }
    Vec3 c = bounds().center();
    double sum = 0;
    for (int i = 0; i < tri.length; i += 3) {
      int a = 3 * tri[i];
      int b = 3 * tri[i + 1];
      int d = 3 * tri[i + 2];
      double ax = xyz[a] - c.x();
      double ay = xyz[a + 1] - c.y();
      double az = xyz[a + 2] - c.z();
      double bx = xyz[b] - c.x();
      double by = xyz[b + 1] - c.y();
      double bz = xyz[b + 2] - c.z();
      double dx = xyz[d] - c.x();
      double dy = xyz[d + 1] - c.y();
      double dz = xyz[d + 2] - c.z();
      sum += ax * (by * dz - bz * dy) + ay * (bz * dx - bx * dz) + az * (bx * dy - by * dx);
    }
    return sum / 6;
  }

  /** The surface area, mm². */
  public double area() {
    double sum = 0;
    for (int f = 0; f < triangleCount(); f++) {
      sum += areaVector(f).length();
    }
    return sum;
  }

  /** The outward normal of triangle {@code f} with the triangle's area as its length, mm². */
  public Vec3 areaVector(int f) {
    int a = 3 * tri[3 * f];
    int b = 3 * tri[3 * f + 1];
    int c = 3 * tri[3 * f + 2];
    double ux = xyz[b] - xyz[a];
    double uy = xyz[b + 1] - xyz[a + 1];
    double uz = xyz[b + 2] - xyz[a + 2];
    double vx = xyz[c] - xyz[a];
    double vy = xyz[c + 1] - xyz[a + 1];
    double vz = xyz[c + 2] - xyz[a + 2];
    return new Vec3((uy * vz - uz * vy) / 2, (uz * vx - ux * vz) / 2, (ux * vy - uy * vx) / 2);
  }

  /** The middle of the corners of triangle {@code f}. */
  public Vec3 center(int f) {
    return vertex(tri[3 * f])
        .plus(vertex(tri[3 * f + 1]))
        .plus(vertex(tri[3 * f + 2]))
        .times(1.0 / 3);
  }

  /** The mesh read in the axes of {@code frame}. */
  public TriMesh toLocal(Frame frame) {
    double[] out = new double[xyz.length];
    for (int i = 0; i < xyz.length; i += 3) {
      double x = xyz[i];
      double y = xyz[i + 1];
      double z = xyz[i + 2];
      out[i] = frame.u().x() * x + frame.u().y() * y + frame.u().z() * z;
      out[i + 1] = frame.v().x() * x + frame.v().y() * y + frame.v().z() * z;
      out[i + 2] = frame.w().x() * x + frame.w().y() * y + frame.w().z() * z;
    }
    return new TriMesh(out, tri);
  }

  public TriMesh translated(Vec3 t) {
    double[] out = new double[xyz.length];
    for (int i = 0; i < xyz.length; i += 3) {
      out[i] = xyz[i] + t.x();
      out[i + 1] = xyz[i + 1] + t.y();
      out[i + 2] = xyz[i + 2] + t.z();
    }
    return new TriMesh(out, tri);
  }

  /** The mesh scaled about the origin, each axis by its own factor above zero. */
  public TriMesh scaled(Vec3 factors) {
    double[] out = new double[xyz.length];
    for (int i = 0; i < xyz.length; i += 3) {
      out[i] = xyz[i] * factors.x();
      out[i + 1] = xyz[i + 1] * factors.y();
      out[i + 2] = xyz[i + 2] * factors.z();
    }
    return new TriMesh(out, tri);
  }

  /** The same surface seen from the other side. */
  public TriMesh reversed() {
    int[] out = new int[tri.length];
    for (int i = 0; i < tri.length; i += 3) {
      out[i] = tri[i];
      out[i + 1] = tri[i + 2];
      out[i + 2] = tri[i + 1];
    }
    return new TriMesh(xyz, out);
  }
}
