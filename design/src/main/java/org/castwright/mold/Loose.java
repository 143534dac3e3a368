package org.castwright.mold;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * Bodies that hang on no piece once the sheets have cut: each goes to a piece that it touches and
 * that can carry it past the casting and the pieces that are still there, if one can.
 */
final class Loose {

  /** A body that holds less is rounding, mm³. */
  private static final double CRUMB = 1e-3;

  /** Moves, mm, at which a body may not meet what stays. */
  private static final double[] STEPS = {0.2, 1, 4};

  /** It may share so much of its own volume at any move: creases. */
  private static final double SHARE = 0.1;

  /** A body with less than this share of its side's volume has fallen off. */
  private static final double SMALL = 0.02;

  /** A body that holds no more than the parts in it, up to this share, is of nothing else. */
  private static final double ALONE = 1.01;

  private final List<Solid> pieces;
  private final List<Vec3> pulls;
  private final List<Solid> cast;
  private final SolidKernel kernel;

  /** For each piece the bodies it is of at first, the largest first. */
  private final List<List<Solid>> first;

  /** For each piece what of it is loose, and with which pieces that gets past the casting. */
  private final List<Map<Solid, boolean[]>> loose = new ArrayList<>();

  /** For each part the pieces it was given to and did not hold to. */
  private final Map<Solid, Set<Integer>> refused = new HashMap<>();

  /** For each piece the bodies that stay with it. */
  private final List<List<Solid>> kept = new ArrayList<>();

  /** For each piece what it is given. */
  private final List<List<Solid>> given = new ArrayList<>();

  /** The pieces as they were joined last, and of what. */
  private List<Solid> out;

  private List<List<Solid>> of;

  private Loose(List<Solid> pieces, List<Vec3> pulls, List<Solid> cast, SolidKernel kernel) {
    this.pieces = pieces;
    this.pulls = pulls;
    this.cast = cast;
    this.kernel = kernel;
    first = pieces.parallelStream().map(kernel::decompose).toList();
    out = pieces;
    of = first;
    for (int i = 0; i < pieces.size(); i++) {
      loose.add(loose(i));
    }
  }

  /**
   * Hands on what hangs on no piece where that helps.
   *
   * @param pieces in the order they leave
   * @param pulls of the pieces
   * @param cast what all must get past: the casting, gate and vents
   */
  static List<Solid> handed(
      List<Solid> pieces, List<Vec3> pulls, List<Solid> cast, SolidKernel kernel) {
    Loose loose = new Loose(pieces, pulls, cast, kernel);
    // to join whole pieces for each part would take long: what does not hold is given anew
    do {
      loose.hand();
    } while (loose.refuses());
    return loose.out;
  }

  /** Hands on, and joins the pieces that are of something else then. */
  private void hand() {
    kept.clear();
    kept.addAll(first);
    given.clear();
    pieces.forEach(p -> given.add(new ArrayList<>()));
    for (int i = 0; i < pieces.size(); i++) {
      hand(i);
    }
    List<List<Solid>> now = IntStream.range(0, pieces.size()).mapToObj(this::all).toList();
    out =
        IntStream.range(0, pieces.size())
            .parallel()
            .mapToObj(i -> now.get(i).equals(of.get(i)) ? out.get(i) : joined(i, now.get(i)))
            .toList();
    of = now;
  }

  /**
   * Whether some parts do not hold to the pieces they were given to; they are told from then on.
   */
  private boolean refuses() {
    boolean any = false;
    for (int i = 0; i < out.size(); i++) {
      if (given.get(i).isEmpty()) {
        continue;
      }
      List<Solid> now = kernel.decompose(out.get(i));
      for (Solid body : now.subList(1, now.size())) {
        List<Solid> within = given.get(i).stream().filter(part -> mostly(part, body)).toList();
        if (body.volume() < ALONE * within.stream().mapToDouble(Solid::volume).sum()) {
          for (Solid part : within) {
            any |= refused.computeIfAbsent(part, p -> new HashSet<>()).add(i);
          }
        }
      }
    }
    return any;
  }

  private boolean mostly(Solid part, Solid body) {
    return kernel.overlap(part, Vec3.ZERO, body) > part.volume() / 2;
  }

  private Solid joined(int piece, List<Solid> of) {
    return of.size() == 1 ? of.get(0) : kernel.union(pieces.get(piece).name(), of);
  }

  private Map<Solid, boolean[]> loose(int from) {
    List<Solid> parts = first.get(from);
    List<Solid> small = new ArrayList<>();
    for (Solid part : parts.subList(Math.min(1, parts.size()), parts.size())) {
      double volume = part.volume();
      if (volume < SMALL * parts.get(0).volume() && volume >= CRUMB) {
        small.add(part);
      }
    }
    List<boolean[]> past = small.parallelStream().map(p -> pastCasting(p, from)).toList();
    Map<Solid, boolean[]> out = new LinkedHashMap<>();
    for (int k = 0; k < past.size(); k++) {
      out.put(small.get(k), past.get(k));
    }
    return out;
  }

  private void hand(int from) {
    List<Solid> gone = new ArrayList<>();
    loose
        .get(from)
        .forEach(
            (part, past) -> {
              if (given(part, from, past)) {
                gone.add(part);
              }
            });
    kept.set(from, without(kept.get(from), gone));
  }

  private static List<Solid> without(List<Solid> all, List<Solid> some) {
    return all.stream().filter(p -> !some.contains(p)).toList();
  }

  /** All a piece is of. */
  private List<Solid> all(int piece) {
    List<Solid> out = new ArrayList<>(kept.get(piece));
    out.addAll(given.get(piece));
    return out;
  }

  /** With which pieces a part of one gets past the casting. */
  private boolean[] pastCasting(Solid part, int from) {
    boolean[] out = new boolean[pieces.size()];
    for (int to = 0; to < out.length; to++) {
      out[to] = to != from && !meets(part, pulls.get(to), cast);
    }
    return out;
  }

  private boolean given(Solid part, int from, boolean[] pastCasting) {
    Set<Integer> not = refused.getOrDefault(part, Set.of());
    for (int to = 0; to < pieces.size(); to++) {
      if (pastCasting[to] && !not.contains(to) && leaves(part, from, to)) {
        given.get(to).add(part);
        return true;
      }
    }
    return false;
  }

  /** Whether a part of one piece can leave with another, and lets those leave that do before. */
  private boolean leaves(Solid part, int from, int to) {
    for (int i = to + 1; i < pieces.size(); i++) {
      if (i != from && meets(part, pulls.get(to), all(i))) {
        return false;
      }
    }
    for (int i = from; i < to; i++) {
      if (meets(part, pulls.get(i).negate(), without(all(i), List.of(part)))) {
        return false;
      }
    }
    return true;
  }

  private boolean meets(Solid part, Vec3 way, List<Solid> others) {
    for (double step : STEPS) {
      double shared = 0;
      for (Solid other : others) {
        shared += kernel.overlap(part, way.times(step), other);
      }
      if (shared > SHARE * part.volume()) {
        return true;
      }
    }
    return false;
  }
}
