package org.castwright.plan;

import org.castwright.geom.Vec3;

/**
 * The pull that the maker fixes for one piece.
 *
 * @param piece which piece, by the order of leaving, from 1
 * @param direction in the model's frame, of any length above zero
 */
public record PiecePull(int piece, Vec3 direction) {

  /** Checks both; the message says which is wrong. */
  public PiecePull {
    if (piece < 1) {
      throw new IllegalArgumentException("pieces are numbered from 1, not " + piece);
    }
    if (!(direction.length() > 0)) {
      throw new IllegalArgumentException("the pull of piece " + piece + " has no length");
    }
  }
}
