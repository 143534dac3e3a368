package org.castwright.seams;

import org.castwright.progress.Progress;

/**
 * Alpha-expansion of cell labels that never leaves the removal orders. In a move to piece a (a
 * variable is yes where its cell switches) three things keep the order valid, all of the form "yes
 * needs yes", so each move is a minimum cut and is solved exactly:
 *
 * <ul>
 *   <li>a cell that may not leave along pull a does not switch;
 *   <li>if a cell switches, every cell ahead along pull a with a label above a switches;
 *   <li>if a cell switches and lies ahead along pull j of a cell with label j below a, then that
 *       cell switches too, for else a piece that leaves earlier would meet a later one.
 * </ul>
 *
 * One running variable for each cell and direction carries "some cell on this line switches", so
 * the graph grows with pieces times cells, not with the lengths of the lines.
 */
public final class OrderedLabels {

  private final CellProblem problem;
  private byte[] label;
  private long energy;

  private OrderedLabels(CellProblem problem, byte[] start) {
    this.problem = problem;
    label = start.clone();
    energy = problem.energy(label);
  }

  /**
   * Improves a removal order until no move to one piece helps.
   *
   * @throws IllegalArgumentException if the start is not a removal order
   */
  public static byte[] run(CellProblem problem, byte[] start, Progress progress) {
    if (!problem.comesApart(start)) {
      throw new IllegalArgumentException("the labelling to start from is not a removal order");
    }
    OrderedLabels run = new OrderedLabels(problem, start);
    int quiet = 0;
    for (int move = 0; quiet < problem.pieces; move++) {
      progress.at("labels of space", 1 - 1.0 / (1 + move));
      quiet = run.accept(run.expand((byte) (move % problem.pieces))) ? 0 : quiet + 1;
    }
    return run.label;
  }

  /** The best single move to piece a from a removal order. */
  static byte[] expanded(CellProblem problem, byte[] start, int a) {
    return new OrderedLabels(problem, start).expand((byte) a);
  }

  private boolean accept(byte[] moved) {
    long after = problem.energy(moved);
    if (after >= energy) {
      return false;
    }
    label = moved;
    energy = after;
    return true;
  }

  private byte[] expand(byte a) {
    int n = problem.cells();
    BinaryMove move = new BinaryMove((2 + a) * n, problem.from.length + (4 + 3 * a) * n);
    for (int c = 0; c < n; c++) {
      if (problem.open(c)) {
        site(move, c, a);
      }
    }
    pairs(move, a);
    ahead(move, a);
    for (int j = 0; j < a; j++) {
      behind(move, j, (2 + j) * n);
    }
    move.minimize();
    byte[] moved = label.clone();
    for (int c = 0; c < n; c++) {
      if (problem.open(c) && move.yes(c)) {
        moved[c] = a;
      }
    }
    return moved;
  }

  private void site(BinaryMove move, int c, byte a) {
    int k = problem.pieces;
    boolean may = label[c] != a && (problem.allowed[c] >> a & 1) == 1;
    move.unary(
        c, problem.unary[c * k + label[c]], may ? problem.unary[c * k + a] : MaxFlow.INFINITE);
  }

  private void pairs(BinaryMove move, byte a) {
    for (int e = 0; e < problem.from.length; e++) {
      int u = problem.from[e];
      int v = problem.to[e];
      if (!problem.open(u) || !problem.open(v)) {
        continue;
      }
      long w = problem.weight[e];
      if (label[u] != label[v]) {
        move.pair(u, v, w, label[u] == a ? 0 : w, label[v] == a ? 0 : w, 0);
      } else if (label[u] != a) {
        move.differ(u, v, w);
      }
    }
  }

  /** Running variable n + c: some cell at c or behind it along pull a switches. */
  private void ahead(BinaryMove move, byte a) {
    int n = problem.cells();
    for (int c = 0; c < n; c++) {
      int y = problem.next[a][c];
      if (y != Grid.OUTSIDE) {
        move.implies(n + c, n + y);
      }
      if (problem.open(c)) {
        move.implies(c, n + c);
        if (label[c] > a) {
          move.implies(n + c, c);
        }
      }
    }
  }

  /** Running variable first + c: some cell ahead of c along pull j switches. */
  private void behind(BinaryMove move, int j, int first) {
    for (int c = 0; c < problem.cells(); c++) {
      int y = problem.next[j][c];
      if (y == Grid.OUTSIDE) {
        continue;
      }
      move.implies(first + y, first + c);
      if (problem.open(y)) {
        move.implies(y, first + c);
      }
      if (problem.open(c) && label[c] == j) {
        move.implies(first + c, c);
      }
    }
  }
}
