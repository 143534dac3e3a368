package org.castwright.division;

import java.util.ArrayList;
import java.util.List;
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
  private final Solid casting;
  private final SolidKernel kernel;

  private Loose(List<Solid> pieces, List<Vec3> pulls, Solid casting, SolidKernel kernel) {
    this.pieces = new ArrayList<>(pieces);
    this.pulls = pulls;
    this.casting = casting;
    this.kernel = kernel;
  }

  /**
   * Hands on what hangs on no piece where that helps.
   *
   * @param pieces in the order they leave
   * @param pulls of the pieces
   * @param casting what all must get past, with gate and vents
   */
  public static List<Solid> handed(
      List<Solid> pieces, List<Vec3> pulls, Solid casting, SolidKernel kernel) {
    Loose loose = new Loose(pieces, pulls, casting, kernel);
    for (int i = 0; i < pieces.size(); i++) {
      loose.hand(i);
    }
    return List.copyOf(loose.pieces);
  }

  private void hand(int from) {
    List<Solid> parts = kernel.decompose(pieces.get(from));
    List<Solid> kept = new ArrayList<>();
    for (Solid part : parts) {
      boolean small = !kept.isEmpty() && part.volume() < SMALL * parts.get(0).volume();
      if (!small || part.volume() < CRUMB || !given(part, from)) {
        kept.add(part);
      }
    }
    if (kept.size() < parts.size()) {
      String name = pieces.get(from).name();
      pieces.set(from, kept.size() == 1 ? kept.get(0) : kernel.union(name, kept));
    }
  }

  private boolean given(Solid part, int from) {
    for (int to = 0; to < pieces.size(); to++) {
      if (to != from && leaves(part, from, to)) {
        Solid joined = kernel.union(pieces.get(to).name(), List.of(pieces.get(to), part));
        if (kernel.decompose(joined).size() <= kernel.decompose(pieces.get(to)).size()) {
          pieces.set(to, joined);
          return true;
        }
      }
    }
    return false;
  }

  /** Whether a part of one piece can leave with another, and lets those leave that do before. */
  private boolean leaves(Solid part, int from, int to) {
    if (meets(part, pulls.get(to), casting)) {
      return false;
    }
    for (int i = to + 1; i < pieces.size(); i++) {
      if (i != from && meets(part, pulls.get(to), pieces.get(i))) {
        return false;
      }
    }
    for (int i = from; i < to; i++) {
      if (meets(part, pulls.get(i).negate(), pieces.get(i))) {
        return false;
      }
    }
    return true;
  }

  private boolean meets(Solid part, Vec3 way, Solid other) {
    for (double step : STEPS) {
      if (kernel.overlap(part, way.times(step), other) > SHARE * part.volume()) {
        return true;
      }
    }
    return false;
  }
}
