package org.castwright.mesh;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.castwright.geom.Vec3;
import org.junit.jupiter.api.Test;

class MeshCheckTest {

  @Test
  void closedShapesHaveTheirGenus() {
    // Euler: a sphere-like surface has characteristic 2, a torus (and any tube in a ring) 0
    MeshCheck cube = MeshCheck.of(Shapes.cube(2));
    assertTrue(cube.closedManifold());
    assertEquals(8 - 18 + 12, cube.eulerCharacteristic());
    assertEquals(18, cube.edges());
    assertEquals(0, cube.genus());
    assertEquals(-1, cube.faultTriangle());
    assertEquals("no faults", cube.faults());
    assertEquals(1, MeshCheck.of(Shapes.torus(3, 1, 20, 10)).genus());
    assertEquals(1, MeshCheck.of(Shapes.trefoil(10, 2, 100, 12)).genus());
    assertEquals(0, MeshCheck.of(Shapes.hourglass(3, 1, 4, 24)).genus());
  }

  @Test
  void piecesAreCounted() {
    TriMesh two =
        Shapes.joined(Shapes.torus(3, 1, 20, 10), Shapes.cube(1).translated(new Vec3(9, 0, 0)));
    MeshCheck c = MeshCheck.of(two);
    assertTrue(c.closedManifold());
    assertEquals(2, c.components());
    assertEquals(2, c.eulerCharacteristic());
    assertEquals(1, c.genus());
  }

  @Test
  void emptyIsClosed() {
    MeshCheck c = MeshCheck.of(new TriMesh(new double[6], new int[0]));
    assertTrue(c.closedManifold());
    assertEquals(0, c.components());
    assertEquals(2, c.unusedVertices());
  }

  @Test
  void missingTriangleOpensThreeEdges() {
    TriMesh cube = Shapes.cube(2);
    TriMesh open = new TriMesh(cube.xyz(), Arrays.copyOf(cube.tri(), 33));
    MeshCheck c = MeshCheck.of(open);
    assertEquals(3, c.openEdges());
    assertEquals(0, c.nonManifoldVertices());
    assertFalse(c.closedManifold());
    assertEquals("3 open edges", c.faults());
    assertThrows(IllegalStateException.class, c::genus);
  }

  @Test
  void turnedTriangleFlipsThreeEdges() {
    TriMesh cube = Shapes.cube(2);
    int[] tri = cube.tri().clone();
    int swap = tri[15];
    tri[15] = tri[16];
    tri[16] = swap;
    MeshCheck c = MeshCheck.of(new TriMesh(cube.xyz(), tri));
    assertEquals(3, c.flippedEdges());
    assertEquals(0, c.openEdges());
    assertEquals(0, c.nonManifoldVertices());
    assertFalse(c.closedManifold());
  }

  @Test
  void repeatedTriangleCrowdsThreeEdges() {
    TriMesh cube = Shapes.cube(2);
    int[] tri = Arrays.copyOf(cube.tri(), 39);
    System.arraycopy(tri, 0, tri, 36, 3);
    MeshCheck c = MeshCheck.of(new TriMesh(cube.xyz(), tri));
    assertEquals(3, c.nonManifoldEdges());
    assertFalse(c.closedManifold());
  }

  @Test
  void sharedVertexIsNotManifold() {
    // two cubes that share one vertex by index: all edges are fine, the vertex has two fans
    TriMesh two = sharing(1);
    MeshCheck c = MeshCheck.of(two);
    assertEquals(0, c.openEdges() + c.flippedEdges() + c.nonManifoldEdges());
    assertEquals(1, c.nonManifoldVertices());
    assertEquals(2, c.components());
    assertEquals("1 vertex where surfaces only touch", c.faults());
    int f = 3 * c.faultTriangle();
    assertTrue(two.tri()[f] == 0 || two.tri()[f + 1] == 0 || two.tri()[f + 2] == 0);
  }

  @Test
  void sharedEdgeIsNotManifold() {
    MeshCheck c = MeshCheck.of(sharing(2));
    assertEquals(1, c.nonManifoldEdges());
    assertEquals(2, c.nonManifoldVertices());
    assertEquals(1, c.components());
    assertFalse(c.closedManifold());
  }

  @Test
  void degenerateAndFlatTrianglesAreToldApart() {
    double[] xyz = {0, 0, 0, 1, 0, 0, 2, 0, 0, 5, 5, 5};
    MeshCheck c = MeshCheck.of(new TriMesh(xyz, new int[] {0, 1, 1, 0, 1, 2}));
    assertEquals(1, c.degenerateTriangles());
    assertEquals(2, c.zeroAreaTriangles());
    assertEquals(1, c.unusedVertices());
    assertEquals(3, c.openEdges());
    assertEquals(0, c.faultTriangle());
    assertEquals("3 open edges and 1 triangle with a repeated corner", c.faults());
  }

  @Test
  void orderOfTrianglesAndVerticesDoesNotMatter() {
    TriMesh mesh = Shapes.joined(sharing(1), Shapes.torus(3, 1, 12, 8));
    MeshCheck expected = MeshCheck.of(mesh);
    SplittableRandom random = new SplittableRandom(7);
    for (int k = 0; k < 20; k++) {
      MeshCheck c = MeshCheck.of(shuffled(mesh, random));
      assertEquals(expected.eulerCharacteristic(), c.eulerCharacteristic());
      assertEquals(expected.nonManifoldVertices(), c.nonManifoldVertices());
      assertEquals(expected.components(), c.components());
      assertEquals(expected.edges(), c.edges());
    }
  }

  private static TriMesh shuffled(TriMesh mesh, SplittableRandom random) {
    int n = mesh.vertexCount();
    int[] name = new int[n];
    for (int i = 0; i < n; i++) {
      int j = random.nextInt(i + 1);
      name[i] = name[j];
      name[j] = i;
    }
    double[] xyz = new double[3 * n];
    for (int i = 0; i < n; i++) {
      System.arraycopy(mesh.xyz(), 3 * i, xyz, 3 * name[i], 3);
    }
    int[] tri = mesh.tri().clone();
    for (int f = tri.length / 3 - 1; f > 0; f--) {
      int g = random.nextInt(f + 1);
      for (int k = 0; k < 3; k++) {
        int t = tri[3 * f + k];
        tri[3 * f + k] = tri[3 * g + k];
        tri[3 * g + k] = t;
      }
    }
    for (int i = 0; i < tri.length; i++) {
      tri[i] = name[tri[i]];
    }
    return new TriMesh(xyz, tri);
  }

  /** Two cubes, the second one using the first {@code count} vertices of the first as its own. */
  private static TriMesh sharing(int count) {
    TriMesh both = Shapes.joined(Shapes.cube(2), Shapes.cube(2).translated(new Vec3(2, 2, 0)));
    int[] tri = both.tri().clone();
    for (int i = 36; i < 72; i++) {
      tri[i] = tri[i] < 8 + count ? tri[i] - 8 : tri[i];
    }
    return new TriMesh(both.xyz(), tri);
  }
}
