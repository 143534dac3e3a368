package org.castwright.pictures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.castwright.pipeline.Colors;
import org.junit.jupiter.api.Test;

class ColorsTest {

  /**
   * Rows of the published table of 256 (J. R. Nuñez, C. R. Anderton, R. S. Renslow, PLoS ONE 13(7):
   * e0199239, 2018): both ends, and rows that are no anchors of ours.
   */
  private static final double[][] PUBLISHED = {
    {0, 0.000000, 0.135112, 0.304751},
    {9, 0.000000, 0.160495, 0.364534},
    {26, 0.046205, 0.203903, 0.440196},
    {31, 0.095645, 0.217643, 0.436593},
    {42, 0.165113, 0.247965, 0.428908},
    {63, 0.259740, 0.305120, 0.422810},
    {94, 0.373884, 0.389646, 0.434209},
    {127, 0.485141, 0.482451, 0.470384},
    {191, 0.732422, 0.677364, 0.425717},
    {246, 0.968469, 0.869819, 0.241310},
    {255, 0.995737, 0.909344, 0.217772},
  };

  @Test
  void filesAndPicturesShowPiecesInTheSameColors() {
    for (int i = 0; i < 8; i++) {
      assertEquals(
          String.format(Locale.ROOT, "#%06X", OkabeIto.ofPiece(i).rgb()), Colors.ofPiece(i));
    }
    assertEquals(String.format(Locale.ROOT, "#%06X", MoldPictures.CASTING), Colors.CASTING);
  }

  @Test
  void cividisFollowsThePublishedTable() {
    for (double[] row : PUBLISHED) {
      int rgb = Cividis.rgb(row[0] / 255);
      // straight lines between anchors: within two steps of 255
      assertEquals(255 * row[1], Rgb.red(rgb), 2, "red of row " + row[0]);
      assertEquals(255 * row[2], Rgb.green(rgb), 2, "green of row " + row[0]);
      assertEquals(255 * row[3], Rgb.blue(rgb), 2, "blue of row " + row[0]);
    }
  }

  @Test
  void cividisGrowsLighter() {
    double before = -1;
    for (int i = 0; i <= 255; i++) {
      int rgb = Cividis.rgb(i / 255.0);
      // luma weights of ITU-R BT.709
      double luma = 0.2126 * Rgb.red(rgb) + 0.7152 * Rgb.green(rgb) + 0.0722 * Rgb.blue(rgb);
      assertTrue(luma > before - 0.5, "darker at " + i);
      before = luma;
    }
  }

  @Test
  void scaleEndsAndNoNumber() {
    ColorScale s = new ColorScale("draft", 0, 30, "caught", OkabeIto.VERMILLION.rgb());
    // first and last row of the published cividis table, in 8 bits
    assertEquals(Rgb.of(0, 34, 78), s.rgb(0));
    assertEquals(Rgb.of(0, 34, 78), s.rgb(-5));
    assertEquals(Rgb.of(254, 232, 56), s.rgb(30));
    assertEquals(Rgb.of(254, 232, 56), s.rgb(90));
    assertEquals(OkabeIto.VERMILLION.rgb(), s.rgb(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> ColorScale.of("none", 1, 1));
  }

  @Test
  void okabeItoValues() {
    // M. Okabe, K. Ito, "Color Universal Design", 2008, table of eight colors, RGB 0 to 255
    assertEquals(Rgb.of(0, 0, 0), OkabeIto.BLACK.rgb());
    assertEquals(Rgb.of(230, 159, 0), OkabeIto.ORANGE.rgb());
    assertEquals(Rgb.of(86, 180, 233), OkabeIto.SKY_BLUE.rgb());
    assertEquals(Rgb.of(0, 158, 115), OkabeIto.BLUISH_GREEN.rgb());
    assertEquals(Rgb.of(240, 228, 66), OkabeIto.YELLOW.rgb());
    assertEquals(Rgb.of(0, 114, 178), OkabeIto.BLUE.rgb());
    assertEquals(Rgb.of(213, 94, 0), OkabeIto.VERMILLION.rgb());
    assertEquals(Rgb.of(204, 121, 167), OkabeIto.REDDISH_PURPLE.rgb());
  }

  @Test
  void noPieceIsColoredCaughtOrInk() {
    for (int i = 0; i < 20; i++) {
      OkabeIto c = OkabeIto.ofPiece(i);
      assertTrue(c != OkabeIto.VERMILLION && c != OkabeIto.BLACK);
      assertTrue(c != OkabeIto.ofPiece(i + 1), "neighbors look alike");
    }
  }

  @Test
  void roundTicks() {
    assertEquals(List.of(0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0), Ticks.of(0, 30));
    assertEquals("0.05", Ticks.label(0.05, 0.05));
    assertEquals("20", Ticks.label(20, 5));
  }
}
