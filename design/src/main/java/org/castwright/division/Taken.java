package org.castwright.division;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How much of which piece's share goes with which other piece in an order. */
final class Taken {

  /** Pieces of fewer cells are none. */
  private static final int LEAST = 30;

  /** What a piece takes from another is told from this share of the other's on. */
  private static final double TOLD = 0.05;

  private final int[] order;
  private final long[][] cells;
  private final double cell;

  /**
   * @param wanted piece of each cell by choice, -1 in the casting
   * @param taken piece of each cell in the order
   * @param cell volume of a cell, mm³
   */
  Taken(byte[] wanted, byte[] taken, int[] order, double cell) {
    this.order = order.clone();
    this.cell = cell;
    cells = new long[order.length][order.length];
    for (int c = 0; c < wanted.length; c++) {
      if (wanted[c] >= 0) {
        cells[wanted[c]][taken[c]]++;
      }
    }
  }

  /** Throws if nothing is left for a piece, given what they take in the end. */
  void check(byte[] taken) {
    int[] left = new int[order.length];
    for (byte t : taken) {
      if (t >= 0) {
        left[t]++;
      }
    }
    for (int n = 0; n < order.length; n++) {
      if (left[order[n]] < LEAST) {
        throw new OrderException(
            String.format(
                Locale.ROOT,
                "in this order nothing is left for piece %d: of the %s mm³ that it would have%s;"
                    + " fix fewer pulls, or another order",
                n + 1,
                volume(total(order[n])),
                others(order[n], 0)));
      }
    }
  }

  /** Sentences on what pieces take from each other. */
  List<String> words() {
    List<String> out = new ArrayList<>();
    for (int n = 0; n < order.length; n++) {
      String others = others(order[n], TOLD);
      if (!others.isEmpty()) {
        out.add(
            String.format(
                Locale.ROOT,
                "In the order asked for, of the %s mm³ that piece %d would have%s.",
                volume(total(order[n])),
                n + 1,
                others));
      }
    }
    return out;
  }

  private long total(int piece) {
    long sum = 0;
    for (long c : cells[piece]) {
      sum += c;
    }
    return sum;
  }

  /** What other pieces take of one's share, from a share of it on. */
  private String others(int piece, double from) {
    StringBuilder out = new StringBuilder();
    for (int n = 0; n < order.length; n++) {
      long c = cells[piece][order[n]];
      if (order[n] != piece && c > from * total(piece)) {
        out.append(out.isEmpty() ? " " : ", ")
            .append("piece ")
            .append(n + 1)
            .append(" takes ")
            .append(volume(c))
            .append(" mm³");
      }
    }
    return out.toString();
  }

  private String volume(long count) {
    return String.format(Locale.ROOT, "%.0f", count * cell);
  }
}
