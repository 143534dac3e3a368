package org.castwright.demo;

import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;

/**
 * A round medallion 70 mm across with raised rings and a low dome, flat underneath. Every wall
 * leans by 12 degrees or more, so it opens along z with its flat back on the seam.
 */
public final class Medallion {

  private static final int SIDES = 180;

  /** Radius and height, mm, from the back to the top. */
  private static final double[] PROFILE = {
    35, 0, 34.4, 2.6, 34.0, 3.4, 33.2, 4.0, 30.2, 4.0, 29.6, 3.6, 29.0, 2.4, 24.6, 2.4, 24.1, 3.6,
    23.5, 3.9, 21.5, 3.9, 20.9, 3.6, 20.4, 2.4, 17.0, 2.5, 14.5, 3.1, 11.5, 4.1, 8.0, 5.0, 4.0,
    5.55, 0, 5.7,
  };

  private Medallion() {}

  /** The closed mesh, about 7,000 facets, back on z = 0, mm. */
  public static TriMesh mesh() {
    return Primitives.revolve(PROFILE, SIDES);
  }
}
