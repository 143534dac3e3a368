package org.castwright.mold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.Arrays;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

class CrumbsTest {

  private static TriMesh box(double x, double side) {
    Vec3 low = new Vec3(x, 0, 0);
    return Primitives.box(low, low.plus(new Vec3(side, side, side)));
  }

  private static TriMesh both(TriMesh a, TriMesh b) {
    double[] v = Arrays.copyOf(a.xyz(), a.xyz().length + b.xyz().length);
    System.arraycopy(b.xyz(), 0, v, a.xyz().length, b.xyz().length);
    int[] t = Arrays.copyOf(a.tri(), a.tri().length + b.tri().length);
    for (int i = 0; i < b.tri().length; i++) {
      t[a.tri().length + i] = b.tri()[i] + a.vertexCount();
    }
    return new TriMesh(v, t);
  }

  /** A tetrahedron pressed flat: closed, and of no volume. */
  private static TriMesh flat(double x) {
    MeshBuilder m = new MeshBuilder();
    m.vertex(x, 0, 0);
    m.vertex(x + 1, 0, 0);
    m.vertex(x, 1, 0);
    m.vertex(x + 1, 1, 0);
    m.triangle(0, 2, 1);
    m.triangle(0, 1, 3);
    m.triangle(1, 2, 3);
    m.triangle(2, 0, 3);
    return m.build();
  }

  @Test
  void shellsWithoutVolumeGo() {
    TriMesh swept = Crumbs.swept(both(flat(-5), both(box(0, 10), flat(20))));
    assertEquals(1, MeshCheck.of(swept).components());
    assertEquals(1000, swept.volume(), 1e-9);
    assertEquals(8, swept.vertexCount());
  }

  @Test
  void whatHasVolumeStays() {
    TriMesh two = both(box(0, 10), box(20, 0.2));
    assertSame(two, Crumbs.swept(two));
    TriMesh speck = both(box(20, 0.05), box(0, 10));
    assertEquals(12, Crumbs.swept(speck).triangleCount());
  }
}
