package org.castwright.repair;

import java.util.Arrays;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;

/**
 * Pieces of surface joined by edges that have exactly two triangles, and the turning of triangles
 * within each piece so that neighbors agree. The side that more triangles already show is kept.
 */
final class Patches {

  private final TriMesh mesh;
  private final int[] patch;
  private final boolean[] turned;
  private int count;

  private Patches(TriMesh mesh) {
    this.mesh = mesh;
    this.patch = new int[mesh.triangleCount()];
    this.turned = new boolean[mesh.triangleCount()];
  }

  /** Finds the patches of a mesh without changing it; they may be one-sided. */
  static Patches of(TriMesh mesh, EdgeTable edges) {
    Patches patches = new Patches(mesh);
    patches.flood(edges);
    return patches;
  }

  int count() {
    return count;
  }

  int patchOf(int triangle) {
    return patch[triangle];
  }

  /**
   * Makes neighbors agree.
   *
   * @throws MeshException if a piece of surface has only one side, as a Möbius strip
   */
  static void orient(Draft draft) {
    TriMesh mesh = draft.mesh();
    EdgeTable edges = draft.edges();
    Patches patches = of(mesh, edges);
    patches.refuseOneSided(edges);
    int turns = patches.keepMajority();
    if (turns == 0) {
      return;
    }
    String words =
        Draft.many(turns, "triangle", "triangles") + " turned over to agree with the neighbors";
    draft.replace(turn(mesh, patches.turned), new HealingStep("turn-triangles", words, turns, 0));
  }

  /** The mesh with the triangles marked seen from the other side. */
  static TriMesh turn(TriMesh mesh, boolean[] marked) {
    int[] tri = mesh.tri().clone();
    for (int f = 0; f < marked.length; f++) {
      if (marked[f]) {
        int b = tri[3 * f + 1];
        tri[3 * f + 1] = tri[3 * f + 2];
        tri[3 * f + 2] = b;
      }
    }
    return new TriMesh(mesh.xyz(), tri);
  }

  private void flood(EdgeTable edges) {
    int[] beside = neighbors(edges);
    int[] queue = new int[patch.length];
    Arrays.fill(patch, -1);
    for (int seed = 0; seed < patch.length; seed++) {
      if (patch[seed] >= 0) {
        continue;
      }
      int end = 0;
      queue[end++] = seed;
      patch[seed] = count;
      for (int at = 0; at < end; at++) {
        int f = queue[at];
        for (int h = 3 * f; h < 3 * f + 3; h++) {
          int g = beside[h];
          if (g >= 0 && patch[g / 3] < 0) {
            patch[g / 3] = count;
            turned[g / 3] = turned[f] ^ (edges.from(g) == edges.from(h));
            queue[end++] = g / 3;
          }
        }
      }
      count++;
    }
  }

  /** For each half-edge the one across, on edges with two triangles; -1 elsewhere. */
  private static int[] neighbors(EdgeTable edges) {
    int[] beside = new int[edges.halfCount()];
    Arrays.fill(beside, -1);
    for (int e = 0; e < edges.count(); e++) {
      if (edges.size(e) == 2) {
        beside[edges.half(e, 0)] = edges.half(e, 1);
        beside[edges.half(e, 1)] = edges.half(e, 0);
      }
    }
    return beside;
  }

  private void refuseOneSided(EdgeTable edges) {
    for (int e = 0; e < edges.count(); e++) {
      if (edges.size(e) != 2) {
        continue;
      }
      int h = edges.half(e, 0);
      int g = edges.half(e, 1);
      boolean sameWay = edges.from(h) == edges.from(g);
      if (sameWay != (turned[h / 3] ^ turned[g / 3])) {
        Vec3 p = mesh.vertex(edges.from(h));
        throw new MeshException(
            "the surface near "
                + Draft.place(p)
                + " has only one side, like a Möbius strip, so it has no inside to cast: "
                + "rebuild that part in the modeling program");
      }
    }
  }

  /** Swaps the turned and the unturned of a patch where fewer turns do; returns the turns. */
  private int keepMajority() {
    int[] size = new int[count];
    int[] turns = new int[count];
    for (int f = 0; f < patch.length; f++) {
      size[patch[f]]++;
      turns[patch[f]] += turned[f] ? 1 : 0;
    }
    int total = 0;
    for (int f = 0; f < patch.length; f++) {
      int p = patch[f];
      turned[f] ^= 2 * turns[p] > size[p];
      total += turned[f] ? 1 : 0;
    }
    return total;
  }
}
