package org.castwright.seams;

import java.util.Arrays;

/**
 * Maximum flow and minimum cut between two terminals by two growing search trees (Boykov,
 * Kolmogorov, "An experimental comparison of min-cut/max-flow algorithms for energy minimization in
 * vision", PAMI 26(9), 2004). Capacities are whole numbers, so the answer does not depend on
 * rounding; among minimum cuts it takes the one with the fewest nodes on the source side.
 */
final class MaxFlow {

  /**
   * A capacity no finite cut reaches: 2^50 leaves room for a thousand of them in a sum of longs.
   */
  static final long INFINITE = 1L << 50;

  private static final int FREE = -1;
  private static final int TERMINAL = -2;
  private static final int ORPHAN = -3;

  private final int[] first;
  private final long[] terminal;
  private int[] to;
  private int[] next;
  private long[] residual;
  private int arcs;
  private long flow;

  // for a node in a tree: the arc to its parent, or TERMINAL or ORPHAN; FREE outside the trees
  private final int[] parent;
  private final boolean[] sink;
  private final int[] checked;
  private final int[] depth;
  private int time;

  private final IntQueue active;
  private final boolean[] queued;
  private final IntQueue orphans;

  /**
   * @param nodes besides the terminals
   * @param pairs expected calls of {@link #arc}
   */
  MaxFlow(int nodes, int pairs) {
    first = new int[nodes];
    Arrays.fill(first, -1);
    terminal = new long[nodes];
    to = new int[Math.max(8, 2 * pairs)];
    next = new int[to.length];
    residual = new long[to.length];
    parent = new int[nodes];
    sink = new boolean[nodes];
    checked = new int[nodes];
    depth = new int[nodes];
    active = new IntQueue(nodes);
    queued = new boolean[nodes];
    orphans = new IntQueue(nodes);
  }

  /** Adds capacity from the source to a node and from the node to the sink, both zero or above. */
  void terminals(int node, long fromSource, long toSink) {
    long a = fromSource + Math.max(0, terminal[node]);
    long b = toSink + Math.max(0, -terminal[node]);
    flow += Math.min(a, b);
    terminal[node] = a - b;
  }

  /** Adds capacity between two nodes, each way, both zero or above. */
  void arc(int u, int v, long forward, long backward) {
    if (arcs + 2 > to.length) {
      to = Arrays.copyOf(to, 2 * to.length);
      next = Arrays.copyOf(next, to.length);
      residual = Arrays.copyOf(residual, to.length);
    }
    half(u, v, forward);
    half(v, u, backward);
  }

  private void half(int u, int v, long capacity) {
    to[arcs] = v;
    next[arcs] = first[u];
    residual[arcs] = capacity;
    first[u] = arcs++;
  }

  /** Finds the maximum flow; call once, after all capacities are in. */
  long run() {
    for (int v = 0; v < first.length; v++) {
      parent[v] = terminal[v] == 0 ? FREE : TERMINAL;
      sink[v] = terminal[v] < 0;
      depth[v] = 1;
      if (terminal[v] != 0) {
        activate(v);
      }
    }
    int current = -1;
    while (true) {
      if (current < 0 || parent[current] == FREE) {
        current = nextActive();
        if (current < 0) {
          return flow;
        }
      }
      int meeting = grow(current);
      time++;
      if (meeting < 0) {
        current = -1;
      } else {
        augment(meeting);
        adopt();
      }
    }
  }

  /** Whether a node is on the source side of the minimum cut. */
  boolean sourceSide(int node) {
    return parent[node] != FREE && !sink[node];
  }

  private void activate(int v) {
    if (!queued[v]) {
      queued[v] = true;
      active.add(v);
    }
  }

  private int nextActive() {
    while (!active.isEmpty()) {
      int v = active.take();
      queued[v] = false;
      if (parent[v] != FREE) {
        return v;
      }
    }
    return -1;
  }

