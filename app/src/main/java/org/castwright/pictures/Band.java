package org.castwright.pictures;

import java.util.ArrayList;
import java.util.List;

/**
 * Draws one strip of the sheet after another into the finished pixels. A strip depends only on the
 * stage, never on other strips: it draws a few rows more than it delivers, so that lines meet.
 */
final class Band {

  static final int PIXEL_ROWS = 48;
  static final int PAPER = Rgb.of(250, 250, 248);
  static final int INK = Rgb.of(28, 30, 34);

  private static final int SAMPLE_ROWS = PIXEL_ROWS * Camera.SAMPLES;

  /** Ink on a translucent item is this much of what it is on a solid one. */
  private static final double FAINT = 0.55;

  private final Stage stage;
  private final Scene scene;
  private final int[] pixels;
  private final int width;
  private final int pixelRows;
  private final Layer solid;
  private final List<Layer> sheer = new ArrayList<>();
  private final List<Integer> sheerItems = new ArrayList<>();
  private final int[] order;
  private final Ink ink;
  private final Light light;

  Band(Stage stage, Scene scene, PictureOptions options, int[] pixels) {
    this.stage = stage;
    this.scene = scene;
    this.pixels = pixels;
    width = options.width() * Camera.SAMPLES;
    pixelRows = options.height();
    int rows = SAMPLE_ROWS + 2 * Ink.REACH;
    solid = new Layer(width, rows);
    for (int i = 0; i < stage.items.size(); i++) {
      if (!stage.items.get(i).solid()) {
        sheer.add(new Layer(width, rows));
        sheerItems.add(i);
      }
    }
    order = new int[sheer.size()];
    ink = new Ink(stage, width, rows);
    light = new Light(stage);
  }

  static int count(PictureOptions options) {
    return (options.height() + PIXEL_ROWS - 1) / PIXEL_ROWS;
  }

  void draw(int band) {
    int top = band * SAMPLE_ROWS - Ink.REACH;
    drawSolid(top);
    for (int k = 0; k < sheer.size(); k++) {
      Layer l = sheer.get(k);
      l.clear(top);
      l.draw(stage, sheerItems.get(k));
      ink.silhouettes(l);
      ink.creases(l, sheerItems.get(k));
    }
    int from = band * PIXEL_ROWS;
    int to = Math.min(from + PIXEL_ROWS, pixelRows);
    for (int row = from; row < to; row++) {
      for (int i = 0; i < width / Camera.SAMPLES; i++) {
        pixels[row * (width / Camera.SAMPLES) + i] = pixel(row, i);
      }
    }
  }

  private void drawSolid(int top) {
    solid.clear(top);
    ink.clear();
    for (int i = 0; i < stage.items.size(); i++) {
      if (stage.items.get(i).solid()) {
        solid.draw(stage, i);
      }
    }
    ink.silhouettes(solid);
    for (int i = 0; i < stage.items.size(); i++) {
      if (stage.items.get(i).solid()) {
        ink.creases(solid, i);
      }
    }
    for (Polyline line : scene.lines()) {
      ink.polyline(solid, line);
    }
  }

  private int pixel(int row, int column) {
    int red = 0;
    int green = 0;
    int blue = 0;
    for (int j = 0; j < Camera.SAMPLES; j++) {
      for (int i = 0; i < Camera.SAMPLES; i++) {
        int c = sample(row * Camera.SAMPLES + j, column * Camera.SAMPLES + i);
        red += Rgb.red(c);
        green += Rgb.green(c);
        blue += Rgb.blue(c);
      }
    }
    int n = Camera.SAMPLES * Camera.SAMPLES;
    return Rgb.of((red + n / 2) / n, (green + n / 2) / n, (blue + n / 2) / n);
  }

  private int sample(int row, int column) {
    int i = (row - solid.top()) * width + column;
    int t = solid.triangle[i];
    int rgb = t == Layer.NOTHING ? PAPER : light.rgb(t, column + 0.5, row + 0.5);
    rgb = solid.ink[i] > 0 ? Rgb.mix(rgb, INK, solid.ink[i]) : rgb;
    if (!sheer.isEmpty()) {
      rgb = tint(rgb, i, row, column);
    }
    float line = ink.lineAlpha(i);
    return line > 0 ? Rgb.mix(rgb, ink.lineRgb(i), line) : rgb;
  }

  /** Lays the translucent surfaces before the solid one over it, the farthest first. */
  private int tint(int behind, int i, int row, int column) {
    int n = 0;
    for (int k = 0; k < sheer.size(); k++) {
      float z = sheer.get(k).depth[i];
      if (z < solid.depth[i]) {
        int at = n++;
        while (at > 0 && sheer.get(order[at - 1]).depth[i] < z) {
          order[at] = order[at - 1];
          at--;
        }
        order[at] = k;
      }
    }
    int rgb = behind;
    for (int k = 0; k < n; k++) {
      Layer l = sheer.get(order[k]);
      int t = l.triangle[i];
      double opacity = stage.items.get(stage.item[t]).opacity();
      rgb = Rgb.mix(rgb, light.rgb(t, column + 0.5, row + 0.5), opacity);
      rgb = l.ink[i] > 0 ? Rgb.mix(rgb, INK, FAINT * l.ink[i]) : rgb;
    }
    return rgb;
  }
}
