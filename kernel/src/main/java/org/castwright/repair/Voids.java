package org.castwright.repair;

import java.util.ArrayList;
import java.util.List;
import org.castwright.mesh.MeshException;

/** Finds the enclosed voids of settled shells, and fills or refuses them. */
final class Voids {

  private Voids() {}

  /**
   * Fills the voids, with whatever lies inside them.
   *
   * @return the voids filled
   * @throws MeshException if there are voids and the options do not allow filling
   */
  static List<EnclosedVoid> apply(Draft draft, Nesting nesting, RepairOptions options) {
    Shells shells = nesting.shells();
    List<EnclosedVoid> voids = new ArrayList<>();
    boolean[] kept = new boolean[shells.count()];
    double volume = 0;
    for (int s = 0; s < kept.length; s++) {
      kept[s] = shells.volume(s) > 0;
      for (int t : nesting.outer(s)) {
        kept[s] &= shells.volume(t) > 0;
      }
      if (shells.volume(s) < 0) {
        voids.add(new EnclosedVoid(-shells.volume(s), shells.box(s), shells.box(s).center()));
        volume -= shells.volume(s);
      }
    }
    if (voids.isEmpty()) {
      return voids;
    }
    if (!options.fillVoids()) {
      throw new MeshException(refusal(voids));
    }
    String words =
        Draft.many(voids.size(), "enclosed void", "enclosed voids")
            + " filled, "
            + Draft.number(volume)
            + " mm³";
    draft.replace(shells.keep(kept), new HealingStep("fill-voids", words, voids.size(), 0));
    return voids;
  }

  private static String refusal(List<EnclosedVoid> voids) {
    EnclosedVoid largest = voids.get(0);
    for (EnclosedVoid v : voids) {
      largest = v.volume() > largest.volume() ? v : largest;
    }
    return "the model has "
        + Draft.many(voids.size(), "enclosed void", "enclosed voids")
        + (voids.size() == 1 ? " of " : ", the largest of ")
        + Draft.number(largest.volume())
        + " mm³ round "
        + Draft.place(largest.center())
        + ", which a mold cannot cast because no piece reaches it: "
        + "open it to the outside in the modeling program, or use --fill-voids";
  }
}
