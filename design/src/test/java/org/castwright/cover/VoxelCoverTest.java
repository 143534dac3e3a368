package org.castwright.cover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.castwright.geom.Vec3;
import org.castwright.survey.VoxelShape;
import org.junit.jupiter.api.Test;

/**
 * The whole trial, pictures and all, restricted to the six axis directions, against cells: which
 * empty cells see the outside along which axis, and the smallest of the 64 sets of directions that
 * frees all that can be freed.
 */
class VoxelCoverTest {

  private static final long SEED = 64;
  private static final double SIDE = 10;
  private static final CoverOptions OPTIONS =
      CoverOptions.DEFAULT
          .withCells(30)
          .withTolerance(new CoverTolerance(0, 0, 0, CoverTolerance.DEFAULT.widthMm()));

  private static int sees(VoxelShape s, int x, int y, int z) {
    int out = 0;
    for (int d = 0; d < 6; d++) {
      int[] at = {x, y, z};
      boolean free = true;
      for (int step = 0; step <= s.n; step++) {
        at[d / 2] += d % 2 == 0 ? 1 : -1;
        free &= !s.solid(at[0], at[1], at[2]);
      }
      out |= free ? 1 << d : 0;
    }
    return out;
  }

  /** The least number of directions, and how many cells see none. */
  private static int[] bySets(VoxelShape s) {
    int least = 6;
    int hidden = 0;
    for (int set = 0; set < 64; set++) {
      boolean all = true;
      hidden = 0;
      for (int c = 0; c < (s.n + 2) * (s.n + 2) * (s.n + 2); c++) {
        int x = c % (s.n + 2) - 1;
        int y = c / (s.n + 2) % (s.n + 2) - 1;
        int z = c / ((s.n + 2) * (s.n + 2)) - 1;
        int sees = s.solid(x, y, z) ? 0 : sees(s, x, y, z);
        hidden += sees == 0 && !s.solid(x, y, z) ? 1 : 0;
        all &= sees == 0 || (sees & set) != 0;
      }
      least = all ? Math.min(least, Integer.bitCount(set)) : least;
    }
    return new int[] {least, hidden};
  }

  private static void compare(VoxelShape s, String what) {
    int[] expected = bySets(s);
    Trial trial = new Trial(s.mesh().scaled(new Vec3(SIDE, SIDE, SIDE)), OPTIONS);
    trial.add(List.of(Vec3.X, Vec3.Y, Vec3.Z), done -> {});
    Solver solver = new Solver(trial, OPTIONS, new int[0]);
    solver.run(new Curve(trial.table(), new int[0], CoverOptions.MOST_PULLS));
    assertEquals(expected[0], solver.least(), what);
    assertEquals(expected[0], solver.lowerBound(), what);
    double hidden = trial.sum(trial.never()).volumeMm3();
    double cell = SIDE * SIDE * SIDE;
    // a grid of three cells to a voxel, off by up to a cell, counts a voxel to a third or so
    assertEquals(expected[1] * cell, hidden, 0.45 * expected[1] * cell, what);
  }

  @Test
  void randomShapes() {
    SplittableRandom random = new SplittableRandom(SEED);
    int[] seen = new int[7];
    for (int trial = 0; trial < 150; trial++) {
      int n = 3 + trial % 3;
      int cells = 5 + random.nextInt(n * n * n / 2);
      VoxelShape s = VoxelShape.grown(n, cells, random);
      compare(s, "seed " + SEED + " trial " + trial);
      seen[bySets(s)[0]]++;
    }
    for (int k = 2; k <= 4; k++) {
      assertTrue(seen[k] >= 5, k + " pulls came up " + seen[k] + " times");
    }
  }

  @Test
  void linkedRings() {
    // two square rings of one cell's thickness, each through the other's hole; no cells touch
    VoxelShape s = new VoxelShape(9);
    for (int i = 0; i < 5; i++) {
      for (int j = 0; j < 5; j++) {
        if (i == 0 || i == 4 || j == 0 || j == 4) {
          s.set(i, j + 2, 4);
          s.set(i + 2, 4, j + 2);
        }
      }
    }
    assertTrue(bySets(s)[0] > 2);
    compare(s, "linked rings");
  }
}
