package org.castwright.cover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Pieces that leave one after the other, each along one straight pull, exist exactly when the free
 * sets of the pulls cover the mold's space; so the least number of pieces is the least cover. Held
 * against every way there is to deal the empty cells of small blocks to pieces and take them out:
 * the exhaustive search knows nothing of free sets.
 */
class CoverTheoremTest {

  private static final long SEED = 15;
  private static final int[][] BLOCKS = {{3, 3, 3}, {4, 3, 2}, {3, 3, 2}, {5, 2, 2}};
  private static final int SHAPES = 8000;
  private static final int MOST_EMPTY = 9;
  private static final int IMPOSSIBLE = 99;

  /** A block of cells of which few are empty. */
  private static final class Block {
    private final int[] size;
    private final int[] number;
    private final int[] cells;
    // for each empty cell and direction: the empty cells ahead, and whether a solid one is
    private final int[][] ahead;
    private final boolean[][] stopped;

    Block(int[] size, int empty, SplittableRandom random) {
      this.size = size;
      number = new int[size[0] * size[1] * size[2]];
      Arrays.fill(number, -1);
      cells = new int[empty];
      for (int n = 0; n < empty; ) {
        int c = random.nextInt(number.length);
        if (number[c] < 0) {
          cells[n] = c;
          number[c] = n++;
        }
      }
      ahead = new int[empty][6];
      stopped = new boolean[empty][6];
      for (int i = 0; i < empty; i++) {
        for (int d = 0; d < 6; d++) {
          look(i, d);
        }
      }
    }

    private void look(int i, int d) {
      int c = cells[i];
      int[] at = {c % size[0], c / size[0] % size[1], c / (size[0] * size[1])};
      while (true) {
        at[d / 2] += d % 2 == 0 ? 1 : -1;
        if (at[d / 2] < 0 || at[d / 2] >= size[d / 2]) {
          return;
        }
        int o = number[(at[2] * size[1] + at[1]) * size[0] + at[0]];
        stopped[i][d] |= o < 0;
        ahead[i][d] |= o < 0 ? 0 : 1 << o;
      }
    }

    /** Whether the cells of a piece leave along a direction past the rest of what is there. */
    private boolean leaves(int piece, int there, int d) {
      for (int b = piece; b != 0; b &= b - 1) {
        int i = Integer.numberOfTrailingZeros(b);
        if (stopped[i][d] || (ahead[i][d] & there & ~piece) != 0) {
          return false;
        }
      }
      return true;
    }

    /** The fewest pieces by trying every piece in every direction at every stage. */
    int fewestPieces() {
      int all = (1 << cells.length) - 1;
      int[] least = new int[all + 1];
      for (int there = 1; there <= all; there++) {
        least[there] = IMPOSSIBLE;
        for (int piece = there; piece != 0; piece = piece - 1 & there) {
          for (int d = 0; d < 6 && least[there ^ piece] + 1 < least[there]; d++) {
            if (leaves(piece, there, d)) {
              least[there] = least[there ^ piece] + 1;
            }
          }
        }
      }
      return least[all];
    }

    /** The least number of free sets that cover all cells. */
    int leastCover() {
      long[][] free = new long[6][1];
      for (int i = 0; i < cells.length; i++) {
        boolean any = false;
        for (int d = 0; d < 6; d++) {
          if (!stopped[i][d]) {
            FreeBits.set(free[d], i);
            any = true;
          }
        }
        if (!any) {
          return IMPOSSIBLE;
        }
      }
      double[] ones = new double[cells.length];
      Arrays.fill(ones, 1);
      CoverTable table = CoverTable.of(free, new double[cells.length], ones);
      ExactCover exact = new ExactCover(table, 0, 0, new int[0], 10_000);
      for (int k = 1; k <= 6; k++) {
        if (!exact.search(k, 1).sets().isEmpty()) {
          return k;
        }
      }
      return IMPOSSIBLE;
    }
  }

  @Test
  void fewestPiecesIsTheLeastCover() {
    SplittableRandom random = new SplittableRandom(SEED);
    int[] seen = new int[IMPOSSIBLE + 1];
    for (int trial = 0; trial < SHAPES; trial++) {
      int[] size = BLOCKS[trial % BLOCKS.length];
      Block block = new Block(size, 3 + random.nextInt(MOST_EMPTY - 2), random);
      int fewest = block.fewestPieces();
      assertEquals(fewest, block.leastCover(), "seed " + SEED + " trial " + trial);
      seen[fewest]++;
    }
    for (int k : new int[] {1, 2, 3, 4, IMPOSSIBLE}) {
      assertTrue(seen[k] > 10, k + " pieces came up " + seen[k] + " times");
    }
  }
}
