package org.castwright.division;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Pieces of cells take what lies ahead of them, checked against walking cell by cell. */
class ClosureTest {

  private static final double SIDE = 12;

  /** Along the axes a column of the grid is a column of cells, so walking tells the answer. */
  @Test
  void agreesWithWalkingAlongTheAxes() {
    Random random = new Random(11);
    Box3 block = new Box3(new Vec3(-6, -6, -6), new Vec3(6, 6, 6));
    TriMesh casting = Primitives.box(new Vec3(-1.2, -1.2, -1.2), new Vec3(1.3, 1.3, 1.3));
    Cells cells = new Cells(casting, block, SIDE / 8);
    List<Vec3> ways = List.of(Vec3.X, Vec3.Y.negate(), Vec3.Z);
    List<PullColumns> pulls =
        ways.stream().map(w -> new PullColumns(casting, block, w, SIDE / 8, 0.1)).toList();
    Closure closure = new Closure(cells, pulls);
    int[] steps = {1, -cells.nx, cells.nx * cells.ny};
    int[] sides = {1, 2, 5};
    for (int round = 0; round < 50; round++) {
      byte[] wanted = new byte[cells.size()];
      for (int c = 0; c < wanted.length; c++) {
        wanted[c] = (byte) (cells.solid[c] ? -1 : random.nextInt(3));
      }
      int[] order = {round % 3, (round + 1) % 3, (round + 2) % 3};
      byte[] taken = new byte[cells.size()];
      int stolen = closure.run(wanted, order, taken);
      int differ = 0;
      for (int c = 0; c < taken.length; c++) {
        assertEquals(cells.solid[c], taken[c] < 0);
        differ += !cells.solid[c] && taken[c] != wanted[c] ? 1 : 0;
        if (taken[c] < 0 || taken[c] == order[2]) {
          continue;
        }
        // ahead of a cell nothing is left for later pieces
        int piece = taken[c];
        int d = c;
        while (cells.has(d, sides[piece])) {
          d += steps[piece];
          assertTrue(taken[d] < 0 || rank(order, taken[d]) <= rank(order, piece));
        }
      }
      assertEquals(differ, stolen);
    }
  }

  private static int rank(int[] order, int piece) {
    for (int i = 0; i < order.length; i++) {
      if (order[i] == piece) {
        return i;
      }
    }
    throw new AssertionError(piece);
  }
}
