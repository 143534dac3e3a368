package org.castwright.cover;

import java.util.List;
import org.castwright.geom.Vec3;

/**
 * A set of so many pulls that leaves little: the chosen one for its number, for the others the best
 * found by exchange, not proved best.
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
