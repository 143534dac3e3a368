package org.castwright.survey;

import org.castwright.geom.Vec3;

/**
 * A pull direction, up to sign, on trial.
 *
 * @param direction unit vector
 * @param origin where it comes from
 * @param trapped trapped volume, mm³
 * @param cost secondary measure of a seam along it, lower is better; see {@link Outline}
 */
record Candidate(Vec3 direction, Origin origin, double trapped, double cost) {

  /** Where a direction comes from; earlier ones are cleaner and win over neighbors. */
  enum Origin {
    WORLD_AXIS,
    LARGE_FACET,
    PRINCIPAL_AXIS,
    SPREAD,
    SEARCH;

    /** Whether the direction means something to the model or its maker. */
    boolean clean() {
      return compareTo(PRINCIPAL_AXIS) <= 0;
    }

    /** Whether the direction is known to the last digit, so that nothing close by can be better. */
    boolean exact() {
      return compareTo(LARGE_FACET) <= 0;
    }
  }

  Candidate scored(double newTrapped, double newCost) {
    return new Candidate(direction, origin, newTrapped, newCost);
  }

  /** The angle to another direction, sign ignored, degrees 0 to 90. */
  double degreesTo(Candidate o) {
    double sine = direction.cross(o.direction).length();
    return Math.toDegrees(StrictMath.asin(Math.min(1, sine)));
  }
}
