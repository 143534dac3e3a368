package org.castwright.seams;

/**
 * One wish: a mark on a region.
 *
 * @param piece from 1, which piece forms the region, for {@link Mark#PIECE}; 0 for other marks
 */
public record Wish(Region region, Mark mark, int piece) {

  /** Checks that a piece is named exactly if the mark asks for one. */
  public Wish {
    if ((mark == Mark.PIECE) != (piece > 0)) {
      throw new IllegalArgumentException(
          "a piece number from 1 goes with the mark PIECE and with no other");
    }
  }

  public static Wish of(Region region, Mark mark) {
    return new Wish(region, mark, 0);
  }

  public static Wish piece(Region region, int piece) {
    return new Wish(region, Mark.PIECE, piece);
  }
}
