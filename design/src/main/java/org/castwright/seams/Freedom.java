package org.castwright.seams;

/**
 * What each piece may take: whether a point of the casting's surface can be left along a piece's
 * pull without meeting the casting.
 */
public interface Freedom {

  /** Number of pieces, 1 to {@link #MOST_PIECES}. */
  int pieces();

  /** Bit i is set if piece i (from 0) may take the surface at this point, mm. Thread-safe. */
  int at(double x, double y, double z);

  /** Whether one piece, from 0, may take the surface at this point, mm. Thread-safe. */
  default boolean frees(int piece, double x, double y, double z) {
    return (at(x, y, z) & 1 << piece) != 0;
  }

  /** Labels are bits of an int. */
  int MOST_PIECES = 31;
}
