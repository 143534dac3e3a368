package org.castwright.seams;

import java.util.function.IntConsumer;

/**
 * Labels by moves in which any set of sites may switch to one label, each move a minimum cut
 * (Boykov, Veksler, Zabih, "Fast approximate energy minimization via graph cuts", PAMI 23(11),
 * 2001), with costs of labels in use (Delong, Osokin, Isack, Boykov, "Fast approximate energy
 * minimization with label costs", IJCV 96, 2012). The energy never rises, and at the end no single
 * move lowers it.
 */
final class AlphaExpansion {

  private final PottsProblem problem;
  private byte[] label;
  private long energy;

  private AlphaExpansion(PottsProblem problem, byte[] start) {
    this.problem = problem;
    label = start.clone();
    energy = problem.energy(label);
  }

  /**
   * Improves a labelling until no move helps.
   *
   * @param start a labelling of finite energy
   * @param round told the number of each round of moves as it begins
   */
  static byte[] run(PottsProblem problem, byte[] start, IntConsumer round) {
    AlphaExpansion run = new AlphaExpansion(problem, start);
    int quiet = 0;
    for (int move = 0; quiet < problem.labels; move++) {
      if (move % problem.labels == 0) {
        round.accept(move / problem.labels);
      }
      quiet = run.expand((byte) (move % problem.labels)) ? 0 : quiet + 1;
    }
    return run.label;
  }

  /** One move; keeps it and says so if it lowers the energy. */
  private boolean expand(byte a) {
    int n = problem.sites();
    int k = problem.labels;
    BinaryMove move = new BinaryMove(n + k, problem.from.length + n);
    long[] unary = problem.unary;
    for (int s = 0; s < n; s++) {
      boolean has = label[s] == a;
      move.unary(s, unary[s * k + label[s]], has ? MaxFlow.INFINITE : unary[s * k + a]);
    }
    edges(move, a);
    labels(move, a, n);
    move.minimize();
    byte[] moved = label.clone();
    for (int s = 0; s < n; s++) {
      if (move.yes(s)) {
        moved[s] = a;
      }
    }
    long after = problem.energy(moved);
    if (after >= energy) {
      return false;
    }
    label = moved;
    energy = after;
    return true;
  }

  private void edges(BinaryMove move, byte a) {
    for (int e = 0; e < problem.from.length; e++) {
      int u = problem.from[e];
      int v = problem.to[e];
      long w = problem.weight[e];
      if (label[u] == label[v]) {
        if (label[u] != a) {
          move.differ(u, v, w);
        }
      } else {
        move.pair(u, v, w, label[u] == a ? 0 : w, label[v] == a ? 0 : w, 0);
      }
    }
  }

  /** A label's cost is saved when all its sites switch: its own variable is yes only then. */
  private void labels(BinaryMove move, byte a, int n) {
    int k = problem.labels;
    boolean[] used = new boolean[k];
    for (byte l : label) {
      used[l] = true;
    }
    for (int l = 0; l < k; l++) {
      if (l != a && used[l] && problem.labelCost[l] > 0) {
        move.unary(n + l, problem.labelCost[l], 0);
      } else {
        used[l] = false;
      }
    }
    for (int s = 0; s < n; s++) {
      if (used[label[s]]) {
        move.unlessFollowed(n + label[s], s, problem.labelCost[label[s]]);
      }
    }
  }
}
