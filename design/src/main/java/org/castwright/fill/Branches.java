package org.castwright.fill;

import java.util.Arrays;

/**
 * The bodies of air above a falling level, as sets of vertices that join. Each begins at a maximum
 * of the roof; when two meet, the one with the lower top ends in the other (the join tree of Carr,
 * Snoeyink and Axen, CGTA 24, 2003). A set that is closed and meets an open one is sealed there: no
 * air leaves it once the level stands higher.
 */
final class Branches {

  static final int NONE = -1;

  private final double[] height;
  private final int[] rank;
  private final int[] parent;
  private final boolean[] open;

  /** Of a root: the branch it stands for, and the last branch of its list. */
  private final int[] branch;

  private final int[] last;

  /** Bodies that meet so little above the level that seals them are shut in apart, mm. */
  private static final double TIE = 1e-9;

  /** Of each branch: its top vertex, how deep it reaches, the next in its list, its pocket. */
  private int[] top = new int[16];

  /** The branch it ends in; those of a body come before it in the body's list. */
  private int[] elderOf = new int[16];

  private double[] depth = new double[16];
  private int[] next = new int[16];
  private int[] pocket = new int[16];
  private int count;

  private double[] seal = new double[16];
  private int[] sealedTop = new int[16];
  private int pockets;

  Branches(double[] height, int[] rank) {
    this.height = height;
    this.rank = rank;
    int n = height.length;
    parent = new int[n];
    Arrays.fill(parent, NONE);
    open = new boolean[n];
    branch = new int[n];
    Arrays.fill(branch, NONE);
    last = new int[n];
  }

  boolean has(int vertex) {
    return parent[vertex] != NONE;
  }

  /** A vertex on its own, in no body yet. */
  void add(int vertex) {
    parent[vertex] = vertex;
  }

  /** A new body with its top at a vertex. */
  void begin(int vertex) {
    if (count == top.length) {
      top = Arrays.copyOf(top, 2 * count);
      elderOf = Arrays.copyOf(elderOf, 2 * count);
      depth = Arrays.copyOf(depth, 2 * count);
      next = Arrays.copyOf(next, 2 * count);
      pocket = Arrays.copyOf(pocket, 2 * count);
    }
    top[count] = vertex;
    elderOf[count] = NONE;
    depth[count] = Double.POSITIVE_INFINITY;
    next[count] = NONE;
    pocket[count] = NONE;
    branch[find(vertex)] = count;
    last[find(vertex)] = count;
    count++;
  }

  /** The bodies of two vertices meet at the height of a third. */
  void join(int a, int b, int at) {
    int x = find(a);
    int y = find(b);
    if (x == y) {
      return;
    }
    if (branch[x] == NONE || branch[y] == NONE) {
      int empty = branch[x] == NONE ? x : y;
      int full = empty == x ? y : x;
      boolean opened = open[x] || open[y];
      if (opened && !open[full]) {
        sealBody(full, height[at]);
      }
      parent[empty] = full;
      open[full] = opened;
      return;
    }
    if (open[x] != open[y]) {
      sealBody(open[x] ? y : x, height[at]);
    }
    int elder = rank[top[branch[x]]] < rank[top[branch[y]]] ? x : y;
    int younger = elder == x ? y : x;
    depth[branch[younger]] = height[top[branch[younger]]] - height[at];
    elderOf[branch[younger]] = branch[elder];
    parent[younger] = elder;
    open[elder] |= open[younger];
    next[last[elder]] = branch[younger];
    last[elder] = last[younger];
  }

  /** A vertex opens to the outside: what its body holds above is sealed if it was closed. */
  void open(int vertex) {
    int x = find(vertex);
    if (!open[x]) {
      if (branch[x] != NONE) {
        sealBody(x, height[vertex]);
      }
      open[x] = true;
    }
  }

  /** Seals every body that is still closed. */
  void sealRest(double level) {
    int branches = count;
    for (int b = 0; b < branches; b++) {
      int x = find(top[b]);
      if (branch[x] == b && !open[x]) {
        sealBody(x, level);
        open[x] = true;
      }
    }
  }

  private void sealBody(int root, double level) {
    for (int b = branch[root]; b != NONE; b = next[b]) {
      int elder = elderOf[b];
      boolean apart = elder == NONE || height[top[b]] - depth[b] <= level + TIE;
      pocket[b] = apart ? newPocket(top[b], level) : pocket[elder];
    }
  }

  private int newPocket(int at, double level) {
    if (pockets == seal.length) {
      seal = Arrays.copyOf(seal, 2 * pockets);
      sealedTop = Arrays.copyOf(sealedTop, 2 * pockets);
    }
    seal[pockets] = level;
    sealedTop[pockets] = at;
    return pockets++;
  }

  /** The branch that stands for a vertex's body now. */
  int branchOf(int vertex) {
    return branch[find(vertex)];
  }

  int count() {
    return count;
  }

  int top(int b) {
    return top[b];
  }

  /** How far the level falls from a branch's top until it ends, mm; infinite if never. */
  double depth(int b) {
    return depth[b];
  }

  /** The pocket a branch was sealed in, or {@link #NONE}. */
  int pocket(int b) {
    return pocket[b];
  }

  int pockets() {
    return pockets;
  }

  double seal(int p) {
    return seal[p];
  }

  int sealedTop(int p) {
    return sealedTop[p];
  }

  private int find(int v) {
    int x = v;
    while (parent[x] != x) {
      parent[x] = parent[parent[x]];
      x = parent[x];
    }
    return x;
  }
}
