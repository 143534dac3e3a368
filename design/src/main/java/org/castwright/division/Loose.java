package org.castwright.division;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * Bodies that fall off when a sheet cuts: the sheet is moved so that what falls off the piece stays
 * with the rest, and what falls off the rest goes with the piece, if the piece can carry it past
 * the casting and the rest. Then the cut is made anew.
 */
final class Loose {

  /** A body that holds less is rounding, mm³. */
  private static final double CRUMB = 1e-3;

  /** Moves, mm, at which a body may not meet what stays. */
  private static final double[] STEPS = {0.2, 2};

  /** It may share so much of its own volume at any move: creases. */
  private static final double SHARE = 0.1;

  /** A body with less than this share of its side's volume has fallen off. */
  private static final double SMALL = 0.02;

  /** Cuts at most. */
  private static final int TRIES = 3;

  private Loose() {}

  /** Cuts with a sheet that is moved where bodies fall off. */
  static SolidKernel.Split cut(
      Solid rest, Sheet sheet, String name, Solid casting, SolidKernel kernel) {
    SolidKernel.Split cut = kernel.split(rest, kernel.solid(name, sheet.slab()));
    for (int n = 1; n < TRIES && moved(cut, sheet, casting, kernel); n++) {
      cut = kernel.split(rest, kernel.solid(name, sheet.slab()));
    }
    return cut;
  }

  private static boolean moved(
      SolidKernel.Split cut, Sheet sheet, Solid casting, SolidKernel kernel) {
    Vec3 pull = sheet.frame().w();
    List<Solid> below = kernel.decompose(cut.outside());
    boolean moved = false;
    for (Solid part : below.subList(1, below.size())) {
      boolean small = part.volume() > CRUMB && part.volume() < SMALL * below.get(0).volume();
      if (small && leaves(part, pull, casting, below.get(0), kernel)) {
        sheet.take(part.mesh());
        moved = true;
      }
    }
    List<Solid> above = kernel.decompose(cut.inside());
    for (Solid part : above.subList(Math.min(1, above.size()), above.size())) {
      if (part.volume() > CRUMB && part.volume() < SMALL * above.get(0).volume()) {
        sheet.leave(part.mesh());
        moved = true;
      }
    }
    return moved;
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
