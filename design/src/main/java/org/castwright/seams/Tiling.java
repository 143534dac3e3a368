package org.castwright.seams;

import org.castwright.geom.Vec3;
import org.castwright.mesh.IntList;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;

/**
 * A mesh whose facets tile those of the casting, with the casting's facet each one lies in and a
 * label of each.
 */
final class Tiling {

  final TriMesh mesh;

  /** The casting's facet in which each facet lies. */
  final int[] parent;

  /** Piece of each facet, from 0; all zero before labels are chosen. */
  final byte[] label;

  /** For each facet the like facet of the tiling this one was made from, or -1 if it was split. */
  final int[] unsplit;

  Tiling(TriMesh mesh, int[] parent, byte[] label) {
    this(mesh, parent, label, null);
  }

  private Tiling(TriMesh mesh, int[] parent, byte[] label, int[] unsplit) {
    this.mesh = mesh;
    this.parent = parent;
    this.label = label;
    this.unsplit = unsplit;
  }

  /** The casting itself. */
  static Tiling whole(TriMesh casting) {
    int[] parent = new int[casting.triangleCount()];
    for (int f = 0; f < parent.length; f++) {
      parent[f] = f;
    }
    return new Tiling(casting, parent, new byte[parent.length]);
  }

  Tiling labeled(byte[] labels) {
    return new Tiling(mesh, parent, labels, unsplit);
  }

  /** Splits the marked edges at their middles, and the facets beside them accordingly. */
  Tiling halved(SurfaceEdges edges, boolean[] split) {
    MeshBuilder out = new MeshBuilder();
    double[] v = mesh.xyz();
    for (int i = 0; i < v.length; i += 3) {
      out.vertex(v[i], v[i + 1], v[i + 2]);
    }
    int[] middle = new int[split.length];
    for (int e = 0; e < split.length; e++) {
      middle[e] = -1;
      if (split[e]) {
        Vec3 m = mesh.vertex(edges.low[e]).plus(mesh.vertex(edges.high[e])).times(0.5);
        middle[e] = out.vertex(m.x(), m.y(), m.z());
      }
    }
    Rows rows = new Rows(mesh.triangleCount());
    IntList unsplit = new IntList();
    for (int f = 0; f < mesh.triangleCount(); f++) {
      int before = out.triangleCount();
      divide(out, edges, middle, f);
      for (int k = before; k < out.triangleCount(); k++) {
        rows.add(parent[f], label[f]);
        unsplit.add(out.triangleCount() == before + 1 ? f : -1);
      }
    }
    return new Tiling(out.build(), rows.parents(), rows.labels(), unsplit.toArray());
  }

  private void divide(MeshBuilder out, SurfaceEdges edges, int[] middle, int f) {
    int turn = turn(edges, middle, f);
    int[] tri = mesh.tri();
    int a = tri[3 * f + turn];
    int b = tri[3 * f + (turn + 1) % 3];
    int c = tri[3 * f + (turn + 2) % 3];
    int ab = middle[edges.of[3 * f + turn]];
    int bc = middle[edges.of[3 * f + (turn + 1) % 3]];
    int ca = middle[edges.of[3 * f + (turn + 2) % 3]];
    if (ab < 0) {
      out.triangle(a, b, c);
    } else if (bc < 0) {
      out.triangle(a, ab, c);
      out.triangle(ab, b, c);
    } else if (ca < 0) {
      boolean shortAb = square(a, b) < square(b, c);
      out.triangle(ab, b, bc);
      out.triangle(a, ab, shortAb ? bc : c);
      out.triangle(shortAb ? a : ab, bc, c);
    } else {
      out.triangle(a, ab, ca);
      out.triangle(ab, b, bc);
      out.triangle(ca, bc, c);
      out.triangle(ab, bc, ca);
    }
  }

  /** The corner to begin with so that split edges come before whole ones. */
  private static int turn(SurfaceEdges edges, int[] middle, int f) {
    for (int k = 0; k < 3; k++) {
      boolean own = middle[edges.of[3 * f + k]] >= 0;
      boolean before = middle[edges.of[3 * f + (k + 2) % 3]] >= 0;
      if (own && !before) {
        return k;
      }
    }
    return 0;
  }

  private double square(int a, int b) {
    Vec3 d = mesh.vertex(a).minus(mesh.vertex(b));
    return d.dot(d);
  }
}
