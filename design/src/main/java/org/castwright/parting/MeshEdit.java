package org.castwright.parting;

import org.castwright.mesh.IntList;
import org.castwright.mesh.TriMesh;

/** Collects the facets of a casting, some of them split, with the side of each. */
final class MeshEdit {

  private final double[] xyz;
  private final IntList tri = new IntList();
  private final IntList side = new IntList();

  /** The vertices of {@code mesh} followed by those {@code added}, packed xyz. */
  MeshEdit(TriMesh mesh, DoubleList added) {
    double[] old = mesh.xyz();
    xyz = new double[old.length + added.size()];
    System.arraycopy(old, 0, xyz, 0, old.length);
    for (int i = 0; i < added.size(); i++) {
      xyz[old.length + i] = added.get(i);
    }
  }

  void facet(int[] from, int corner, byte s) {
    facet(from[corner], from[corner + 1], from[corner + 2], s);
  }

  void facet(int a, int b, int c, byte s) {
    tri.add(a);
    tri.add(b);
    tri.add(c);
    side.add(s);
  }

  Labeled result() {
    byte[] s = new byte[side.size()];
    for (int i = 0; i < s.length; i++) {
      s[i] = (byte) side.get(i);
    }
    return new Labeled(new TriMesh(xyz, tri.toArray()), s);
  }
}
