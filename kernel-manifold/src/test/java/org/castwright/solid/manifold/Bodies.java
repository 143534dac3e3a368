package org.castwright.solid.manifold;

import java.util.SplittableRandom;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;

/** Bodies for the tests. */
final class Bodies {

  private Bodies() {}

  static TriMesh box(double x0, double y0, double z0, double x1, double y1, double z1) {
    return Primitives.box(new Vec3(x0, y0, z0), new Vec3(x1, y1, z1));
  }

  /** The mesh turned so that world axes come to lie along those of {@code frame}. */
  static TriMesh turned(TriMesh mesh, Frame frame) {
    double[] xyz = mesh.xyz().clone();
    for (int i = 0; i < xyz.length; i += 3) {
      Vec3 p = frame.toWorld(new Vec3(xyz[i], xyz[i + 1], xyz[i + 2]));
      xyz[i] = p.x();
      xyz[i + 1] = p.y();
      xyz[i + 2] = p.z();
    }
    return new TriMesh(xyz, mesh.tri());
  }

  static Frame frame(SplittableRandom random) {
    Vec3 w =
        new Vec3(random.nextDouble() - 0.5, random.nextDouble() - 0.5, random.nextDouble() - 0.5);
    return Frame.along(w).turned(360 * random.nextDouble());
  }

  /** A body of a few dozen triangles in any position, about a unit in size. */
  static TriMesh any(SplittableRandom random) {
    int sides = 3 + random.nextInt(7);
    TriMesh mesh =
        switch (random.nextInt(5)) {
          case 0 -> Shapes.cube(0.5 + random.nextDouble());
          case 1 -> Shapes.sphere(0.3 + random.nextDouble(), sides);
          case 2 -> Shapes.cylinder(0.3 + random.nextDouble() / 2, 1, sides);
          case 3 -> Shapes.torus(0.7, 0.2 + 0.3 * random.nextDouble(), sides, sides);
          default -> Shapes.hourglass(0.6, 0.2, 1, sides);
        };
    return turned(mesh, frame(random))
        .translated(new Vec3(random.nextDouble(), random.nextDouble(), random.nextDouble()));
  }

  /** A box with corners on a small lattice: two of them often share planes, edges or corners. */
  static TriMesh latticeBox(SplittableRandom random) {
    int[] lo = new int[3];
    int[] hi = new int[3];
    for (int k = 0; k < 3; k++) {
      lo[k] = random.nextInt(4);
      hi[k] = lo[k] + 1 + random.nextInt(3);
    }
    return box(lo[0], lo[1], lo[2], hi[0], hi[1], hi[2]);
  }
}
