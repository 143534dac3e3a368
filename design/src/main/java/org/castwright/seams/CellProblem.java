package org.castwright.seams;

/**
 * Cells of the space round a casting, each to be given to one of k pieces that leave in the order 0
 * to k - 1. For piece i, {@code next[i][c]} is the cell after c along its pull or {@link
 * Grid#OUTSIDE}; cells of the casting itself take no part: {@code allowed[c]} is zero there, and
 * elsewhere bit i of it says that no casting lies ahead of c along pull i.
 *
 * <p>A labelling is a <em>removal order</em> if piece i, when its turn comes, moves off along its
 * pull without meeting the casting or a piece still there: whenever c has label i, bit i of {@code
 * allowed[c]} is set and every cell ahead of c along pull i has a label of at most i. (A cell ahead
 * with a smaller label has left already; one with label i moves along.)
 */
public final class CellProblem {

  final int pieces;
  final int[][] next;
  final int[] allowed;
  final long[] unary;
  final int[] from;
  final int[] to;
  final long[] weight;

  /**
   * Takes over the arrays.
   *
   * @param next for each piece the successor of each cell
   * @param allowed bits of the pieces whose way out meets no casting; 0 for cells of the casting
   * @param unary cost of piece i at cell c in {@code unary[c * k + i]}, zero or above
   * @param from one cell of each neighbor pair
   * @param to the other cell
   * @param weight cost if the two cells of the pair belong to different pieces, zero or above;
   *     ignored where one of them is casting
   */
  public CellProblem(
      int[][] next, int[] allowed, long[] unary, int[] from, int[] to, long[] weight) {
    if (unary.length != allowed.length * next.length) {
      throw new IllegalArgumentException("one cost for each cell and piece is needed");
    }
    if (from.length != to.length || from.length != weight.length) {
      throw new IllegalArgumentException("each pair needs two cells and a weight");
    }
    this.pieces = next.length;
    this.next = next;
    this.allowed = allowed;
    this.unary = unary;
    this.from = from;
    this.to = to;
    this.weight = weight;
  }

  public int cells() {
    return allowed.length;
  }

  /** Whether the cell takes part: it is not casting and some piece may take it. */
  boolean open(int cell) {
    return allowed[cell] != 0;
  }

  /** The energy of a labelling; cells of the casting count nothing. */
  public long energy(byte[] label) {
    long sum = 0;
    for (int c = 0; c < allowed.length; c++) {
      sum += open(c) ? unary[c * pieces + label[c]] : 0;
    }
    for (int e = 0; e < from.length; e++) {
      if (open(from[e]) && open(to[e]) && label[from[e]] != label[to[e]]) {
        sum += weight[e];
      }
    }
    return sum;
  }

  /** Whether the labelling is a removal order. */
  public boolean comesApart(byte[] label) {
    for (int c = 0; c < allowed.length; c++) {
      if (!open(c)) {
        continue;
      }
      int i = label[c];
      if ((allowed[c] >> i & 1) == 0) {
        return false;
      }
      for (int y = next[i][c]; y != Grid.OUTSIDE; y = next[i][y]) {
        if (open(y) && label[y] > i) {
          return false;
        }
      }
    }
    return true;
  }

  /**
   * The first piece that may take each cell: a removal order whenever one exists, since a cell
   * ahead of a free cell is free too.
   */
  public byte[] firstThatMay() {
    byte[] label = new byte[allowed.length];
    for (int c = 0; c < label.length; c++) {
      label[c] = (byte) (open(c) ? Integer.numberOfTrailingZeros(allowed[c]) : 0);
    }
    return label;
  }
}
