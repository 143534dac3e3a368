package org.castwright.division;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.seams.Mark;

/**
 * Which piece takes each cell of a mold's space: sheets between pieces that are short and leave the
 * casting and the outside square, within what each pull frees. Found by threshold dynamics
 * (Merriman, Bence and Osher, Diffusion generated motion by mean curvature, 1992): each piece's
 * share is diffused without flow through the casting's surface or the block's, then every cell goes
 * to the piece with most of it among those that may take it; and again.
 */
final class Shares {

  private static final float FLOW = 1f / 7;

  /** Open to all six neighbors. */
  private static final byte ALL_OPEN = 63;

  private static final int SPREAD = 160;
  private static final int ROUNDS = 30;
  private static final int FREE_ROUNDS = 18;
  private static final int FINE_ROUNDS = 5;
  private static final int STEPS = 24;
  private static final int LAST_STEPS = 10;

  /** Where shares flow less they need longer to move at all. */
  private static final int SLOW_STEPS = 72;

  private static final int DEEP = 4;

  /** A share less than twice so many cells thick is thin. */
  private static final int THIN = 2;

  /** A share that settles whose a place is, if its piece frees it at all. */
  static final float CLEAR = 0.7f;

  /** Worth of a straight look at a facet, against a cell's share. */
  private static final float DRAFT = 0.5f;

  /** Worth of a face to be shown going to the piece it is wished for, against a cell's share. */
  private static final float SHOWN = 0.5f;

  /** A look straighter than this (sine of the draft) is worth no more. */
  private static final double ENOUGH = 0.5;

  /** Room that pieces get beside what only they free, mm. */
  private static final double ROOM = 2.5;

  final Cells cells;
  final int pieces;

  /** Pieces that may take a cell: that free it with room to spare, or if none does at all. */
  byte[] mask;

  /** Pieces that free a cell at all. */
  private final byte[] free;

  final byte[] label;
  final float[][] share;
  int[] order;

  /** The piece with a clear share of all eight corners from each cell up, or -1. */
  private byte[] clear;

  /** What pieces take from each other in the order, before they give way to it. */
  Taken firstTaken;

  private Asked asked;
  private final WishCells wishes;
  private final byte[] open;
  private final int[] steps;
  private final float[][] bias;

  private Shares(Cells cells, List<PullColumns> pulls, Rubs rubs, Asked asked) {
    this.cells = cells;
    this.asked = asked;
    wishes = WishCells.of(cells, asked.model(), asked.wishes());
    pieces = pulls.size();
    mask = new byte[cells.size()];
    free = new byte[cells.size()];
    label = new byte[cells.size()];
    open = new byte[cells.size()];
    steps = cells.steps();
    share = new float[pieces][cells.size()];
    bias = new float[pieces][cells.size()];
    IntStream.range(0, cells.nz).parallel().forEach(k -> prepare(k, pulls, rubs));
  }

  /**
   * Shares on cells that are coarse enough for sheets to find their way across the block.
   *
   * @throws OrderException if the order asked leaves nothing for a piece
   */
  static Shares coarse(
      Cells cells, List<PullColumns> pulls, Rubs rubs, Asked asked, DoubleConsumer progress) {
    Shares s = new Shares(cells, pulls, rubs, asked);
    s.favor(pulls);
    s.reserve();
    s.begin();
    s.wish(true);
    s.rounds(ROUNDS, FREE_ROUNDS, pulls, progress);
    s.firstTaken.check(s.label);
    return s;
  }

  /** Shares on finer cells that start from coarse ones and keep their order. */
  static Shares fine(
      Cells cells, List<PullColumns> pulls, Rubs rubs, Shares coarse, DoubleConsumer progress) {
    Shares s = new Shares(cells, pulls, rubs, coarse.asked);
    s.favor(pulls);
    s.order = coarse.order;
    s.from(coarse);
    s.reserve();
    s.wish(false);
    s.rounds(FINE_ROUNDS, 0, pulls, progress);
    s.inward();
    s.clear();
    return s;
  }

  /** Cells that are kept for one piece. */
  private void reserve() {
    for (int c = 0; c < label.length; c++) {
      int piece = asked.taker().applyAsInt(new Vec3(cells.x(c), cells.y(c), cells.z(c)));
      if (piece >= 0 && (free[c] & 1 << piece) != 0) {
        mask[c] = (byte) (1 << piece);
        free[c] = mask[c];
      }
    }
  }

