package org.castwright.cover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The exact search against all subsets of the columns, on random instances. */
class ExactCoverTest {

  private static final long SEED = 1971;

  private final SplittableRandom random = new SplittableRandom(SEED);

  /** Random items, their weights whole numbers so that sums are exact. */
  private final class Instance {
    final int items = 1 + random.nextInt(60);
    final int columns = 2 + random.nextInt(9);
    final long[][] covers = new long[columns][FreeBits.words(items)];
    final double[] area = new double[items];
    final double[] volume = new double[items];
    final double areaBudget = random.nextInt(3) == 0 ? 0.5 : random.nextInt(20) + 0.5;
    final double volumeBudget = random.nextInt(3) == 0 ? 0.5 : random.nextInt(20) + 0.5;

    Instance() {
      double density = 0.1 + 0.6 * random.nextDouble();
      for (int i = 0; i < items; i++) {
        boolean isFacet = random.nextInt(2) == 0;
        (isFacet ? area : volume)[i] = 1 + random.nextInt(6);
        FreeBits.set(covers[random.nextInt(columns)], i);
        for (int j = 0; j < columns; j++) {
          if (random.nextDouble() < density) {
            FreeBits.set(covers[j], i);
          }
        }
      }
    }

    boolean within(int set) {
      double a = 0;
      double v = 0;
      for (int i = 0; i < items; i++) {
        boolean covered = false;
        for (int j = 0; j < columns; j++) {
          covered |= (set >> j & 1) != 0 && FreeBits.get(covers[j], i);
        }
        a += covered ? 0 : area[i];
        v += covered ? 0 : volume[i];
      }
      return a <= areaBudget && v <= volumeBudget;
    }

    /** All sets of so many columns, those of {@code must} among them, within the budgets. */
    Set<String> all(int size, int must) {
      Set<String> out = new TreeSet<>();
      for (int set = 0; set < 1 << columns; set++) {
        if (Integer.bitCount(set) == size && (set & must) == must && within(set)) {
          out.add(name(set));
        }
      }
      return out;
    }

    ExactCover exact(int[] fixed) {
      CoverTable table = CoverTable.of(covers, area, volume);
      return new ExactCover(table, areaBudget, volumeBudget, fixed, 1_000_000);
    }
  }

  private static String name(int set) {
    StringBuilder out = new StringBuilder();
    for (int j = 0; j < 32; j++) {
      out.append((set >> j & 1) != 0 ? j + " " : "");
    }
    return out.toString();
  }

  private static Set<String> names(List<int[]> sets) {
    Set<String> out = new TreeSet<>();
    for (int[] set : sets) {
      out.add(name(Arrays.stream(set).map(j -> 1 << j).sum()));
    }
    return out;
  }

  private void compare(Instance one, int[] fixed, String what) {
    int must = Arrays.stream(fixed).map(j -> 1 << j).sum();
    if (one.within(must)) {
      // nothing is to be chosen
      assertEquals(Set.of(name(must)), names(one.exact(fixed).search(fixed.length, 9).sets()));
      return;
    }
    ExactCover exact = one.exact(fixed);
    for (int k = Math.max(1, fixed.length); k <= one.columns; k++) {
      ExactCover.Outcome outcome = exact.search(k, Integer.MAX_VALUE);
      assertTrue(outcome.complete(), what);
      assertEquals(one.all(k, must), names(outcome.sets()), what + " columns " + k);
      if (!outcome.sets().isEmpty()) {
        return;
      }
    }
  }

  @Test
  void findsAllLeastSetsAndNoSmallerOne() {
    for (int trial = 0; trial < 3000; trial++) {
      compare(new Instance(), new int[0], "seed " + SEED + " trial " + trial);
    }
  }

  @Test
  void keepsFixedColumns() {
    for (int trial = 0; trial < 500; trial++) {
      Instance one = new Instance();
      compare(one, new int[] {random.nextInt(one.columns)}, "seed " + SEED + " trial " + trial);
    }
  }

  @Test
  void saysWhenItGaveUp() {
    // 40 items, each covered by its own column only: no set of 20 does, and there are very many
    long[][] covers = new long[40][1];
    double[] ones = new double[40];
    for (int j = 0; j < 40; j++) {
      covers[j][0] = 1L << j;
      ones[j] = 1;
    }
    CoverTable table = CoverTable.of(covers, ones, new double[40]);
    // a budget of 19.5 lets any 21 pass; 20 leave 20
    ExactCover exact = new ExactCover(table, 19.5, 0, new int[0], 50);
    ExactCover.Outcome outcome = exact.search(20, 1);
    assertFalse(outcome.complete());
    assertTrue(outcome.sets().isEmpty());
  }

  @Test
  void theFractionalBoundNeverExceedsTheLeastNumber() {
    int tight = 0;
    for (int trial = 0; trial < 2000; trial++) {
      int columns = 2 + random.nextInt(9);
      Demands demands = new Demands(columns);
      int[] masks = new int[1 + random.nextInt(12)];
      for (int i = 0; i < masks.length; i++) {
        masks[i] = 1 + random.nextInt((1 << columns) - 1);
        demands.add(new long[] {masks[i]});
      }
      int least = columns;
      for (int set = 0; set < 1 << columns; set++) {
        boolean all = true;
        for (int m : masks) {
          all &= (m & set) != 0;
        }
        least = all ? Math.min(least, Integer.bitCount(set)) : least;
      }
      int bound = FractionalPacking.bound(demands);
      assertTrue(bound <= least, "seed " + SEED + " trial " + trial);
      tight += bound == least ? 1 : 0;
    }
    assertTrue(tight > 1500, "tight in " + tight);
  }

  @Test
  void equalRowsAreOneAndEmptyOnesNone() {
    long[][] covers = {{0b0011}, {0b0111}};
    CoverTable table = CoverTable.of(covers, new double[] {1, 2, 4, 8}, new double[4]);
    assertEquals(2, table.rows());
    assertEquals(3, table.area(0));
    assertEquals(4, table.area(1));
    assertTrue(table.covered(1, table.set(new int[] {1})));
    assertFalse(table.covered(1, table.set(new int[] {0})));
  }
}
