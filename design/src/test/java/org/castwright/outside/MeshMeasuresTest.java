package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.AffineTransformMatrix3D;
import org.apache.commons.geometry.euclidean.threed.Bounds3D;
import org.apache.commons.geometry.euclidean.threed.RegionBSPTree3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.mesh.SimpleTriangleMesh;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.apache.commons.numbers.core.Precision;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/**
 * Volume, area and box of meshes against Apache Commons Geometry 1.0 (commons.apache.org/geometry),
 * which shares no code with this program and measures another way: it sorts the facets into a tree
 * of half spaces and adds up the convex cells.
 */
class MeshMeasuresTest {

  private static final Precision.DoubleEquivalence SAME =
      Precision.doubleEquivalenceOfEpsilon(1e-9);

  private static Map<String, TriMesh> meshes() {
    Map<String, TriMesh> m = new LinkedHashMap<>();
    m.put("fat torus", Shapes.torus(30, 14, 16, 10));
    m.put("thin torus", Shapes.torus(40, 3, 24, 6));
    m.put("hourglass", Shapes.hourglass(30, 12, 80, 20));
    m.put("cone", Shapes.cone(20, 50, 24));
    m.put("knot", Shapes.trefoil(15, 5, 30, 6));
    m.put("ribbed shell", ribbedShell());
    m.put("relief", relief());
    m.put("two bodies", Workshop.together(Shapes.cube(10), far(Shapes.sphere(9, 10))));
    return m;
  }

  private static TriMesh far(TriMesh mesh) {
    return mesh.translated(new Vec3(100, -70, 30));
  }

  /** A flattened ball with nine ribs from pole to pole, flat underneath. */
  private static TriMesh ribbedShell() {
    double[] xyz = Primitives.sphere(1, 18).xyz().clone();
    for (int i = 0; i < xyz.length; i += 3) {
      double rib = 1 + 0.15 * StrictMath.cos(9 * StrictMath.atan2(xyz[i + 1], xyz[i]));
      xyz[i] *= 40 * rib;
      xyz[i + 1] *= 28 * rib;
      xyz[i + 2] *= xyz[i + 2] > 0 ? 20 : 4;
    }
    return new TriMesh(xyz, Primitives.sphere(1, 18).tri());
  }

  /** A round plate with rings of random height on its upper face. */
  private static TriMesh relief() {
    SplittableRandom random = new SplittableRandom(8);
    int n = 9;
    double[] profile = new double[2 * (n + 2)];
    profile[0] = 30;
    for (int i = 0; i <= n; i++) {
      profile[2 * i + 2] = 30.0 * (n - i) / n;
      profile[2 * i + 3] = 5 + i * 0.4 + 2 * random.nextDouble();
    }
    return Primitives.revolve(profile, 20);
  }

  private static SimpleTriangleMesh theirs(TriMesh mesh) {
    SimpleTriangleMesh.Builder b = SimpleTriangleMesh.builder(SAME);
    for (int i = 0; i < mesh.vertexCount(); i++) {
      Vec3 p = mesh.vertex(i);
      b.addVertex(Vector3D.of(p.x(), p.y(), p.z()));
    }
    int[] t = mesh.tri();
    for (int i = 0; i < t.length; i += 3) {
      b.addFace(t[i], t[i + 1], t[i + 2]);
    }
    return b.build();
  }

  private static void assertSame(SimpleTriangleMesh expected, TriMesh mesh, String name) {
    RegionBSPTree3D region = expected.toTree();
    assertEquals(region.getSize(), mesh.volume(), 1e-8 * region.getSize(), name);
    assertEquals(region.getBoundarySize(), mesh.area(), 1e-8 * mesh.area(), name);
    Bounds3D theirs = expected.getBounds();
    Box3 ours = mesh.bounds();
    assertNear(theirs.getMin(), ours.min(), name);
    assertNear(theirs.getMax(), ours.max(), name);
    assertNear(theirs.getCentroid(), ours.center(), name);
    assertNear(theirs.getDiagonal(), ours.size(), name);
  }

  private static void assertNear(Vector3D expected, Vec3 p, String name) {
    Vector3D q = Vector3D.of(p.x(), p.y(), p.z());
    assertEquals(0, expected.distance(q), 1e-11 * (1 + expected.norm()), name);
  }

  @Test
  void volumeAreaAndBox() {
    meshes().forEach((name, mesh) -> assertSame(theirs(mesh), mesh, name));
  }

  /** Turned and shifted by their quaternions there and by our frames here. */
  @Test
  void volumeAreaAndBoxAfterAMove() {
    SplittableRandom random = new SplittableRandom(31);
    meshes()
        .forEach(
            (name, mesh) -> {
              Vec3 axis =
                  new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
              double degrees = 360 * random.nextDouble();
              Vec3 shift = new Vec3(300 * random.nextDouble(), -20, 70 * random.nextDouble());
              QuaternionRotation turn =
                  QuaternionRotation.fromAxisAngle(
                      Vector3D.of(axis.x(), axis.y(), axis.z()), Math.toRadians(degrees));
              AffineTransformMatrix3D move =
                  turn.toMatrix().translate(shift.x(), shift.y(), shift.z());
              TriMesh moved = turned(mesh, axis, degrees).translated(shift);
              assertSame(theirs(mesh).transform(move), moved, name);
            });
  }

  /** Turned counter-clockwise about an axis: read in axes turned the other way. */
  private static TriMesh turned(TriMesh mesh, Vec3 axis, double degrees) {
    Frame f = Frame.along(axis);
    Frame back = f.turned(-degrees);
    // p to coordinates in the turned frame, then those coordinates laid out in the frame at rest
    TriMesh local = mesh.toLocal(back);
    Frame rest = new Frame(f.toLocal(Vec3.X), f.toLocal(Vec3.Y), f.toLocal(Vec3.Z));
    return local.toLocal(rest);
  }

  /** An axis-wise stretch multiplies the volume by the product of its factors. */
  @Test
  void stretched() {
    AffineTransformMatrix3D stretch = AffineTransformMatrix3D.createScale(1.02, 0.7, 1.3);
    meshes()
        .forEach(
            (name, mesh) -> {
              TriMesh ours = mesh.scaled(new Vec3(1.02, 0.7, 1.3));
              assertSame(theirs(mesh).transform(stretch), ours, name);
              assertEquals(mesh.volume() * 1.02 * 0.7 * 1.3, ours.volume(), 1e-9 * ours.volume());
            });
  }
}
