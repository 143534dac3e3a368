package org.castwright.seams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Against all labellings and all moves, tried one by one. */
class AlphaExpansionTest {

  private static PottsProblem random(SplittableRandom random, boolean costs) {
    int n = random.nextInt(2, 8);
    int k = random.nextInt(2, 4);
    int m = random.nextInt(1, 12);
    long[] unary = new long[n * k];
    for (int i = 0; i < unary.length; i++) {
      unary[i] = random.nextInt(6) == 0 ? MaxFlow.INFINITE : random.nextInt(20);
    }
    for (int s = 0; s < n; s++) {
      unary[s * k + random.nextInt(k)] = random.nextInt(20);
    }
    int[] from = new int[m];
    int[] to = new int[m];
    long[] weight = new long[m];
    for (int e = 0; e < m; e++) {
      from[e] = random.nextInt(n);
      to[e] = (from[e] + random.nextInt(1, n)) % n;
      weight[e] = random.nextInt(15);
    }
    long[] labelCost = new long[k];
    for (int l = 0; l < k; l++) {
      labelCost[l] = costs ? random.nextInt(30) : 0;
    }
    return new PottsProblem(k, unary, from, to, weight, labelCost);
  }

  private static byte[] cheapest(PottsProblem p) {
    byte[] label = new byte[p.sites()];
    for (int s = 0; s < label.length; s++) {
      for (byte l = 1; l < p.labels; l++) {
        if (p.unary[s * p.labels + l] < p.unary[s * p.labels + label[s]]) {
          label[s] = l;
        }
      }
    }
    return label;
  }

  private static long bestMove(PottsProblem p, byte[] label) {
    long best = p.energy(label);
    for (byte a = 0; a < p.labels; a++) {
      for (int set = 0; set < 1 << label.length; set++) {
        byte[] moved = label.clone();
        for (int s = 0; s < label.length; s++) {
          moved[s] = (set >> s & 1) == 1 ? a : moved[s];
        }
        best = Math.min(best, p.energy(moved));
      }
    }
    return best;
  }

  private static long optimum(PottsProblem p) {
    long best = Long.MAX_VALUE;
    int all = (int) Math.round(Math.pow(p.labels, p.sites()));
    byte[] label = new byte[p.sites()];
    for (int code = 0; code < all; code++) {
      int c = code;
      for (int s = 0; s < label.length; s++) {
        label[s] = (byte) (c % p.labels);
        c /= p.labels;
      }
      best = Math.min(best, p.energy(label));
    }
    return best;
  }

  @Test
  void endsWhereNoMoveHelps() {
    SplittableRandom random = new SplittableRandom(41);
    for (int i = 0; i < 600; i++) {
      PottsProblem p = random(random, i % 2 == 1);
      byte[] start = cheapest(p);
      byte[] end = AlphaExpansion.run(p, start, r -> {});
      assertTrue(p.energy(end) <= p.energy(start));
      assertEquals(bestMove(p, end), p.energy(end), "problem " + i);
    }
  }

  @Test
  void isNeverTwiceAsDearAsTheBestAndMostlyTheBest() {
    // factor 2 for Potts terms: Boykov, Veksler, Zabih 2001, theorem 6.1
    SplittableRandom random = new SplittableRandom(42);
    int exact = 0;
    for (int i = 0; i < 400; i++) {
      PottsProblem p = random(random, false);
      long best = optimum(p);
      long found = p.energy(AlphaExpansion.run(p, cheapest(p), r -> {}));
      assertTrue(found <= 2 * best, "problem " + i);
      exact += found == best ? 1 : 0;
    }
    assertTrue(exact > 360, exact + " of 400");
  }
}
