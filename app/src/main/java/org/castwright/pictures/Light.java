package org.castwright.pictures;

import org.castwright.geom.Vec3;

/**
 * Soft light that stands with the eye: a key light from the upper left, a weak fill from the right,
 * a brighter sky than ground, and a faint gleam. Values were chosen by eye.
 */
final class Light {

  private static final Vec3 KEY = new Vec3(-0.45, 0.62, 0.64).unit();
  private static final Vec3 FILL = new Vec3(0.75, 0.05, 0.55).unit();
  private static final Vec3 HALFWAY = KEY.plus(Vec3.Z).unit();
  private static final double AMBIENT = 0.36;
  private static final double SKY = 0.14;
  private static final double KEY_STRENGTH = 0.58;
  private static final double FILL_STRENGTH = 0.16;
  private static final double GLEAM = 26;

  /** Share of light and shade left on colors that carry numbers. */
  private static final double MEASURED = 0.5;

  private final Stage stage;
  private int cached = Layer.NOTHING;
  private final double[] xCoefficients = new double[3];
  private final double[] yCoefficients = new double[3];
  private final double[] constants = new double[3];

  Light(Stage stage) {
    this.stage = stage;
  }

  /** The lit color of triangle {@code t} at a sample center. */
  int rgb(int t, double x, double y) {
    if (t != cached) {
      prepare(t);
      cached = t;
    }
    double nx = constants[0] + x * xCoefficients[0] + y * yCoefficients[0];
    double ny = constants[1] + x * xCoefficients[1] + y * yCoefficients[1];
    double nz = constants[2] + x * xCoefficients[2] + y * yCoefficients[2];
    double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (!(length > 0)) {
      return stage.rgb[t];
    }
    nx /= length;
    ny /= length;
    nz /= length;
    double key = Math.max(0, nx * KEY.x() + ny * KEY.y() + nz * KEY.z());
    double fill = Math.max(0, nx * FILL.x() + ny * FILL.y() + nz * FILL.z());
    double shine = Math.max(0, nx * HALFWAY.x() + ny * HALFWAY.y() + nz * HALFWAY.z());
    double bright = AMBIENT + SKY * (0.5 + 0.5 * ny) + KEY_STRENGTH * key + FILL_STRENGTH * fill;
    if (stage.items.get(stage.item[t]).paint().measured()) {
      return Rgb.lit(stage.rgb[t], 1 + MEASURED * (bright - 1), 0);
    }
    double s2 = shine * shine;
    double s8 = s2 * s2 * s2 * s2;
    return Rgb.lit(stage.rgb[t], bright, GLEAM * s8 * s8 * s8);
  }

  /** The normal in the eye's axes as a linear function over the sheet. */
  private void prepare(int t) {
    int a = stage.tri[3 * t];
    int b = stage.tri[3 * t + 1];
    int c = stage.tri[3 * t + 2];
    double bx = stage.x[b] - stage.x[a];
    double by = stage.y[b] - stage.y[a];
    double cx = stage.x[c] - stage.x[a];
    double cy = stage.y[c] - stage.y[a];
    double area = bx * cy - cx * by;
    double side = stage.front[t] ? 1 : -1;
    for (int k = 0; k < 3; k++) {
      Vec3 axis = k == 0 ? stage.right() : k == 1 ? stage.up() : stage.toward();
      double na = side * along(axis, t, 0);
      double nb = side * along(axis, t, 1) - na;
      double nc = side * along(axis, t, 2) - na;
      xCoefficients[k] = area == 0 ? 0 : (nb * cy - nc * by) / area;
      yCoefficients[k] = area == 0 ? 0 : (nc * bx - nb * cx) / area;
      constants[k] = na - stage.x[a] * xCoefficients[k] - stage.y[a] * yCoefficients[k];
    }
  }

  private double along(Vec3 axis, int t, int corner) {
    float[] n = stage.forms[stage.item[t]].cornerNormals();
    int i = stage.cornerIndex(t) + 3 * corner;
    return axis.x() * n[i] + axis.y() * n[i + 1] + axis.z() * n[i + 2];
  }
}
