package org.castwright.repair;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.mesh.Weld;

/** Ways to break a sound mesh. */
final class Broken {

  private Broken() {}

  static TriMesh box(double x0, double y0, double z0, double x1, double y1, double z1) {
    return Primitives.box(new Vec3(x0, y0, z0), new Vec3(x1, y1, z1));
  }

  /** All triangles of all meshes in one, vertices apart. */
  static TriMesh together(TriMesh... meshes) {
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

  /** As {@link #together}, with vertices in one place joined. */
  static TriMesh welded(TriMesh... meshes) {
    return Weld.exact(together(meshes));
  }

  /** Every triangle with three vertices of its own. */
  static TriMesh loose(TriMesh m) {
    MeshBuilder out = new MeshBuilder();
    for (int f = 0; f < m.triangleCount(); f++) {
      for (int k = 0; k < 3; k++) {
        Vec3 p = m.vertex(m.tri()[3 * f + k]);
        out.vertex(p.x(), p.y(), p.z());
      }
      out.triangle(3 * f, 3 * f + 1, 3 * f + 2);
    }
    return out.build();
  }

  static TriMesh without(TriMesh m, IntPredicate dropped) {
    boolean[] kept = new boolean[m.triangleCount()];
    for (int f = 0; f < kept.length; f++) {
      kept[f] = !dropped.test(f);
    }
    return Draft.keep(m, kept);
  }

  /** The middle of a triangle. */
  static Vec3 middle(TriMesh m, int f) {
    int[] t = m.tri();
    return m.vertex(t[3 * f])
        .plus(m.vertex(t[3 * f + 1]))
        .plus(m.vertex(t[3 * f + 2]))
        .times(1.0 / 3);
  }

  static TriMesh turned(TriMesh m, IntPredicate which) {
    boolean[] marked = new boolean[m.triangleCount()];
    for (int f = 0; f < marked.length; f++) {
      marked[f] = which.test(f);
    }
    return Patches.turn(m, marked);
  }

  static TriMesh plus(TriMesh m, int... corners) {
    int[] tri = Arrays.copyOf(m.tri(), m.tri().length + corners.length);
    System.arraycopy(corners, 0, tri, m.tri().length, corners.length);
    return new TriMesh(m.xyz(), tri);
  }
}
