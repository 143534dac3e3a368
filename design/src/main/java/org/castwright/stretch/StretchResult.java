package org.castwright.stretch;

import java.util.List;

/**
 * The caught places of a casting.
 *
 * @param places largest strain first
 * @param placeOfFacet for each facet of the casting the index of the place that it borders, or −1
 * @param limit the strain allowed
 * @param resolution widths are right to about this, mm
 */
@SuppressWarnings("ArrayRecordComponent") // an index into the places, never compared
public record StretchResult(
    List<StretchPlace> places, int[] placeOfFacet, double limit, double resolution) {

  public StretchResult {
    places = List.copyOf(places);
  }

  /** Whether every place passes by stretching: the pulls then open the mold. */
  public boolean opens() {
    return places.stream().allMatch(StretchPlace::allowed);
  }
}