  private void rounds(int rounds, int free, List<PullColumns> pulls, DoubleConsumer progress) {
    Closure closure = new Closure(cells, pulls);
    Claims claims = new Claims(cells, closure, mask.clone(), this.free, pieces);
    int reach = (int) Math.ceil(ROOM / cells.cell);
    mask = claims.narrowed(reach, rank());
    for (int r = 0; r < rounds; r++) {
      progress.accept((double) r / rounds);
      choose();
      if (r >= free) {
        byte[] taken = new byte[label.length];
        if (order == null) {
          order = Order.best(closure, label, asked.places());
          closure.run(label, order, taken);
          firstTaken = new Taken(label, taken, order, cells.cell * cells.cell * cells.cell);
          mask = claims.narrowed(reach, rank());
        }
        thicken();
        closure.run(label, order, taken);
        System.arraycopy(taken, 0, label, 0, taken.length);
      }
      one();
      diffuse(r == rounds - 1 ? LAST_STEPS : free > 0 && wishes.flow != null ? SLOW_STEPS : STEPS);
    }
  }

  /** The place of each piece in the order, null while there is none. */
  private int[] rank() {
    if (order == null) {
      return null;
    }
    int[] rank = new int[pieces];
    for (int i = 0; i < pieces; i++) {
      rank[order[i]] = i;
    }
    return rank;
  }

  private void from(Shares coarse) {
    IntStream.range(0, cells.nz)
        .parallel()
        .forEach(
            layer -> {
              float[] u = new float[pieces];
              int n = cells.nx * cells.ny;
              for (int c = layer * n; c < (layer + 1) * n; c++) {
                coarse.at(cells.x(c), cells.y(c), cells.z(c), u);
                for (int i = 0; i < pieces; i++) {
                  share[i][c] = u[i];
                }
              }
            });
  }

  private void prepare(int layer, List<PullColumns> pulls, Rubs rubs) {
    int n = cells.nx * cells.ny;
    for (int c = layer * n; c < (layer + 1) * n; c++) {
      for (int s = 0; s < 6; s++) {
        if (cells.has(c, s) && !cells.solid[c + steps[s]]) {
          open[c] |= (byte) (1 << s);
        }
      }
      if (cells.solid[c]) {
        continue;
      }
      int wide = 0;
      int narrow = 0;
      for (int i = 0; i < pulls.size(); i++) {
        double x = cells.x(c);
        double y = cells.y(c);
        double z = cells.z(c);
        wide |= pulls.get(i).widelyFree(x, y, z) ? 1 << i : 0;
        narrow |= pulls.get(i).free(x, y, z) ? 1 << i : 0;
      }
      int smooth = rubs.without(c);
      int may = wide != 0 ? wide : narrow;
      mask[c] = (byte) ((may & smooth) != 0 ? may & smooth : may);
      free[c] = (byte) (wide | narrow);
    }
  }

  /** Near the casting pieces that look straight at it are favored. */
  private void favor(List<PullColumns> pulls) {
    for (int c = 0; c < cells.size(); c++) {
      if (cells.solid[c] || cells.soft(c) < 0.02f) {
        continue;
      }
      Vec3 n = cells.outward(c);
      if (n.length() > 1e-6) {
        n = n.unit();
        for (int i = 0; i < pieces; i++) {
          bias[i][c] = (float) Math.min(ENOUGH, n.dot(pulls.get(i).frame.w()));
        }
      }
    }
  }

  /** Cells that one piece alone may take, and those by the casting, spread their share. */
  private void begin() {
    for (int c = 0; c < label.length; c++) {
      if (cells.solid[c]) {
        continue;
      }
      boolean alone = Integer.bitCount(mask[c] & 0xff) == 1;
      for (int i = 0; i < pieces; i++) {
        if ((mask[c] & 1 << i) != 0) {
          share[i][c] = alone ? 1 : Math.max(0, bias[i][c]);
        }
      }
    }
    diffuse(SPREAD);
  }

