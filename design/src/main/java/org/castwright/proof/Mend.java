package org.castwright.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.castwright.geom.Vec3;

/**
 * What small changes to the pieces would mend, by the names of pieces.
 *
 * @param edges places along thin edges, mm
 * @param webs places in thin webs, mm
 * @param caught pieces that are caught on what is cast, each with no places
 */
public record Mend(
    SortedMap<String, List<Vec3>> edges,
    SortedMap<String, List<Vec3>> webs,
    SortedMap<String, List<Vec3>> caught) {

  /** Nothing. */
  public static final Mend NOTHING = new Mend(new TreeMap<>(), new TreeMap<>(), new TreeMap<>());

  /** What some failed checks ask for; nothing if one asks for more than this can tell. */
  static Mend of(List<ProofCheck> failures) {
    Mend m = new Mend(new TreeMap<>(), new TreeMap<>(), new TreeMap<>());
    for (ProofCheck c : failures) {
      switch (c.cure()) {
        case NONE -> {
          return NOTHING;
        }
        case EDGES -> put(m.edges, c.body(), c.places());
        case WEBS -> put(m.webs, c.body(), c.places());
        case CATCH -> put(m.caught, c.body(), List.of());
      }
    }
    return m;
  }

  private static void put(SortedMap<String, List<Vec3>> to, String body, List<Vec3> places) {
    to.computeIfAbsent(body, b -> new ArrayList<>()).addAll(places);
  }

  /** Whether there is nothing to do. */
  public boolean isEmpty() {
    return edges.isEmpty() && webs.isEmpty() && caught.isEmpty();
  }

  /** This and more. */
  public Mend and(Mend more) {
    Mend m = new Mend(new TreeMap<>(), new TreeMap<>(), new TreeMap<>());
    for (Mend part : List.of(this, more)) {
      part.edges.forEach((b, p) -> put(m.edges, b, p));
      part.webs.forEach((b, p) -> put(m.webs, b, p));
      part.caught.forEach((b, p) -> put(m.caught, b, p));
    }
    return m;
  }
}
