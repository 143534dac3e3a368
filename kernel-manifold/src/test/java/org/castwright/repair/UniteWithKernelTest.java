package org.castwright.repair;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.mesh.Weld;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.SolidStatus;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

/** Overlapping parts united by the real kernel, against volumes by inclusion and exclusion. */
class UniteWithKernelTest {

  @Test
  void unitesCubesAndLeavesTheVoidOfOne() {
    // 4³ with a void of 1, and 2³ stuck into its corner by 1³
    TriMesh model = together(cube(0, 0, 0, 4), cube(0.5, 0.5, 0.5, 1).reversed(), cube(3, 3, 3, 2));
    try (SolidKernel kernel = new ManifoldKernel()) {
      RepairResult r =
          Repair.heal(model, RepairOptions.DEFAULT.withFillVoids(true), kernel, Progress.NONE);
      assertEquals(
          List.of("unite-parts", "fill-voids"), r.steps().stream().map(HealingStep::name).toList());
      assertEquals(2, r.steps().get(0).count());
      assertEquals(64 + 8 - 1, r.mesh().volume(), 1e-9);
      assertEquals(1, r.voids().get(0).volume(), 1e-9);
      assertEquals(1, MeshCheck.of(r.mesh()).components());
      assertEquals(SolidStatus.OK, kernel.status(r.mesh()));
    }
  }

  @Test
  void bodiesPartedAtATouchingEdgeAreAccepted() {
    TriMesh pair = together(cube(0, 0, 0, 1), cube(1, 1, 0, 1));
    try (SolidKernel kernel = new ManifoldKernel()) {
      TriMesh healed =
          Repair.heal(Weld.exact(pair), RepairOptions.DEFAULT, kernel, Progress.NONE).mesh();
      TriMesh far = cube(5, 5, 5, 1);
      double sum =
          kernel
              .union("sum", List.of(kernel.solid("pair", healed), kernel.solid("far", far)))
              .volume();
      assertEquals(3, sum, 1e-9);
    }
  }

  private static TriMesh cube(double x, double y, double z, double side) {
    return Primitives.box(new Vec3(x, y, z), new Vec3(x + side, y + side, z + side));
  }

  private static TriMesh together(TriMesh... meshes) {
    MeshBuilder out = new MeshBuilder();
    for (TriMesh m : meshes) {
      int base = out.vertexCount();
      for (int v = 0; v < m.vertexCount(); v++) {
        Vec3 p = m.vertex(v);
        out.vertex(p.x(), p.y(), p.z());
      }
      for (int f = 0; f < m.triangleCount(); f++) {
        out.triangle(base + m.tri()[3 * f], base + m.tri()[3 * f + 1], base + m.tri()[3 * f + 2]);
      }
    }
    return out.build();
  }
}
