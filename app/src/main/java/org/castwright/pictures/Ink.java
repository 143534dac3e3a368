package org.castwright.pictures;

import java.util.Arrays;
import org.castwright.geom.Vec3;

/** Draws the dark lines of a layer, silhouettes and creases, and the colored lines of a scene. */
final class Ink {

  /** Rows a strip must know beyond its own, for the widest line and its neighbors. */
  static final int REACH = (int) (Camera.SAMPLES * Polyline.MAX_WIDTH / 2) + 3;

  /** A jump in depth of this many samples (4 pixels) makes a silhouette inside an item. */
  private static final float JUMP = 8;

  /**
   * And it must exceed the gentler slope of the two by this factor, which a steep wall does not.
   */
  private static final float STEEPER = 2.5f;

  /** Lines lie on surfaces: this many samples behind still counts as visible. */
  private static final float BIAS = 3;

  /** Radius of a crease in samples: a line 1.2 pixels wide. */
  private static final double CREASE_RADIUS = 1.2;

  private static final float RIM = 0.85f;
  private static final float JOINT = 0.7f;
  private static final float CREASE = 0.7f;

  /** Distance between the dots that make a line, samples. */
  private static final double STEP = 0.7;

  private final Stage stage;
  private final int width;
  private final float[] lineAlpha;
  private final int[] lineRgb;
  private float[] inkBuffer;

  Ink(Stage stage, int width, int rows) {
    this.stage = stage;
    this.width = width;
    lineAlpha = new float[width * rows];
    lineRgb = new int[width * rows];
  }

  void clear() {
    Arrays.fill(lineAlpha, 0);
  }

  float lineAlpha(int i) {
    return lineAlpha[i];
  }

  int lineRgb(int i) {
    return lineRgb[i];
  }

  /** Inks samples on either side of a jump in depth or of a joint between two items. */
  void silhouettes(Layer layer) {
    for (int row = 0; row + 1 < layer.rows; row++) {
      int base = row * width;
      for (int i = 0; i + 1 < width; i++) {
        compare(layer, base + i, base + i + 1, true);
        compare(layer, base + i, base + i + width, false);
      }
    }
  }

  private void compare(Layer l, int p, int q, boolean beside) {
    int s = l.triangle[p];
    int t = l.triangle[q];
    if (s == t) {
      return;
    }
    if (s == Layer.NOTHING || t == Layer.NOTHING) {
      darken(l, p, RIM);
      darken(l, q, RIM);
      return;
    }
    float gap = l.depth[q] - l.depth[p];
    float[] slopes = beside ? stage.slopeX : stage.slopeY;
    float slope = Math.min(Math.abs(slopes[s]), Math.abs(slopes[t]));
    if (Math.abs(gap) > JUMP + STEEPER * slope) {
      darken(l, p, RIM);
      darken(l, q, RIM);
    } else if (stage.item[s] != stage.item[t]) {
      darken(l, p, JOINT);
      darken(l, q, JOINT);
    }
  }

  private static void darken(Layer l, int i, float amount) {
    l.ink[i] = Math.max(l.ink[i], amount);
  }

  void creases(Layer layer, int item) {
    inkBuffer = layer.ink;
    int[] c = stage.forms[item].creases();
    int v0 = stage.firstVertex[item];
    int t0 = stage.firstTriangle[item];
    for (int i = 0; i < c.length; i += 4) {
      if (!stage.front[t0 + c[i + 2]] && !stage.front[t0 + c[i + 3]]) {
        continue;
      }
      int a = v0 + c[i];
      int b = v0 + c[i + 1];
      if (reaches(layer, stage.y[a], stage.y[b], CREASE_RADIUS)) {
        crease(layer, a, b);
      }
    }
  }

  private static boolean reaches(Layer l, double ya, double yb, double radius) {
    return Math.max(ya, yb) + radius > l.top() && Math.min(ya, yb) - radius < l.top() + l.rows;
  }

  private void crease(Layer l, int a, int b) {
    double[] from = {stage.x[a], stage.y[a], stage.z[a]};
    double[] to = {stage.x[b], stage.y[b], stage.z[b]};
    walk(l, from, to, (x, y) -> stamp(l, x, y, CREASE_RADIUS, (i, cover) -> inkAt(i, cover)));
  }

  private void inkAt(int i, float cover) {
    inkBuffer[i] = Math.max(inkBuffer[i], CREASE * cover);
  }

  /** Draws a colored line where the layer does not hide it. */
  void polyline(Layer l, Polyline line) {
    double[] from = new double[3];
    double[] to = new double[3];
    double radius = Camera.SAMPLES * line.widthPx() / 2;
    int rgb = line.rgb();
    for (int i = 0; i + 3 < line.xyz().length; i += 3) {
      stage.camera.project(line.xyz(), i, Vec3.ZERO, from);
      stage.camera.project(line.xyz(), i + 3, Vec3.ZERO, to);
      if (reaches(l, from[1], to[1], radius)) {
        walk(l, from, to, (x, y) -> stamp(l, x, y, radius, (at, cover) -> lineAt(at, cover, rgb)));
      }
    }
  }

  private void lineAt(int i, float cover, int rgb) {
    if (cover >= lineAlpha[i]) {
      lineAlpha[i] = cover;
      lineRgb[i] = rgb;
    }
  }

  /** Visits dots along a line, the same ones for every strip, and keeps those in sight. */
  private void walk(Layer l, double[] from, double[] to, Dot dot) {
    double length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    int steps = Math.max(1, (int) Math.ceil(length / STEP));
    for (int k = 0; k <= steps; k++) {
      double t = (double) k / steps;
      double x = from[0] + t * (to[0] - from[0]);
      double y = from[1] + t * (to[1] - from[1]);
      if (visible(l, x, y, from[2] + t * (to[2] - from[2]))) {
        dot.at(x, y);
      }
    }
  }

  /** In sight if some sample close by is not nearer than the line. */
  private boolean visible(Layer l, double x, double y, double z) {
    int cx = (int) Math.floor(x);
    int cy = (int) Math.floor(y) - l.top();
    for (int row = Math.max(0, cy - 1); row <= Math.min(l.rows - 1, cy + 1); row++) {
      for (int i = Math.max(0, cx - 1); i <= Math.min(width - 1, cx + 1); i++) {
        if (l.depth[row * width + i] + BIAS >= z) {
          return true;
        }
      }
    }
    return false;
  }

  private void stamp(Layer l, double x, double y, double radius, Touch touch) {
    int r = (int) Math.ceil(radius + 0.5);
    int cx = (int) Math.floor(x);
    int cy = (int) Math.floor(y) - l.top();
    for (int row = Math.max(0, cy - r); row <= Math.min(l.rows - 1, cy + r); row++) {
      for (int i = Math.max(0, cx - r); i <= Math.min(width - 1, cx + r); i++) {
        double dx = i + 0.5 - x;
        double dy = row + l.top() + 0.5 - y;
        double d = Math.sqrt(dx * dx + dy * dy);
        double cover = Math.min(1, radius + 0.5 - d);
        if (cover > 0) {
          touch.at(row * width + i, (float) cover);
        }
      }
    }
  }

  private interface Dot {
    void at(double x, double y);
  }

  private interface Touch {
    void at(int index, float cover);
  }
}
