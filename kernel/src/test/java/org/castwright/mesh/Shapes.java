package org.castwright.mesh;

import java.util.Arrays;
import org.castwright.geom.Vec3;

/** Shapes with known answers, made in code, for the tests of every module. */
public final class Shapes {

  private Shapes() {}

  public static TriMesh cube(double side) {
    double h = side / 2;
    return Primitives.box(new Vec3(-h, -h, -h), new Vec3(h, h, h));
  }

  public static TriMesh sphere(double radius, int sides) {
    return Primitives.sphere(radius, sides);
  }

  public static TriMesh ellipsoid(double a, double b, double c, int sides) {
    return Primitives.sphere(1, sides).scaled(new Vec3(a, b, c));
  }

  public static TriMesh cylinder(double radius, double height, int sides) {
    return Primitives.frustum(radius, -height / 2, radius, height / 2, sides);
  }

  public static TriMesh cone(double radius, double height, int sides) {
    return Primitives.revolve(new double[] {radius, 0, 0, height}, sides);
  }

  /** Two cones meeting in a waist: undercut along its axis, free across it. */
  public static TriMesh hourglass(double rim, double waist, double height, int sides) {
    double h = height / 2;
    return Primitives.revolve(new double[] {rim, -h, waist, 0, rim, h}, sides);
  }

  /** A torus about the z axis. */
  public static TriMesh torus(double ring, double tube, int ringSides, int tubeSides) {
    MeshBuilder m = new MeshBuilder();
    for (int i = 0; i < ringSides; i++) {
      double a = 2 * Math.PI * i / ringSides;
      for (int j = 0; j < tubeSides; j++) {
        double b = 2 * Math.PI * j / tubeSides;
        double r = ring + tube * StrictMath.cos(b);
        m.vertex(r * StrictMath.cos(a), r * StrictMath.sin(a), tube * StrictMath.sin(b));
      }
    }
    closeTube(m, ringSides, tubeSides);
    return m.build();
  }

  /** A tube round a trefoil knot: no two rigid pieces open it. */
  public static TriMesh trefoil(double scale, double tube, int ringSides, int tubeSides) {
    MeshBuilder m = new MeshBuilder();
    for (int i = 0; i < ringSides; i++) {
      double t = 2 * Math.PI * i / ringSides;
      Vec3 p = trefoilPoint(t).times(scale);
      Vec3 tangent = trefoilPoint(t + 1e-4).minus(trefoilPoint(t - 1e-4)).unit();
      Vec3 side = Vec3.Z.minus(tangent.times(tangent.z())).unit();
      Vec3 up = tangent.cross(side);
      for (int j = 0; j < tubeSides; j++) {
        double b = 2 * Math.PI * j / tubeSides;
        Vec3 q =
            p.plus(side.times(tube * StrictMath.cos(b))).plus(up.times(tube * StrictMath.sin(b)));
        m.vertex(q.x(), q.y(), q.z());
      }
    }
    closeTube(m, ringSides, tubeSides);
    TriMesh mesh = m.build();
    return mesh.volume() < 0 ? mesh.reversed() : mesh;
  }

  private static Vec3 trefoilPoint(double t) {
    return new Vec3(
        StrictMath.sin(t) + 2 * StrictMath.sin(2 * t),
        StrictMath.cos(t) - 2 * StrictMath.cos(2 * t),
        -StrictMath.sin(3 * t));
  }

  private static void closeTube(MeshBuilder m, int ringSides, int tubeSides) {
    for (int i = 0; i < ringSides; i++) {
      for (int j = 0; j < tubeSides; j++) {
        int a = i * tubeSides + j;
        int b = ((i + 1) % ringSides) * tubeSides + j;
        int c = ((i + 1) % ringSides) * tubeSides + (j + 1) % tubeSides;
        int d = i * tubeSides + (j + 1) % tubeSides;
        m.triangle(a, b, c);
        m.triangle(a, c, d);
      }
    }
  }

  /** Two meshes as one, whether they touch or not. */
  public static TriMesh joined(TriMesh a, TriMesh b) {
    double[] xyz = Arrays.copyOf(a.xyz(), a.xyz().length + b.xyz().length);
    System.arraycopy(b.xyz(), 0, xyz, a.xyz().length, b.xyz().length);
    int[] tri = Arrays.copyOf(a.tri(), a.tri().length + b.tri().length);
    for (int i = 0; i < b.tri().length; i++) {
      tri[a.tri().length + i] = b.tri()[i] + a.vertexCount();
    }
    return new TriMesh(xyz, tri);
  }
}
