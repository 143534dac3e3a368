package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.material.Materials;
import org.castwright.mesh.Primitives;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.MoldPlan;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

/** Scale for shrink: worked figures, computed from the definition and from shrink rules. */
class ShrinkTest {

  private static double scale(double percent) {
    return Material.scaleFactor(percent);
  }

  /**
   * A print that loses 0.3 %, silicone cast in it 0.1 %, resin cast in that 0.5 %: the master is
   * made 1.009058 times as large. 1 / (0.997 · 0.999 · 0.995), computed.
   */
  @Test
  void threeShrinksInARow() {
    assertEquals(1.009058, scale(0.3) * scale(0.1) * scale(0.5), 5e-7);
  }

  /** Gypsum that grows 0.2 %, then slip that shrinks 12 %: 1 / (1.002 · 0.88), computed. */
  @Test
  void growthThenShrink() {
    assertEquals(1.134095, scale(-0.2) * scale(12), 5e-7);
  }

  /**
   * A bar of 100 mm with 2 % of shrink needs a cavity of 102.0408 mm, 0.041 mm longer than 2 % on
   * top would make it; and a casting from it ends at 100 mm.
   */
  @Test
  void twoPercentIsNotTwoPercentOnTop() {
    Box3 cavity = cavity(new Vec3(100, 30, 20), new Vec3(2, 2, 2));
    assertEquals(102.0408, cavity.longestSide(), 6e-5);
    assertEquals(0.041, cavity.longestSide() - 102, 5e-4);
    assertEquals(100, 0.98 * cavity.longestSide(), 2e-5);
  }

  /**
   * A shrink rule adds to the casting: 1/8 in a foot makes a pattern of 12 1/8 in for 12 in of
   * iron, the factor 1.010417 (shrink-rule page quoting a rule inventory). As a share of the
   * pattern, by which this program counts, that is 1/97.
   */
  @Test
  void eighthOfAnInchInTheFoot() {
    double inch = 25.4;
    double shrink = 100 * (1 / 8.0) / (12 + 1 / 8.0);
    assertEquals(1.010417, scale(shrink), 5e-7);
    Box3 cavity = cavity(new Vec3(30, 12 * inch, 20), new Vec3(0, shrink, 0));
    assertEquals(12.125 * inch, cavity.longestSide(), 1e-4);
    Vec3 size = cavity.size();
    double least = Math.min(size.x(), Math.min(size.y(), size.z()));
    assertEquals(20, least, 1e-5);
  }

  /** Shrink rules in inches a foot and what they add to the casting, percent: divided by 12. */
  @Test
  void shrinkRules() {
    double[] perFoot = {1 / 12.0, 1 / 8.0, 5 / 32.0, 3 / 16.0, 7 / 32.0, 1 / 4.0, 5 / 16.0};
    double[] percent = {0.694, 1.042, 1.302, 1.563, 1.823, 2.083, 2.604};
    for (int i = 0; i < perFoot.length; i++) {
      double ofPattern = 100 * perFoot[i] / (12 + perFoot[i]);
      assertEquals(percent[i], 100 * (scale(ofPattern) - 1), 5e-4);
    }
  }

  /**
   * Water of 999.8 kg/m³ becomes ice of 917 (steam tables): 9.03 % more volume, 2.92 % more length,
   * evenly. A mold for ice is smaller than the model by that.
   */
  @Test
  void iceGrows() {
    Material ice = Materials.of("ice");
    double length = Math.cbrt(999.8 / 917);
    assertEquals(1.0903, length * length * length, 5e-5);
    assertEquals(1 / length, ice.scaleFactor(), 5e-5);
  }

  /**
   * Volume shrink to linear shrink, 1 - (1 - s)^(1/3), computed: a cube scaled for the linear
   * figure loses just the volume when it sets.
   */
  @Test
  void volumeToLength() {
    double[] volume = {2, 3, 5, 7, 8, 10, 12, 15};
    double[] linear = {0.671, 1.010, 1.695, 2.390, 2.741, 3.451, 4.172, 5.273};
    for (int i = 0; i < volume.length; i++) {
      double left = Math.pow(scale(linear[i]), 3) * (1 - volume[i] / 100);
      assertEquals(1, left, 2e-5, volume[i] + " %");
    }
  }

  private static Box3 cavity(Vec3 size, Vec3 shrinkPercent) {
    MoldOptions o = MoldOptions.DEFAULT.with().shrinkPercent(shrinkPercent).pull(Vec3.Z).build();
    MoldPlan plan = MoldPlan.of(Primitives.box(Vec3.ZERO, size), o, Workshop.KERNEL, Progress.NONE);
    assertTrue(plan.survey().best().free());
    return plan.casting().bounds();
  }
}
