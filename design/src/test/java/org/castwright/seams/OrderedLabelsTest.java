package org.castwright.seams;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.castwright.geom.Vec3;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

/** Against brute force on tiny grids: all moves tried, all removals acted out step by step. */
class OrderedLabelsTest {

  private static final class Trial {
    final CellProblem problem;
    final boolean[] solid;

    Trial(CellProblem problem, boolean[] solid) {
      this.problem = problem;
      this.solid = solid;
    }
  }

  private static Vec3 direction(SplittableRandom random) {
    while (true) {
      Vec3 d =
          new Vec3(random.nextDouble() - 0.5, random.nextDouble() - 0.5, random.nextDouble() - 0.5);
      if (d.length() > 0.1) {
        return random.nextInt(3) == 0 ? axis(random.nextInt(6)) : d.unit();
      }
    }
  }

  private static Vec3 axis(int i) {
    Vec3 d = i / 2 == 0 ? Vec3.X : i / 2 == 1 ? Vec3.Y : Vec3.Z;
    return i % 2 == 0 ? d : d.negate();
  }

  /** A random casting in a tiny grid; cells no pull frees are made casting until none is left. */
  private static Trial trial(SplittableRandom random) {
    Grid grid = new Grid(random.nextInt(1, 4), random.nextInt(1, 4), random.nextInt(1, 3));
    int n = grid.cells();
    int k = random.nextInt(2, 4);
    int[][] next = new int[k][];
    for (int i = 0; i < k; i++) {
      next[i] = grid.next(direction(random));
    }
    boolean[] solid = new boolean[n];
    for (int c = 0; c < n; c++) {
      solid[c] = random.nextInt(5) == 0;
    }
    int[] allowed = new int[n];
    boolean changed = true;
    while (changed) {
      changed = false;
      for (int c = 0; c < n; c++) {
        allowed[c] = solid[c] ? 0 : seen(solid, next, c);
        if (!solid[c] && allowed[c] == 0) {
          solid[c] = true;
          changed = true;
        }
      }
    }
    for (int c = 0; c < n; c++) {
      allowed[c] = solid[c] ? 0 : seen(solid, next, c);
    }
    long[] unary = new long[n * k];
    for (int i = 0; i < unary.length; i++) {
      unary[i] = random.nextInt(12);
    }
    int[] from = new int[2 * n];
    int[] to = new int[2 * n];
    long[] weight = new long[2 * n];
    for (int e = 0; e < from.length; e++) {
      from[e] = random.nextInt(n);
      to[e] = random.nextInt(n);
      weight[e] = from[e] == to[e] ? 0 : random.nextInt(6);
    }
    return new Trial(new CellProblem(next, allowed, unary, from, to, weight), solid);
  }

  private static int seen(boolean[] solid, int[][] next, int c) {
    int mask = 0;
    for (int i = 0; i < next.length; i++) {
      int y = next[i][c];
      while (y != Grid.OUTSIDE && !solid[y]) {
        y = next[i][y];
      }
      mask |= y == Grid.OUTSIDE ? 1 << i : 0;
    }
    return mask;
  }

  /** Acts the removal out: piece by piece, one cell at a time, looking for anything in the way. */
  private static boolean actedOut(Trial t, byte[] label) {
    int n = label.length;
    boolean[] left = new boolean[n];
    for (int i = 0; i < t.problem.pieces; i++) {
      int[] at = new int[n];
      for (int c = 0; c < n; c++) {
        at[c] = !t.solid[c] && label[c] == i ? c : Grid.OUTSIDE;
      }
      for (int step = 0; step < n + 1; step++) {
        for (int c = 0; c < n; c++) {
          if (at[c] == Grid.OUTSIDE) {
            continue;
          }
          at[c] = t.problem.next[i][at[c]];
          if (at[c] != Grid.OUTSIDE) {
            boolean same = !t.solid[at[c]] && label[at[c]] == i;
            if (t.solid[at[c]] || (!same && !left[at[c]])) {
              return false;
            }
          }
        }
      }
      for (int c = 0; c < n; c++) {
        left[c] |= !t.solid[c] && label[c] == i;
      }
    }
    return true;
  }

  private static byte[] random(SplittableRandom random, Trial t) {
    byte[] label = new byte[t.problem.cells()];
    for (int c = 0; c < label.length; c++) {
      label[c] = (byte) (t.solid[c] ? 0 : random.nextInt(t.problem.pieces));
    }
    return label;
  }

  @Test
  void theRuleSaysWhatActingOutSays() {
    SplittableRandom random = new SplittableRandom(71);
    int valid = 0;
    for (int i = 0; i < 30_000; i++) {
      Trial t = trial(random);
      byte[] label = i % 3 == 0 ? t.problem.firstThatMay() : random(random, t);
      if (i % 3 == 1) {
        // one cell away from a valid one: near the border of the rule
        int c = random.nextInt(label.length);
        byte other = label[c];
        label = t.problem.firstThatMay();
        label[c] = t.solid[c] ? 0 : other;
      }
      boolean apart = t.problem.comesApart(label);
      assertEquals(actedOut(t, label), apart, "trial " + i);
      valid += apart ? 1 : 0;
    }
    assertTrue(valid > 10_000 && valid < 29_000, valid + " of 30000 come apart");
  }

