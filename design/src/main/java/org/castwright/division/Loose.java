package org.castwright.division;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * Bodies that hang on no piece once the sheets have cut: each goes to a piece that it touches and
 * that can carry it past the casting and the pieces that are still there, if one can.
 */
public final class Loose {

  /** A body that holds less is rounding, mm³. */
  private static final double CRUMB = 1e-3;

  /** Moves, mm, at which a body may not meet what stays. */
  private static final double[] STEPS = {0.2, 1, 4};

  /** It may share so much of its own volume at any move: creases. */
  private static final double SHARE = 0.1;

  /** A body with less than this share of its side's volume has fallen off. */
  private static final double SMALL = 0.02;

  private final List<Solid> pieces;
  private final List<Vec3> pulls;
  private final List<Solid> cast;
  private final SolidKernel kernel;

  /** Whether what a piece is given is joined to it at once, and seen to hold there. */
  private final boolean joinsAtOnce;

  /** For each piece the bodies it is of, the largest first. */
  private final List<List<Solid>> bodies = new ArrayList<>();

  /** For each piece what it was given and is not joined to yet. */
  private final List<List<Solid>> given = new ArrayList<>();

  private final boolean[] changed;

  private Loose(
      List<Solid> pieces,
      List<Vec3> pulls,
      List<Solid> cast,
      SolidKernel kernel,
      boolean joinsAtOnce) {
    this.pieces = pieces;
    this.pulls = pulls;
    this.cast = cast;
    this.kernel = kernel;
    this.joinsAtOnce = joinsAtOnce;
    changed = new boolean[pieces.size()];
    for (Solid piece : pieces) {
      bodies.add(kernel.decompose(piece));
      given.add(new ArrayList<>());
    }
  }

  /**
   * Hands on what hangs on no piece where that helps.
   *
   * @param pieces in the order they leave
   * @param pulls of the pieces
   * @param cast what all must get past: the casting, gate and vents
   */
  public static List<Solid> handed(
      List<Solid> pieces, List<Vec3> pulls, List<Solid> cast, SolidKernel kernel) {
    // one boolean of a whole piece for all it is given does nearly always
    return new Loose(pieces, pulls, cast, kernel, false)
        .handed()
        .or(() -> new Loose(pieces, pulls, cast, kernel, true).handed())
        .orElseThrow();
  }

  /** The pieces, or none if one was given what does not hold to it. */
  private Optional<List<Solid>> handed() {
    for (int i = 0; i < pieces.size(); i++) {
      hand(i);
    }
    List<Solid> out =
        IntStream.range(0, pieces.size())
            .parallel()
            .mapToObj(i -> changed[i] ? joined(i, all(i)) : pieces.get(i))
            .toList();
    for (int i = 0; i < pieces.size(); i++) {
      if (!given.get(i).isEmpty() && kernel.decompose(out.get(i)).size() > bodies.get(i).size()) {
        return Optional.empty();
      }
    }
    return Optional.of(out);
  }

  private Solid joined(int piece, List<Solid> of) {
    return of.size() == 1 ? of.get(0) : kernel.union(pieces.get(piece).name(), of);
  }

  private void hand(int from) {
    List<Solid> parts = bodies.get(from);
    List<Solid> loose = new ArrayList<>();
    for (Solid part : parts.subList(Math.min(1, parts.size()), parts.size())) {
      double volume = part.volume();
      if (volume < SMALL * parts.get(0).volume() && volume >= CRUMB) {
        loose.add(part);
      }
    }
    List<boolean[]> past = loose.parallelStream().map(p -> pastCasting(p, from)).toList();
    List<Solid> gone = new ArrayList<>();
    for (int i = 0; i < loose.size(); i++) {
      if (given(loose.get(i), from, past.get(i))) {
        gone.add(loose.get(i));
      }
    }
    bodies.set(from, without(parts, gone));
    changed[from] |= !gone.isEmpty();
  }

  private static List<Solid> without(List<Solid> all, List<Solid> some) {
    return all.stream().filter(p -> !some.contains(p)).toList();
  }

  /** All a piece is of. */
  private List<Solid> all(int piece) {
    List<Solid> out = new ArrayList<>(bodies.get(piece));
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
    for (int to = 0; to < pieces.size(); to++) {
      if (pastCasting[to] && leaves(part, from, to) && holds(part, to)) {
        changed[to] = true;
        return true;
      }
    }
    return false;
  }

  /** Gives a part to a piece. */
  private boolean holds(Solid part, int to) {
    if (!joinsAtOnce) {
      given.get(to).add(part);
      return true;
    }
    List<Solid> all = all(to);
    all.add(part);
    List<Solid> now = kernel.decompose(kernel.union(pieces.get(to).name(), all));
    boolean holds = now.size() <= bodies.get(to).size();
    if (holds) {
      bodies.set(to, now);
    }
    return holds;
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
