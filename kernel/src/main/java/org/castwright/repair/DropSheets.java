package org.castwright.repair;

import org.castwright.mesh.TriMesh;

/**
 * Drops loose sheets: small pieces that were open and of which the patches that closed them make up
 * about half. They are strips of surface written a second time, not bodies.
 */
final class DropSheets {

  /**
   * The share of patch from which a piece is a sheet: a flat sheet has a half, a cap closed over
   * its rim less the higher it is, 0.48 at 0.29 of its radius.
   */
  private static final double PATCH_SHARE = 0.48;

  /** Only pieces with less than this share of the area of the largest piece are dropped. */
  private static final double SMALL = 0.01;

  private DropSheets() {}

  /**
   * @param firstPatch the first triangle that closes a hole; those before came with the model
   */
  static void apply(Draft draft, int firstPatch) {
    TriMesh mesh = draft.mesh();
    Shells shells = new Shells(mesh);
    double[] patch = new double[shells.count()];
    for (int f = firstPatch; f < mesh.triangleCount(); f++) {
      patch[shells.labels()[f]] += mesh.areaVector(f).length();
    }
    double largest = 0;
    for (int s = 0; s < patch.length; s++) {
      largest = Math.max(largest, shells.area(s));
    }
    boolean[] kept = new boolean[patch.length];
    int dropped = 0;
    double area = 0;
    for (int s = 0; s < kept.length; s++) {
      kept[s] = patch[s] < PATCH_SHARE * shells.area(s) || shells.area(s) > SMALL * largest;
      if (!kept[s]) {
        dropped++;
        area += shells.area(s) - patch[s];
      }
    }
    if (dropped > 0) {
      String words =
          Draft.many(dropped, "loose sheet", "loose sheets")
              + " of no thickness dropped, "
              + Draft.number(area)
              + " mm²";
      draft.replace(shells.keep(kept), new HealingStep("drop-sheets", words, dropped, 0));
    }
  }
}
