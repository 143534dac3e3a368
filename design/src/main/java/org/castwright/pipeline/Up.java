package org.castwright.pipeline;

import java.util.Locale;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;

/** Which axis of the file points up; the model is turned so that this becomes +z. */
public enum Up {
  X,
  Y,
  Z,
  MINUS_X,
  MINUS_Y,
  MINUS_Z;

  /** The axes in which the file's coordinates are read. */
  Frame frame() {
    return switch (this) {
      case X -> Frame.along(Vec3.X);
      case Y -> Frame.along(Vec3.Y);
      case Z -> Frame.WORLD;
      case MINUS_X -> Frame.along(Vec3.X.negate());
      case MINUS_Y -> Frame.along(Vec3.Y.negate());
      case MINUS_Z -> Frame.along(Vec3.Z.negate());
    };
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
