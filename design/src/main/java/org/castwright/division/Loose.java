package org.castwright.division;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * Bodies that fall off when a sheet cuts. What falls off the piece stays with the rest; what falls
 * off the rest goes with the piece if the piece can carry it past the casting and the rest.
 */
final class Loose {

  /** A body that holds less is rounding, mm³. */
  private static final double CRUMB = 1e-3;

  /** Moves, mm, at which a body may not meet what stays. */
  private static final double[] STEPS = {0.2, 2};

  /** It may share so much of its own volume at any move: creases. */
  private static final double SHARE = 0.1;

  private Loose() {}

  /** A piece and what is left of the mold. */
  record Two(Solid piece, Solid rest) {}

  static Two settled(SolidKernel.Split cut, Vec3 pull, Solid casting, SolidKernel kernel) {
    List<Solid> a = kernel.decompose(cut.inside());
    List<Solid> b = kernel.decompose(cut.outside());
    if (a.size() <= 1 && b.size() <= 1) {
      return new Two(cut.inside(), cut.outside());
    }
    List<Solid> piece = new ArrayList<>(a.subList(0, Math.min(1, a.size())));
    List<Solid> rest = new ArrayList<>(b.subList(0, 1));
    for (Solid part : b.subList(1, b.size())) {
      if (part.volume() > CRUMB) {
        (leaves(part, pull, casting, b.get(0), kernel) ? piece : rest).add(part);
      }
    }
    for (Solid part : a.subList(Math.min(1, a.size()), a.size())) {
      if (part.volume() > CRUMB) {
        rest.add(part);
      }
    }
    return new Two(joined(piece, cut.inside(), kernel), joined(rest, cut.outside(), kernel));
  }

  private static Solid joined(List<Solid> parts, Solid whole, SolidKernel kernel) {
    return parts.size() == 1 ? parts.get(0) : kernel.union(whole.name(), parts);
  }

  private static boolean leaves(
      Solid part, Vec3 pull, Solid casting, Solid rest, SolidKernel kernel) {
    for (double step : STEPS) {
      Vec3 shift = pull.times(step);
      double shared = kernel.overlap(part, shift, casting) + kernel.overlap(part, shift, rest);
      if (shared > SHARE * part.volume()) {
        return false;
      }
    }
    return true;
  }
}