  @Test
  void theFirstThatMayIsARemovalOrder() {
    // the greedy partition of the cover theorem
    SplittableRandom random = new SplittableRandom(72);
    for (int i = 0; i < 2000; i++) {
      Trial t = trial(random);
      assertTrue(t.problem.comesApart(t.problem.firstThatMay()));
    }
  }

  private static long bruteForce(CellProblem p, byte[] label, byte a) {
    int[] free = new int[label.length];
    int n = 0;
    for (int c = 0; c < label.length; c++) {
      if (p.open(c) && label[c] != a && (p.allowed[c] >> a & 1) == 1) {
        free[n++] = c;
      }
    }
    long best = Long.MAX_VALUE;
    for (int set = 0; set < 1 << n; set++) {
      byte[] moved = label.clone();
      for (int i = 0; i < n; i++) {
        if ((set >> i & 1) == 1) {
          moved[free[i]] = a;
        }
      }
      if (p.comesApart(moved)) {
        best = Math.min(best, p.energy(moved));
      }
    }
    return best;
  }

  @Test
  void everyMoveIsTheBestMove() {
    SplittableRandom random = new SplittableRandom(73);
    int moved = 0;
    for (int i = 0; i < 2500; i++) {
      Trial t = trial(random);
      if (t.problem.cells() > 12) {
        continue;
      }
      byte[] label = t.problem.firstThatMay();
      for (int m = 0; m < 4; m++) {
        byte a = (byte) random.nextInt(t.problem.pieces);
        byte[] after = OrderedLabels.expanded(t.problem, label, a);
        assertTrue(t.problem.comesApart(after), "trial " + i);
        assertEquals(bruteForce(t.problem, label, a), t.problem.energy(after), "trial " + i);
        moved += t.problem.energy(after) < t.problem.energy(label) ? 1 : 0;
        label = after;
      }
    }
    assertTrue(moved > 1000, moved + " moves");
  }

  @Test
  void theEndComesApartAndIsNoDearer() {
    SplittableRandom random = new SplittableRandom(74);
    for (int i = 0; i < 1000; i++) {
      Trial t = trial(random);
      byte[] start = t.problem.firstThatMay();
      byte[] end = OrderedLabels.run(t.problem, start, Progress.NONE);
      assertTrue(actedOut(t, end), "trial " + i);
      assertTrue(t.problem.energy(end) <= t.problem.energy(start));
      assertArrayEquals(end, OrderedLabels.run(t.problem, start, Progress.NONE));
    }
  }

  @Test
  void linesOfCellsStayWithinHalfACellOfStraight() {
    // by construction of the shear: rounding moves a line sideways by at most half a cell
    SplittableRandom random = new SplittableRandom(75);
    Grid grid = new Grid(17, 19, 23);
    for (int trial = 0; trial < 60; trial++) {
      Vec3 d = direction(random);
      int[] next = grid.next(d);
      boolean[] taken = new boolean[grid.cells()];
      double most = Math.max(Math.abs(d.x()), Math.max(Math.abs(d.y()), Math.abs(d.z())));
      for (int c = 0; c < next.length; c++) {
        if (next[c] != Grid.OUTSIDE) {
          assertFalse(taken[next[c]]);
          taken[next[c]] = true;
        }
      }
      int start = random.nextInt(grid.cells());
      int steps = 0;
      for (int c = start; c != Grid.OUTSIDE; c = next[c]) {
        Vec3 went = place(grid, c).minus(place(grid, start));
        Vec3 ideal = d.times(steps++ / most);
        // half a cell at each end of the line
        assertTrue(Math.abs(went.x() - ideal.x()) <= 1 + 1e-9, "x");
        assertTrue(Math.abs(went.y() - ideal.y()) <= 1 + 1e-9, "y");
        assertTrue(Math.abs(went.z() - ideal.z()) <= 1 + 1e-9, "z");
      }
    }
  }

  private static Vec3 place(Grid g, int c) {
    int row = c / g.nx();
    int slice = row / g.ny();
    return new Vec3(c % g.nx(), row % g.ny(), slice);
  }

  @Test
  void freeCellsHaveNothingAhead() {
    SplittableRandom random = new SplittableRandom(76);
    for (int i = 0; i < 500; i++) {
      Grid grid = new Grid(5, 4, 3);
      int[][] next = {grid.next(direction(random))};
      boolean[] solid = new boolean[grid.cells()];
      for (int c = 0; c < solid.length; c++) {
        solid[c] = random.nextInt(4) == 0;
      }
      boolean[] free = Grid.free(solid, next[0]);
      for (int c = 0; c < solid.length; c++) {
        assertEquals(seen(solid, next, c) == 1, free[c]);
      }
    }
  }

  @Test
  void pairsAreTheCellsAtDistanceOne() {
    Grid g = new Grid(4, 3, 5);
    int[][] pairs = g.pairs();
    int next = 0;
    for (int c = 0; c < g.cells(); c++) {
      for (int d = c + 1; d < g.cells(); d++) {
        next += place(g, c).minus(place(g, d)).length() == 1 ? 1 : 0;
      }
    }
    assertEquals(next, pairs[0].length);
    for (int e = 0; e < next; e++) {
      assertEquals(1, place(g, pairs[0][e]).minus(place(g, pairs[1][e])).length());
    }
  }
}
