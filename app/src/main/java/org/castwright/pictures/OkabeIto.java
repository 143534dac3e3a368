package org.castwright.pictures;

/**
 * Eight colors that people with any color vision tell apart. Source: M. Okabe and K. Ito, "Color
 * Universal Design (CUD): how to make figures and presentations that are friendly to colorblind
 * people", 2008, https://jfly.uni-koeln.de/color/.
 */
public enum OkabeIto {
  BLACK(0, 0, 0),
  ORANGE(230, 159, 0),
  SKY_BLUE(86, 180, 233),
  BLUISH_GREEN(0, 158, 115),
  YELLOW(240, 228, 66),
  BLUE(0, 114, 178),
  VERMILLION(213, 94, 0),
  REDDISH_PURPLE(204, 121, 167);

  /** Vermillion means "caught" everywhere and black is ink, so neither colors a piece. */
  private static final OkabeIto[] PIECES = {
    SKY_BLUE, ORANGE, BLUISH_GREEN, REDDISH_PURPLE, YELLOW, BLUE
  };

  private final int rgb;

  OkabeIto(int red, int green, int blue) {
    this.rgb = Rgb.of(red, green, blue);
  }

  /** The color as {@code 0xRRGGBB}. */
  public int rgb() {
    return rgb;
  }

  /** The color of piece {@code index}, counted from 0; after six the colors repeat. */
  public static OkabeIto ofPiece(int index) {
    return PIECES[Math.floorMod(index, PIECES.length)];
  }
}
