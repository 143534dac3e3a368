package org.castwright.cover;

import java.util.List;
import org.castwright.geom.Vec3;

/**
 * The best set of so many pulls that was found, not proved best.
 *
 * @param pulls how many
 * @param directions the set, unit vectors
 * @param left what stays caught
 * @param opens whether that keeps the tolerance
 */
public record CurvePoint(int pulls, List<Vec3> directions, Caught left, boolean opens) {

  /** Copies the list. */
  public CurvePoint {
    directions = List.copyOf(directions);
  }
}
