package org.castwright.division;

import java.util.Collections;
import java.util.List;

/**
 * What the maker asks of a division.
 *
 * @param places for each pull the place at which its piece leaves, from 0, or -1 for any
 */
public record Asked(List<Integer> places) {

  /** Copies the list. */
  public Asked {
    places = List.copyOf(places);
  }

  /** Nothing, of so many pieces. */
  public static Asked nothing(int pieces) {
    return new Asked(Collections.nCopies(pieces, -1));
  }

  /** Whether the order of some piece is asked for. */
  boolean order() {
    return places.stream().anyMatch(p -> p >= 0);
  }
}
