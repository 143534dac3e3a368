package org.castwright.pictures;

/** The frame of a sheet that scene and words share, pixels. */
record Margins(int width, int height, int left, int top, int right, int bottom) {

  static final int EDGE = 36;
  static final int CAPTION = 76;
  static final int SCALE_BAR = 150;
  static final int LEGEND_LINE = 30;

  /** Slim margins are this part of the shorter side. */
  private static final int SLIM_SHARE = 40;

  static Margins of(Scene scene, PictureOptions options) {
    int top = EDGE + LEGEND_LINE * Math.min(1, scene.legend().size());
    int right = scene.scale().isPresent() ? SCALE_BAR : EDGE;
    int bottom = scene.caption().isEmpty() ? EDGE : CAPTION;
    return new Margins(options.width(), options.height(), EDGE, top, right, bottom);
  }

  /** Hardly any, for pictures whose words stand outside. */
  static Margins slim(PictureOptions options) {
    int edge = Math.min(options.width(), options.height()) / SLIM_SHARE;
    return new Margins(options.width(), options.height(), edge, edge, edge, edge);
  }

  int freeWidth() {
    return width - left - right;
  }

  int freeHeight() {
    return height - top - bottom;
  }
}
