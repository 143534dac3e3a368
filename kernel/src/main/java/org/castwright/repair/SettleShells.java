package org.castwright.repair;

import org.castwright.progress.Progress;

/**
 * Puts closed shells in order: drops those that enclose nothing, turns the rest so that material is
 * inside, drops specks. A shell that lies in no other faces outward; those within it are turned
 * with it, since the way they face to it tells voids from parts.
 */
final class SettleShells {

  /**
   * A closed shell with less volume than this share of its area to the power 3/2 is a sheet folded
   * on itself; a sphere has 0.09, a sheet of 100 by 100 by 0.01 mm 3e-5.
   */
  private static final double FLAT = 1e-9;

  private SettleShells() {}

  static Nesting apply(Draft draft, RepairOptions options, Progress progress) {
    dropFlat(draft);
    Nesting nesting = turnOutward(draft, new Nesting(draft.mesh(), progress));
    return dropSpecks(draft, nesting, options, progress);
  }

  private static void dropFlat(Draft draft) {
    Shells shells = new Shells(draft.mesh());
    boolean[] kept = new boolean[shells.count()];
    int dropped = 0;
    for (int s = 0; s < kept.length; s++) {
      kept[s] = Math.abs(shells.volume(s)) > FLAT * Math.pow(shells.area(s), 1.5);
      dropped += kept[s] ? 0 : 1;
    }
    if (dropped > 0) {
      String words =
          Draft.many(dropped, "shell that encloses", "shells that enclose") + " nothing dropped";
      draft.replace(shells.keep(kept), new HealingStep("drop-flat", words, dropped, 0));
    }
  }

  private static Nesting turnOutward(Draft draft, Nesting nesting) {
    Shells shells = nesting.shells();
    boolean[] turn = new boolean[shells.count()];
    int turned = 0;
    int triangles = 0;
    for (int s = 0; s < turn.length; s++) {
      int[] outer = nesting.outer(s);
      int root = outer.length == 0 ? s : outer[outer.length - 1];
      turn[s] = shells.volume(root) < 0;
    }
    for (int s = 0; s < turn.length; s++) {
      boolean inward = (shells.volume(s) < 0) != turn[s];
      if (inward && cover(nesting, s, turn) <= 0) {
        turn[s] = !turn[s];
      }
      turned += turn[s] ? 1 : 0;
      triangles += turn[s] ? shells.triangles(s) : 0;
    }
    if (turned == 0) {
      return nesting;
    }
    String words =
        Draft.many(turned, "shell", "shells")
            + " of "
            + Draft.many(triangles, "triangle", "triangles")
            + " turned to face outward";
    draft.replace(shells.turn(turn), new HealingStep("turn-shells", words, turned, 0));
    return nesting.turned(draft.mesh());
  }

  /** How often material would cover a shell once the shells marked are turned. */
  private static int cover(Nesting nesting, int s, boolean[] turn) {
    int sum = 0;
    for (int t : nesting.outer(s)) {
      sum += (nesting.shells().volume(t) > 0) != turn[t] ? 1 : -1;
    }
    return sum;
  }

  private static Nesting dropSpecks(
      Draft draft, Nesting nesting, RepairOptions options, Progress progress) {
    Shells shells = nesting.shells();
    double limit = options.speckShare() * shells.largestVolume();
    boolean[] kept = new boolean[shells.count()];
    int dropped = 0;
    double volume = 0;
    for (int s = 0; s < kept.length; s++) {
      kept[s] = Math.abs(shells.volume(s)) >= limit || nesting.meetsAny(s);
      if (!kept[s]) {
        dropped++;
        volume += Math.abs(shells.volume(s));
      }
    }
    if (dropped == 0) {
      return nesting;
    }
    String words =
        Draft.many(dropped, "loose speck", "loose specks")
            + " or bubbles under "
            + Draft.number(limit)
            + " mm³ dropped, "
            + Draft.number(volume)
            + " mm³ in all";
    draft.replace(shells.keep(kept), new HealingStep("drop-specks", words, dropped, 0));
    return new Nesting(draft.mesh(), progress);
  }
}
