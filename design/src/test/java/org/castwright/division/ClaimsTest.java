package org.castwright.division;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.junit.jupiter.api.Test;

/** Two pulls along x and z in an open block with a small casting in a corner. */
class ClaimsTest {

  private static final TriMesh CORNER = Primitives.box(new Vec3(-9, -9, -9), new Vec3(-7, -7, -7));
  private static final Box3 BLOCK = BlockBox.around(CORNER.bounds(), 20, 20).mesh().bounds();
  private static final int BOTH = 0b11;

  private final Cells cells = new Cells(CORNER, BLOCK, 2);
  private final Closure closure =
      new Closure(
          cells,
          List.of(
              new PullColumns(CORNER, BLOCK, Vec3.X, 0.5, 1),
              new PullColumns(CORNER, BLOCK, Vec3.Z, 0.5, 1)));

  private byte[] all(int m) {
    byte[] out = new byte[cells.size()];
    for (int c = 0; c < out.length; c++) {
      out[c] = (byte) (cells.solid[c] ? 0 : m);
    }
    return out;
  }

  private int cell(int i, int j, int k) {
    return (k * cells.ny + j) * cells.nx + i;
  }

  @Test
  void cellsBesideWhatOnePieceFreesAreItsToo() {
    int i = cells.nx - 4;
    int j = cells.ny - 4;
    int k = cells.nz - 4;
    byte[] free = all(BOTH);
    free[cell(i, j, k)] = 0b01;
    byte[] narrowed = new Claims(cells, closure, free.clone(), free, 2).narrowed(1, null);
    assertEquals(0b01, narrowed[cell(i, j, k)]);
    assertEquals(0b01, narrowed[cell(i - 1, j, k)], "one step aside");
    assertEquals(BOTH, narrowed[cell(i - 2, j, k)], "two steps aside");
  }

  /** What the first must pass along x is not the second's, unless the second leaves before. */
  @Test
  void whatMustBePassedGoesWithThePieceOrBefore() {
    int i = cells.nx - 6;
    int j = cells.ny - 4;
    int k = cells.nz - 4;
    byte[] free = all(BOTH);
    free[cell(i, j, k)] = 0b01;
    Claims claims = new Claims(cells, closure, free.clone(), free, 2);
    int ahead = cell(i + 4, j, k);
    assertEquals(0b01, claims.narrowed(1, null)[ahead]);
    assertEquals(0b01, claims.narrowed(1, new int[] {0, 1})[ahead]);
    assertEquals(BOTH, claims.narrowed(1, new int[] {1, 0})[ahead]);
  }
}