  /**
   * Where the maker wishes it, cells go to one piece: without choice, or for a face to be shown by
   * preference.
   *
   * @param first whether it is not known yet which piece takes them
   */
  private void wish(boolean first) {
    Vote vote = new Vote(wishes, mask, share);
    asked = first ? asked.with(vote.places(asked.places())) : asked;
    int[] piece = vote.pieces(asked.places(), first);
    for (int p = 0; p < piece.length; p++) {
      WishCells.Patch patch = wishes.patches.get(p);
      int bit = 1 << piece[p];
      for (int k = 0; k < patch.cells().size() && piece[p] >= 0; k++) {
        int c = patch.cells().get(k);
        if (patch.mark() == Mark.SHOW) {
          bias[piece[p]][c] += SHOWN / DRAFT;
        } else if (patch.mark() == Mark.PIECE && (mask[c] & bit) != 0) {
          mask[c] = (byte) bit;
        }
      }
    }
    // no seam goes before the rest
    for (int p = 0; p < piece.length; p++) {
      WishCells.Patch patch = wishes.patches.get(p);
      int bit = 1 << piece[p];
      for (int k = 0; k < patch.cells().size() && patch.mark() == Mark.NO_SEAM; k++) {
        int c = patch.cells().get(k);
        mask[c] = (mask[c] & bit) != 0 ? (byte) bit : mask[c];
      }
    }
  }

  private void choose() {
    for (int c = 0; c < label.length; c++) {
      if (cells.solid[c]) {
        label[c] = -1;
        continue;
      }
      int m = mask[c] & 0xff;
      label[c] = (byte) best(c, m == 0 ? (1 << pieces) - 1 : m, -1);
    }
  }

  /** The piece with the largest share of a cell among some, or another where there are none. */
  private int best(int c, int among, int otherwise) {
    int best = otherwise;
    float most = Float.NEGATIVE_INFINITY;
    for (int i = 0; i < pieces; i++) {
      float v = share[i][c] + DRAFT * bias[i][c];
      if ((among & 1 << i) != 0 && v > most) {
        best = i;
        most = v;
      }
    }
    return best;
  }

  /** Gives what is thin of a piece's share to others that may have it. */
  private void thicken() {
    for (int i = 0; i < pieces; i++) {
      boolean[] kept = core(i);
      for (int c = 0; c < label.length; c++) {
        if (label[c] == i && !kept[c] && (mask[c] & 0xff) != 1 << i) {
          label[c] = (byte) best(c, (free[c] & 0xff) & ~(1 << i), i);
        }
      }
    }
  }

  /** What is left of a piece's share when it is worn down from other shares and grown again. */
  private boolean[] core(int i) {
    boolean[] in = new boolean[label.length];
    for (int c = 0; c < in.length; c++) {
      in[c] = label[c] == i || label[c] < 0;
    }
    for (int r = 0; r < THIN; r++) {
      in = beside(in, false);
    }
    for (int c = 0; c < in.length; c++) {
      in[c] &= label[c] == i;
    }
    for (int r = 0; r < THIN + 1; r++) {
      in = beside(in, true);
    }
    return in;
  }

  /** Cells that are set or have a neighbor that is, or those that are not set or have one not. */
  private boolean[] beside(boolean[] in, boolean set) {
    boolean[] out = new boolean[in.length];
    IntStream.range(0, cells.nz)
        .parallel()
        .forEach(
            layer -> {
              int row = cells.nx;
              int n = row * cells.ny;
              for (int j = 0; j < cells.ny; j++) {
                for (int i = 0; i < row; i++) {
                  int c = layer * n + j * row + i;
                  boolean any =
                      in[c] == set
                          || (i > 0 && in[c - 1] == set)
                          || (i + 1 < row && in[c + 1] == set)
                          || (j > 0 && in[c - row] == set)
                          || (j + 1 < cells.ny && in[c + row] == set)
                          || (layer > 0 && in[c - n] == set)
                          || (layer + 1 < cells.nz && in[c + n] == set);
                  out[c] = any == set;
                }
              }
            });
    return out;
  }

  private void one() {
    for (int i = 0; i < pieces; i++) {
      for (int c = 0; c < label.length; c++) {
        share[i][c] = label[c] == i ? 1 : 0;
      }
    }
  }

  private void diffuse(int times) {
    for (int i = 0; i < pieces; i++) {
      float[] a = share[i];
      float[] b = new float[a.length];
      for (int t = 0; t < times; t++) {
        step(a, b);
        float[] swap = a;
        a = b;
        b = swap;
      }
      share[i] = a;
    }
  }

  private void step(float[] in, float[] out) {
    int n = cells.nx * cells.ny;
    IntStream.range(0, cells.nz)
        .parallel()
        .forEach(
            layer -> {
              int end = (layer + 1) * n;
              for (int c = layer * n; c < end; c++) {
                if (wishes.flow != null) {
                  out[c] = slowed(in, c, wishes.flow);
                } else if (open[c] == ALL_OPEN) {
                  int from = c;
                  while (c + 1 < end && open[c + 1] == ALL_OPEN) {
                    c++;
                  }
                  open(in, out, from, c + 1);
                } else {
                  out[c] = held(in, c);
                }
              }
            });
  }

