package org.castwright.division;

import java.util.Collections;
import java.util.List;
import java.util.function.ToIntFunction;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.seams.Wishes;

/**
 * What the maker asks of a division.
 *
 * @param places for each pull the place at which its piece leaves, from 0, or -1 for any
 * @param model the casting without gate and vents, whose surface is wished for; null if none is
 * @param wishes in its frame; a piece asked for by number is the one that leaves at that place
 * @param taker the pull whose piece is to have a place of the mold's space, or -1
 */
public record Asked(List<Integer> places, TriMesh model, Wishes wishes, ToIntFunction<Vec3> taker) {

  /** With nothing reserved. */
  public Asked(List<Integer> places, TriMesh model, Wishes wishes) {
    this(places, model, wishes, p -> -1);
  }

  /** Checks that wishes speak of a model. */
  public Asked {
    places = List.copyOf(places);
    if (model == null && !wishes.all().isEmpty()) {
      throw new IllegalArgumentException("wishes need the model they speak of");
    }
  }

  /** Nothing, of so many pieces. */
  public static Asked nothing(int pieces) {
    return new Asked(Collections.nCopies(pieces, -1), null, Wishes.NONE);
  }

  /** The same with other places. */
  Asked with(List<Integer> other) {
    return new Asked(other, model, wishes, taker);
  }

  /** Whether the order of some piece is asked for. */
  boolean order() {
    return places.stream().anyMatch(p -> p >= 0);
  }
}