  /** Capacity left for flow away from the source when {@code arc} is seen from a node's tree. */
  private long outward(int arc, boolean inSinkTree) {
    return residual[inSinkTree ? arc ^ 1 : arc];
  }

  /** Takes free neighbors into the tree; returns an arc from source tree to sink tree, or -1. */
  private int grow(int v) {
    boolean s = sink[v];
    for (int a = first[v]; a >= 0; a = next[a]) {
      if (outward(a, s) == 0) {
        continue;
      }
      int w = to[a];
      if (parent[w] == FREE) {
        sink[w] = s;
        parent[w] = a ^ 1;
        checked[w] = checked[v];
        depth[w] = depth[v] + 1;
        activate(w);
      } else if (sink[w] != s) {
        return s ? a ^ 1 : a;
      } else if (checked[w] <= checked[v] && depth[w] > depth[v]) {
        parent[w] = a ^ 1;
        checked[w] = checked[v];
        depth[w] = depth[v] + 1;
      }
    }
    return -1;
  }

  private void augment(int middle) {
    long most = Math.min(residual[middle], Math.min(room(to[middle ^ 1]), room(to[middle])));
    residual[middle] -= most;
    residual[middle ^ 1] += most;
    push(to[middle ^ 1], most);
    push(to[middle], most);
    flow += most;
  }

  private long room(int from) {
    long most = Long.MAX_VALUE;
    int v = from;
    while (parent[v] != TERMINAL) {
      int a = parent[v];
      most = Math.min(most, residual[sink[v] ? a : a ^ 1]);
      v = to[a];
    }
    return Math.min(most, Math.abs(terminal[v]));
  }

  private void push(int from, long amount) {
    int v = from;
    while (parent[v] != TERMINAL) {
      int a = parent[v];
      int used = sink[v] ? a : a ^ 1;
      residual[used] -= amount;
      residual[used ^ 1] += amount;
      int up = to[a];
      if (residual[used] == 0) {
        orphan(v);
      }
      v = up;
    }
    terminal[v] += sink[v] ? amount : -amount;
    if (terminal[v] == 0) {
      orphan(v);
    }
  }

  private void orphan(int v) {
    parent[v] = ORPHAN;
    orphans.add(v);
  }

  private void adopt() {
    while (!orphans.isEmpty()) {
      int v = orphans.take();
      int best = -1;
      int bestDepth = Integer.MAX_VALUE;
      for (int a = first[v]; a >= 0; a = next[a]) {
        int w = to[a];
        if (residual[sink[v] ? a : a ^ 1] > 0 && parent[w] != FREE && sink[w] == sink[v]) {
          int d = rootDepth(w);
          if (d < bestDepth) {
            bestDepth = d;
            best = a;
          }
        }
      }
      if (best >= 0) {
        parent[v] = best;
        checked[v] = time;
        depth[v] = bestDepth + 1;
      } else {
        release(v);
      }
    }
  }

  /** Arcs from a node to its terminal, or MAX_VALUE if its tree path is cut. */
  private int rootDepth(int from) {
    int steps = 0;
    int v = from;
    while (true) {
      if (checked[v] == time) {
        steps += depth[v];
        break;
      }
      int a = parent[v];
      if (a == TERMINAL) {
        checked[v] = time;
        depth[v] = 1;
        steps++;
        break;
      }
      if (a == ORPHAN || a == FREE) {
        return Integer.MAX_VALUE;
      }
      steps++;
      v = to[a];
    }
    int d = steps;
    for (v = from; checked[v] != time; v = to[parent[v]]) {
      checked[v] = time;
      depth[v] = d--;
    }
    return steps;
  }

  private void release(int v) {
    for (int a = first[v]; a >= 0; a = next[a]) {
      int w = to[a];
      if (parent[w] == FREE || sink[w] != sink[v]) {
        continue;
      }
      if (residual[sink[v] ? a : a ^ 1] > 0) {
        activate(w);
      }
      if (parent[w] >= 0 && to[parent[w]] == v) {
        orphan(w);
      }
    }
    parent[v] = FREE;
  }
}
