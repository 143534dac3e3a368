package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.Format;
import org.castwright.meshio.RawModel;
import org.castwright.progress.Progress;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

class ModelTest {

  private static List<String> warnings(TriMesh mesh) {
    RawModel raw = new RawModel(mesh, Format.STL_BINARY, null, List.of(), "model.stl");
    return Model.of(raw, ModelOptions.DEFAULT, new ManifoldKernel(), Progress.NONE).warnings();
  }

  @Test
  void aSurfaceThroughItselfIsSaidBeforeTheMoldIsPlanned() {
    TriMesh box = Primitives.box(Vec3.ZERO, new Vec3(60, 60, 60));
    assertEquals(List.of(), warnings(box));
    double[] v = box.xyz().clone();
    for (int i = 0; i < v.length; i += 3) {
      if (v[i] > 30 && v[i + 1] > 30 && v[i + 2] > 30) {
        // one corner pushed out through the far side
        v[i] = 20;
        v[i + 1] = 20;
        v[i + 2] = -15;
      }
    }
    List<String> said = warnings(new TriMesh(v, box.tri()));
    assertEquals(1, said.size(), said.toString());
    assertTrue(said.get(0).contains("passes through itself"), said.get(0));
    assertTrue(said.get(0).contains("--heal remesh"), said.get(0));
  }
}
