package org.castwright.division;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.seams.Freedom;

/**
 * Which pieces would rub on the casting beside a cell: pulls that free the cell, but not the
 * surface next to it, for walls lean under a little there.
 */
final class Rubs {

  /** Places on the surface lie so far apart at most, cells. */
  private static final double SPACING = 0.5;

  /** A place is asked this far off the surface, mm. */
  private static final double OFF = 0.02;

  /** Cells off the surface in which the cell beside it is looked for. */
  private static final double[] BESIDE = {0.6, 1};

  /** Share of the surface beside a cell from which on a piece rubs. */
  private static final double SHARE = 0.2;

  private final Cells cells;
  private final float[] area;
  private final float[][] rubbed;

  /**
   * @param exact what each pull frees
   */
  Rubs(Cells cells, TriMesh casting, Freedom exact) {
    this.cells = cells;
    area = new float[cells.size()];
    rubbed = new float[exact.pieces()][cells.size()];
    Spots.visit(casting, SPACING * cells.cell, (f, p, a) -> put(p, a, exact));
  }

  private void put(Vec3 p, Vec3 normal, Freedom exact) {
    double a = normal.length();
    if (a == 0) {
      return;
    }
    Vec3 n = normal.times(1 / a);
    int c = -1;
    for (int k = 0; k < BESIDE.length && c < 0; k++) {
      c = open(p.plus(n.times(BESIDE[k] * cells.cell)));
    }
    if (c < 0) {
      return;
    }
    Vec3 q = p.plus(n.times(OFF));
    int free = exact.at(q.x(), q.y(), q.z());
    area[c] += (float) a;
    for (int i = 0; i < rubbed.length; i++) {
      rubbed[i][c] += (free & 1 << i) == 0 ? (float) a : 0;
    }
  }

  /** The cell at a point if it is space, or -1. */
  private int open(Vec3 p) {
    int i = (int) Math.rint((p.x() - cells.x0) / cells.cell);
    int j = (int) Math.rint((p.y() - cells.y0) / cells.cell);
    int k = (int) Math.rint((p.z() - cells.z0) / cells.cell);
    if (i < 0 || j < 0 || k < 0 || i >= cells.nx || j >= cells.ny || k >= cells.nz) {
      return -1;
    }
    int c = (k * cells.ny + j) * cells.nx + i;
    return cells.solid[c] ? -1 : c;
  }

  /** Pieces that do not rub beside a cell. */
  int without(int c) {
    int m = 0;
    for (int i = 0; i < rubbed.length; i++) {
      m |= rubbed[i][c] > SHARE * area[c] ? 0 : 1 << i;
    }
    return m;
  }
}
