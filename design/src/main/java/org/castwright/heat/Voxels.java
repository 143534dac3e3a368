package org.castwright.heat;

import java.util.Arrays;
import java.util.BitSet;
import org.castwright.mesh.IntList;
import org.castwright.mesh.TriMesh;

/**
 * Casting, wall and air in the cells of a grid, and the faces where the casting meets something
 * else with the true place and slope of its surface there. Steps of a staircase have more area than
 * the surface they follow; the slope takes that out again.
 */
final class Voxels {

  static final byte AIR = 0;

  /** All that was poured, channels included. */
  static final byte CASTING = 1;

  /** Full wall: all of a poured mold, the skins of a printed one. */
  static final byte WALL = 2;

  /** What lies between the skins of a printed mold. */
  static final byte INFILL = 3;

  private static final float HALF_WAY = 0.5f;

  final Cells cells;
  final byte[] kind;

  /** Face q lies between cell {@code faceCell[q]} and the next along {@code faceAxis[q]}. */
  final int[] faceCell;

  final byte[] faceAxis;

  /** Where between the two middles the surface lies, as a share. */
  final float[] faceShare;

  /** The part of the surface's normal along the axis, 0 to 1. */
  final float[] faceFacing;

  private Voxels(Cells cells, byte[] kind, int[] cell, byte[] axis, float[] share, float[] facing) {
    this.cells = cells;
    this.kind = kind;
    this.faceCell = cell;
    this.faceAxis = axis;
    this.faceShare = share;
    this.faceFacing = facing;
  }

  /**
   * Fills a grid.
   *
   * @param casting closed, outward-oriented, mm
   * @param around what fills the box outside the casting: {@link #AIR} or {@link #WALL}
   * @param skinMm thickness of the full skin of the wall, mm; infinite for a wall without infill
   */
  static Voxels of(TriMesh casting, Cells cells, byte around, double skinMm) {
    byte[] kind = new byte[cells.size()];
    Crossings[] along = {null, null, new Crossings(casting, cells, 2)};
    along[2].inside(kind, CASTING);
    fillAround(kind, cells, around);
    if (around == WALL && skinMm < Double.POSITIVE_INFINITY) {
      Skin.hollow(cells, kind, skinMm);
    }
    IntList cell = new IntList();
    IntList axis = new IntList();
    float[] share = new float[1024];
    float[] facing = new float[1024];
    for (int a = 0; a < 3; a++) {
      Crossings lines = along[a] == null ? new Crossings(casting, cells, a) : along[a];
      int stride = cells.stride(a);
      for (int c = 0; c < kind.length - stride; c++) {
        if ((kind[c] == CASTING) == (kind[c + stride] == CASTING)) {
          continue;
        }
        int n = cell.size();
        if (n == share.length) {
          share = Arrays.copyOf(share, 2 * n);
          facing = Arrays.copyOf(facing, 2 * n);
        }
        // rounding can put a surface through a middle on one line and not on the crossing one
        boolean known = lines.share(c) != Crossings.NONE;
        share[n] = known ? lines.share(c) : HALF_WAY;
        facing[n] = known ? lines.facing(c) : 1;
        cell.add(c);
        axis.add(a);
      }
    }
    int n = cell.size();
    byte[] axes = new byte[n];
    for (int q = 0; q < n; q++) {
      axes[q] = (byte) axis.get(q);
    }
    return new Voxels(
        cells, kind, cell.toArray(), axes, Arrays.copyOf(share, n), Arrays.copyOf(facing, n));
  }

  /** Air in the outermost layers, and the rest of the box round the casting. */
  private static void fillAround(byte[] kind, Cells cells, byte around) {
    for (int k = 0, c = 0; k < cells.nz(); k++) {
      for (int j = 0; j < cells.ny(); j++) {
        for (int i = 0; i < cells.nx(); i++, c++) {
          if (outermost(i, cells.nx()) || outermost(j, cells.ny()) || outermost(k, cells.nz())) {
            kind[c] = AIR;
          } else if (kind[c] != CASTING) {
            kind[c] = around;
          }
        }
      }
    }
  }

  private static boolean outermost(int i, int n) {
    return i == 0 || i == n - 1;
  }

  /** The cells of {@link #CASTING} with their middle outside a body. */
  BitSet outside(TriMesh body) {
    byte[] inside = new byte[kind.length];
    new Crossings(body, cells, 2).inside(inside, CASTING);
    BitSet out = new BitSet(kind.length);
    for (int c = 0; c < kind.length; c++) {
      out.set(c, kind[c] == CASTING && inside[c] != CASTING);
    }
    return out;
  }

  int count(byte of) {
    int n = 0;
    for (byte k : kind) {
      n += k == of ? 1 : 0;
    }
    return n;
  }
}
