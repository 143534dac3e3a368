package org.castwright.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

/** A tray with a slot from the outside 1.4 mm from its cavity and a shut hollow 1 mm from it. */
class FacesTest {

  private static final double SLOT = 1.4;
  private static final double HOLLOW = 1;

  @Test
  void aShutHollowIsNotTheOutside() {
    try (ManifoldKernel kernel = new ManifoldKernel()) {
      TriMesh block = box(-10, -10, 10, 10);
      TriMesh casting = box(-4, -4, 4, 0);
      Solid tray =
          kernel.difference(
              "tray",
              kernel.solid("lower", box(-10, -10, 10, 0)),
              List.of(
                  kernel.solid("casting", casting),
                  kernel.solid("slot", place(-11, -4 - SLOT)),
                  kernel.solid("hollow", place(4 + HOLLOW, 6))));
      Body body = Body.read("tray", tray.mesh());
      List<Bvh> lid = List.of(new Bvh(box(-10, 0, 10, 10)));
      Faces faces = new Faces(body.mesh(), new Bvh(block), new Bvh(casting), null, lid);

      ProofCheck[] thin = ThinCheck.of(body, faces, new Bvh(body.mesh()), ProofLimits.DEFAULT);

      assertEquals(SLOT, thin[0].value(), 1e-5, thin[0].toString());
      assertEquals(HOLLOW, thin[1].value(), 1e-5, thin[1].toString());
    }
  }

  private static TriMesh box(double x0, double z0, double x1, double z1) {
    return Primitives.box(new Vec3(x0, x0, z0), new Vec3(x1, x1, z1));
  }

  private static TriMesh place(double x0, double x1) {
    return Primitives.box(new Vec3(x0, -1, -3), new Vec3(x1, 1, -2));
  }
}
