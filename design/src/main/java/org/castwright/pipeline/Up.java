package org.castwright.pipeline;

import java.util.Locale;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;

/** Which axis of the file points up; the model is turned so that this becomes +z. */
public enum Up {
  X(Vec3.X),
  Y(Vec3.Y),
  Z(Vec3.Z),
  MINUS_X(Vec3.X.negate()),
  MINUS_Y(Vec3.Y.negate()),
  MINUS_Z(Vec3.Z.negate());

  private final Vec3 axis;

  Up(Vec3 axis) {
    this.axis = axis;
  }

  /** The axes in which the file's coordinates are read. */
  Frame frame() {
    return this == Z ? Frame.WORLD : Frame.along(axis);
  }

  /**
   * {@code x}, {@code -y} and so on.
   *
   * @throws IllegalArgumentException for anything else
   */
  public static Up of(String words) {
    String w = words.trim().toLowerCase(Locale.ROOT).replace("+", "");
    return switch (w) {
      case "x" -> X;
      case "y" -> Y;
      case "z" -> Z;
      case "-x" -> MINUS_X;
      case "-y" -> MINUS_Y;
      case "-z" -> MINUS_Z;
      default ->
          throw new IllegalArgumentException("up is x, y, z, -x, -y or -z, not '" + words + "'");
    };
  }
}
