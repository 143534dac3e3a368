package org.castwright.pipeline;

import java.util.List;

/**
 * Colors of the bodies in files that carry any: the palette of M. Okabe and K. Ito, "Color
 * Universal Design", 2008, as in the pictures.
 */
public final class Colors {

  private static final List<String> PIECES =
      List.of("#56B4E9", "#E69F00", "#009E73", "#CC79A7", "#F0E442", "#0072B2");

  /** Caught places: the palette's vermillion. */
  public static final String CAUGHT = "#D55E00";

  /** A gray-blue. */
  public static final String CASTING = "#AEBBC8";

  private Colors() {}

  /** The color {@code #RRGGBB} of piece {@code index}, counted from 0; after six they repeat. */
  public static String ofPiece(int index) {
    return PIECES.get(Math.floorMod(index, PIECES.size()));
  }
}
