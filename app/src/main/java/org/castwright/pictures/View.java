package org.castwright.pictures;

import org.castwright.geom.Vec3;

/**
 * Where the eye looks. The scene is fitted to the sheet, so only directions matter.
 *
 * @param looking from the eye into the scene
 * @param up what points up on the sheet, as far as it lies across {@code looking}
 * @param perspective true for a mild perspective, false for parallel rays
 */
public record View(Vec3 looking, Vec3 up, boolean perspective) {

  /** Sine of the smallest angle between looking and up, about 0.06 degrees. */
  private static final double PARALLEL = 1e-3;

  public View {
    looking = looking.unit();
    up = up.unit();
    if (looking.cross(up).length() < PARALLEL) {
      throw new IllegalArgumentException("up must not lie along the view: " + looking);
    }
  }

  public static View perspective(Vec3 looking, Vec3 up) {
    return new View(looking, up, true);
  }

  public static View parallel(Vec3 looking, Vec3 up) {
    return new View(looking, up, false);
  }
}
