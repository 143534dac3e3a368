package org.castwright.survey;

import java.util.List;
import org.castwright.geom.Vec3;

/**
 * What a survey found.
 *
 * @param ranked distinct directions, best first, never empty
 * @param caught where the best direction is caught, on the full mesh
 * @param principalAxes the three principal axes of the surface, unit
 * @param directionsTried how many directions were looked along, those of the search included
 * @param simplified whether directions were searched on a simplified copy; the openings' numbers
 *     come from the full mesh all the same
 * @param simplifyBound no point of the copy lies farther than this from the model, mm; 0 without a
 *     copy
 */
public record SurveyResult(
    List<Opening> ranked,
    CaughtPlaces caught,
    List<Vec3> principalAxes,
    int directionsTried,
    boolean simplified,
    double simplifyBound) {

  /** Copies the lists. */
  public SurveyResult {
    ranked = List.copyOf(ranked);
    principalAxes = List.copyOf(principalAxes);
  }

  /** The best opening. */
  public Opening best() {
    return ranked.get(0);
  }
}
