package org.castwright.repair;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * Drops triangles that name a vertex twice and triangles written more than once. Of copies that
 * face mostly one way one is kept. Copies that face both ways equally are either a surface written
 * twice (one is kept) or the wall between two bodies joined face to face (none is kept): connected
 * copies are judged together by whether the surface round them needs them to be closed.
 */
final class CleanTriangles {

  private final TriMesh mesh;
  private final EdgeTable edges;
  private final Sets copies;
  private final int[] members;
  private final int[] net;

  private CleanTriangles(TriMesh mesh) {
    this.mesh = mesh;
    this.edges = new EdgeTable(mesh.tri(), mesh.vertexCount());
    this.copies = new Sets(mesh.triangleCount());
    this.members = new int[mesh.triangleCount()];
    this.net = new int[mesh.triangleCount()];
  }

  static void apply(Draft draft) {
    degenerate(draft);
    duplicate(draft);
  }

  static void degenerate(Draft draft) {
    TriMesh mesh = draft.mesh();
    int[] tri = mesh.tri();
    boolean[] kept = new boolean[mesh.triangleCount()];
    int dropped = 0;
    for (int f = 0; f < kept.length; f++) {
      int a = tri[3 * f];
      int b = tri[3 * f + 1];
      int c = tri[3 * f + 2];
      kept[f] = a != b && b != c && c != a;
      dropped += kept[f] ? 0 : 1;
    }
    if (dropped > 0) {
      String words =
          Draft.many(dropped, "triangle", "triangles") + " with two corners in one place dropped";
      draft.replace(Draft.keep(mesh, kept), new HealingStep("drop-degenerate", words, dropped, 0));
    }
  }

  private static void duplicate(Draft draft) {
    CleanTriangles work = new CleanTriangles(draft.mesh());
    if (work.findCopies() == 0) {
      return;
    }
    boolean[] kept = work.choose();
    int dropped = 0;
    for (boolean k : kept) {
      dropped += k ? 0 : 1;
    }
    String words = Draft.many(dropped, "duplicate triangle", "duplicate triangles") + " dropped";
    draft.replace(
        Draft.keep(work.mesh, kept), new HealingStep("drop-duplicate", words, dropped, 0));
  }

  /** Unites triangles with the same three corners; returns how many are copies of another. */
  private int findCopies() {
    for (int e = 0; e < edges.count(); e++) {
      for (int i = 1; i < edges.size(e); i++) {
        int h = edges.half(e, i);
        for (int j = 0; j < i; j++) {
          int g = edges.half(e, j);
          if (edges.opposite(g) == edges.opposite(h)) {
            copies.unite(g / 3, h / 3);
          }
        }
      }
    }
    int found = 0;
    for (int f = 0; f < members.length; f++) {
      int r = copies.find(f);
      members[r]++;
      net[r] += sameWay(r, f) ? 1 : -1;
      found += r == f ? 0 : 1;
    }
    return found;
  }

  /** Whether two triangles on the same corners go round them the same way. */
  private boolean sameWay(int f, int g) {
    int[] tri = mesh.tri();
    int k = 0;
    while (tri[3 * g + k] != tri[3 * f]) {
      k++;
    }
    return tri[3 * g + (k + 1) % 3] == tri[3 * f + 1];
  }

  private boolean[] choose() {
    int[] vote = new int[members.length];
    Sets regions = new Sets(members.length);
    vote(regions, vote);
    boolean[] kept = new boolean[members.length];
    boolean[] done = new boolean[members.length];
    for (int f = 0; f < kept.length; f++) {
      int r = copies.find(f);
      boolean wanted = !balanced(r) || vote[regions.find(r)] >= 0;
      boolean rightWay = sameWay(r, f) == (net[r] >= 0);
      if (wanted && rightWay && !done[r]) {
        kept[f] = true;
        done[r] = true;
      }
    }
    return kept;
  }

  private boolean balanced(int root) {
    return members[root] > 1 && net[root] == 0;
  }

  /** Joins balanced copies that only border each other and counts who needs them. */
  private void vote(Sets regions, int[] vote) {
    int[][] ballots = new int[edges.count()][];
    for (int e = 0; e < edges.count(); e++) {
      if (!touchesBalanced(e)) {
        continue;
      }
      int[] roots = distinct(e);
      int even = 0;
      int firstEven = -1;
      for (int r : roots) {
        if (balanced(r)) {
          even++;
          firstEven = firstEven < 0 ? r : firstEven;
        }
      }
      if (even > 1 && even == roots.length) {
        for (int r : roots) {
          regions.unite(firstEven, r);
        }
      } else if (even > 0) {
        ballots[e] = roots;
      }
    }
    for (int[] roots : ballots) {
      if (roots != null) {
        int others = 0;
        for (int r : roots) {
          others += balanced(r) ? 0 : 1;
        }
        for (int r : roots) {
          if (balanced(r)) {
            vote[regions.find(r)] += others % 2 == 1 ? 1 : -1;
          }
        }
      }
    }
  }

  private boolean touchesBalanced(int e) {
    for (int i = 0; i < edges.size(e); i++) {
      if (balanced(copies.find(edges.half(e, i) / 3))) {
        return true;
      }
    }
    return false;
  }

  private int[] distinct(int e) {
    int[] roots = new int[edges.size(e)];
    for (int i = 0; i < roots.length; i++) {
      roots[i] = copies.find(edges.half(e, i) / 3);
    }
    return Arrays.stream(roots).sorted().distinct().toArray();
  }
}
