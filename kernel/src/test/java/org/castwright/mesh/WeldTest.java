package org.castwright.mesh;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class WeldTest {

  @Test
  void firstAppearanceKeepsItsPlace() {
    double[] xyz = {5, 0, 0, 1, 0, 0, 5, 0, 0, 0, 1, 0, 1, -0.0, 0, 9, 9, 9};
    TriMesh m = Weld.exact(new TriMesh(xyz, new int[] {2, 4, 3, 0, 2, 1}));
    assertArrayEquals(new double[] {5, 0, 0, 1, 0, 0, 0, 1, 0, 9, 9, 9}, m.xyz());
    assertArrayEquals(new int[] {0, 1, 2, 0, 0, 1}, m.tri());
  }

  @Test
  void soupOfAClosedShapeGetsItsVerticesBack() {
    TriMesh torus = Shapes.torus(30, 10, 60, 40);
    TriMesh welded = Weld.exact(soup(torus));
    assertEquals(torus.vertexCount(), welded.vertexCount());
    assertEquals(torus.triangleCount(), welded.triangleCount());
    assertEquals(torus.volume(), welded.volume(), 1e-9 * torus.volume());
  }

  @Test
  void agreesWithAMapOnSeededPoints() {
    SplittableRandom random = new SplittableRandom(20240611);
    PointTable table = new PointTable(0);
    Map<List<Double>, Integer> map = new HashMap<>();
    for (int i = 0; i < 20_000; i++) {
      double x = random.nextInt(12);
      double y = random.nextInt(12) / 3.0;
      double z = random.nextInt(12) * 1e6;
      Integer known = map.putIfAbsent(List.of(x, y, z), map.size());
      assertEquals(known == null ? map.size() - 1 : known, table.indexOf(x, y, z));
    }
    assertEquals(map.size(), table.size());
    assertEquals(3 * map.size(), table.toArray().length);
  }

  private static TriMesh soup(TriMesh mesh) {
    MeshBuilder b = new MeshBuilder();
    for (int i = 0; i < mesh.tri().length; i += 3) {
      for (int k = 0; k < 3; k++) {
        int v = 3 * mesh.tri()[i + k];
        b.vertex(mesh.xyz()[v], mesh.xyz()[v + 1], mesh.xyz()[v + 2]);
      }
      b.triangle(i, i + 1, i + 2);
    }
    return b.build();
  }
}
