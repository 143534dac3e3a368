package org.castwright.division;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.IntList;
import org.castwright.mesh.TriMesh;
import org.castwright.seams.Mark;
import org.castwright.seams.Wish;
import org.castwright.seams.Wishes;

/** What the maker wishes of the cells beside the casting. */
final class WishCells {

  /** Sides of a cell that a point of the surface reaches. */
  private static final double TOUCH = 1.5;

  /** Steps between points of the surface that are looked at, cells. */
  private static final double STEP = 0.5;

  /** How far a patch grows away from the surface, cells. */
  private static final int GROWN = 2;

  /** Length of a seam in a hidden place against one in sight, and how far that draws, as share. */
  private static final double HIDDEN = 0.3;

  private static final double DRAWN = 0.2;

  /**
   * Cells by a connected part of the surface that one piece should form.
   *
   * @param piece by the order of leaving, from 1, or 0 for any
   */
  record Patch(Mark mark, int piece, IntList cells) {}

  final List<Patch> patches = new ArrayList<>();

  /** By how much less shares flow at a cell, 0 to 1; null where nothing is hidden. */
  final float[] flow;

  private final Cells cells;

  private WishCells(Cells cells, TriMesh model, Wishes wishes) {
    this.cells = cells;
    BitSet hidden = new BitSet(cells.size());
    BitSet shown = new BitSet(cells.size());
    for (Wish w : wishes.all()) {
      BitSet touched = touched(model, w);
      switch (w.mark()) {
        case HIDE -> {
          hidden.or(touched);
          shown.andNot(touched);
        }
        case SHOW -> {
          hidden.andNot(touched);
          shown.or(touched);
        }
        case NO_SEAM, PIECE -> split(w.mark(), w.piece(), touched);
      }
    }
    split(Mark.SHOW, 0, shown);
    flow = hidden.isEmpty() ? null : flow(hidden);
  }

  /** Of wishes in the frame of the model, which is the casting without gate and vents. */
  static WishCells of(Cells cells, TriMesh model, Wishes wishes) {
    return new WishCells(cells, model, wishes);
  }

  private BitSet touched(TriMesh model, Wish wish) {
    BitSet out = new BitSet(cells.size());
    for (int f = 0; f < model.triangleCount(); f++) {
      Vec3 a = model.vertex(model.tri()[3 * f]);
      Vec3 b = model.vertex(model.tri()[3 * f + 1]);
      Vec3 c = model.vertex(model.tri()[3 * f + 2]);
      double longest =
          Math.max(b.minus(a).length(), Math.max(c.minus(b).length(), a.minus(c).length()));
      int n = Math.max(1, (int) Math.ceil(longest / (STEP * cells.cell)));
      for (int i = 0; i < n; i++) {
        for (int j = 0; i + j < n; j++) {
          double s = (i + 1 / 3.0) / n;
          double t = (j + 1 / 3.0) / n;
          Vec3 p = a.times(1 - s - t).plus(b.times(s)).plus(c.times(t));
          if (wish.region().holds(f, p.x(), p.y(), p.z())) {
            touch(p, out);
          }
        }
      }
    }
    return out;
  }

  private void touch(Vec3 p, BitSet out) {
    int i0 = (int) Math.rint((p.x() - cells.x0) / cells.cell);
    int j0 = (int) Math.rint((p.y() - cells.y0) / cells.cell);
    int k0 = (int) Math.rint((p.z() - cells.z0) / cells.cell);
    for (int k = Math.max(0, k0 - 1); k <= Math.min(cells.nz - 1, k0 + 1); k++) {
      for (int j = Math.max(0, j0 - 1); j <= Math.min(cells.ny - 1, j0 + 1); j++) {
        for (int i = Math.max(0, i0 - 1); i <= Math.min(cells.nx - 1, i0 + 1); i++) {
          int c = (k * cells.ny + j) * cells.nx + i;
          Vec3 at = new Vec3(cells.x(c), cells.y(c), cells.z(c));
          if (!cells.solid[c] && at.minus(p).length() < TOUCH * cells.cell) {
            out.set(c);
          }
        }
      }
    }
  }

  /** Adds a patch for each connected part of the cells touched. */
  private void split(Mark mark, int piece, BitSet touched) {
    BitSet left = (BitSet) touched.clone();
    for (int start = left.nextSetBit(0); start >= 0; start = left.nextSetBit(start)) {
      IntList part = new IntList();
      part.add(start);
      left.clear(start);
      for (int at = 0; at < part.size(); at++) {
        int[] beside = beside(part.get(at));
        for (int c : beside) {
          if (left.get(c)) {
            left.clear(c);
            part.add(c);
          }
        }
      }
      patches.add(new Patch(mark, piece, grown(part)));
    }
  }

  /** The 26 cells round one, as far as there are. */
  private int[] beside(int c) {
    int i = c % cells.nx;
    int j = c / cells.nx % cells.ny;
    int k = c / (cells.nx * cells.ny);
    int[] out = new int[26];
    int n = 0;
    for (int m = 0; m < 27; m++) {
      int p = i + m % 3 - 1;
      int q = j + m / 3 % 3 - 1;
      int r = k + m / 9 - 1;
      boolean in = p >= 0 && q >= 0 && r >= 0 && p < cells.nx && q < cells.ny && r < cells.nz;
      if (in && m != 13) {
        out[n++] = (r * cells.ny + q) * cells.nx + p;
      }
    }
    return Arrays.copyOf(out, n);
  }

  private IntList grown(IntList part) {
    BitSet in = new BitSet(cells.size());
    for (int at = 0; at < part.size(); at++) {
      in.set(part.get(at));
    }
    int[] steps = cells.steps();
    int from = 0;
    for (int g = 0; g < GROWN; g++) {
      int to = part.size();
      for (; from < to; from++) {
        int c = part.get(from);
        for (int s = 0; s < 6; s++) {
          if (cells.has(c, s) && !cells.solid[c + steps[s]] && !in.get(c + steps[s])) {
            in.set(c + steps[s]);
            part.add(c + steps[s]);
          }
        }
      }
    }
    return part;
  }

  /**
   * A border between shares is as dear as the root of how they flow there, so it is drawn to where
   * they flow less.
   */
  private float[] flow(BitSet hidden) {
    double reach = DRAWN * cells.cell * Math.max(cells.nx, Math.max(cells.ny, cells.nz));
    int far = Math.max(1, (int) Math.round(reach / cells.cell));
    float[] out = new float[cells.size()];
    Arrays.fill(out, 1);
    IntList front = new IntList();
    for (int c = hidden.nextSetBit(0); c >= 0; c = hidden.nextSetBit(c + 1)) {
      front.add(c);
    }
    BitSet seen = (BitSet) hidden.clone();
    int[] steps = cells.steps();
    int from = 0;
    for (int d = 0; d < far; d++) {
      double dear = HIDDEN + (1 - HIDDEN) * d / far;
      int to = front.size();
      for (; from < to; from++) {
        int c = front.get(from);
        out[c] = (float) (dear * dear);
        for (int s = 0; s < 6; s++) {
          if (cells.has(c, s) && !seen.get(c + steps[s])) {
            seen.set(c + steps[s]);
            front.add(c + steps[s]);
          }
        }
      }
    }
    return out;
  }
}
