package org.castwright.cover;

import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;

/**
 * A connected place that no chosen pull frees.
 *
 * @param center mean of its samples, mm
 * @param box round its samples, mm
 * @param caught its surface, its space and its width
 * @param facets the facets of the casting in it, ascending; the nearest one when it touches none
 */
public record CaughtRegion(Vec3 center, Box3 box, Caught caught, List<Integer> facets) {

  /** Copies the list. */
  public CaughtRegion {
    facets = List.copyOf(facets);
  }
}