  /** A step of a run of cells that are open on all sides. */
  private void open(float[] in, float[] out, int from, int to) {
    int sy = cells.nx;
    int sz = cells.nx * cells.ny;
    for (int c = from; c < to; c++) {
      float v = in[c];
      float beside = in[c - 1] + in[c + 1] + in[c - sy] + in[c + sy] + in[c - sz] + in[c + sz];
      out[c] = v + FLOW * (beside - 6 * v);
    }
  }

  /** A step of a cell that something bounds. */
  private float held(float[] in, int c) {
    float v = in[c];
    float sum = 0;
    for (int s = 0; s < 6; s++) {
      if ((open[c] & 1 << s) != 0) {
        sum += in[c + steps[s]] - v;
      }
    }
    return v + FLOW * sum;
  }

  /** A step where shares flow less at some cells. */
  private float slowed(float[] in, int c, float[] flow) {
    float v = in[c];
    float sum = 0;
    for (int s = 0; s < 6; s++) {
      if ((open[c] & 1 << s) != 0) {
        int d = c + steps[s];
        sum += Math.min(flow[c], flow[d]) * (in[d] - v);
      }
    }
    return v + FLOW * sum;
  }

  /** Carries shares some cells deep into the casting, each layer from the one outside it. */
  private void inward() {
    boolean[] known = new boolean[label.length];
    for (int c = 0; c < known.length; c++) {
      known[c] = !cells.solid[c];
    }
    for (int d = 0; d < DEEP; d++) {
      boolean[] next = known.clone();
      for (int c = 0; c < known.length; c++) {
        if (known[c]) {
          continue;
        }
        int count = 0;
        float[] sum = new float[pieces];
        for (int s = 0; s < 6; s++) {
          if (cells.has(c, s) && known[c + steps[s]]) {
            count++;
            for (int i = 0; i < pieces; i++) {
              sum[i] += share[i][c + steps[s]];
            }
          }
        }
        if (count > 0) {
          next[c] = true;
          for (int i = 0; i < pieces; i++) {
            share[i][c] = sum[i] / count;
          }
        }
      }
      known = next;
    }
  }

  private void clear() {
    clear = new byte[label.length];
    int sy = cells.nx;
    int sz = cells.nx * cells.ny;
    Arrays.fill(clear, (byte) -1);
    IntStream.range(0, cells.nz - 1)
        .parallel()
        .forEach(
            layer -> {
              for (int j = 0; j + 1 < cells.ny; j++) {
                for (int i = 0; i + 1 < cells.nx; i++) {
                  int c = layer * sz + j * sy + i;
                  for (int p = 0; p < pieces; p++) {
                    float[] u = share[p];
                    if (Math.min(least(u, c, sy), least(u, c + sz, sy)) > CLEAR) {
                      clear[c] = (byte) p;
                    }
                  }
                }
              }
            });
  }

  /** The least of a number at a cell, at the next, and at those beside both. */
  private static float least(float[] u, int c, int sy) {
    return Math.min(Math.min(u[c], u[c + 1]), Math.min(u[c + sy], u[c + sy + 1]));
  }

  /** The piece that has a clear share of all round a point on fine cells, or -1. */
  int clearAt(double x, double y, double z) {
    int i = (int) cells.alongX(x);
    int j = (int) cells.alongY(y);
    int k = (int) cells.alongZ(z);
    return clear[(k * cells.ny + j) * cells.nx + i];
  }

  /** The shares at a point, between the centers of cells. */
  void at(double x, double y, double z, float[] out) {
    double fx = cells.alongX(x);
    double fy = cells.alongY(y);
    double fz = cells.alongZ(z);
    int i = (int) fx;
    int j = (int) fy;
    int k = (int) fz;
    float a = (float) (fx - i);
    float b = (float) (fy - j);
    float g = (float) (fz - k);
    int c = (k * cells.ny + j) * cells.nx + i;
    int sy = cells.nx;
    int sz = cells.nx * cells.ny;
    for (int p = 0; p < pieces; p++) {
      float[] u = share[p];
      float lo =
          (1 - b) * ((1 - a) * u[c] + a * u[c + 1]) + b * ((1 - a) * u[c + sy] + a * u[c + sy + 1]);
      int d = c + sz;
      float hi =
          (1 - b) * ((1 - a) * u[d] + a * u[d + 1]) + b * ((1 - a) * u[d + sy] + a * u[d + sy + 1]);
      out[p] = (1 - g) * lo + g * hi;
    }
  }
}
