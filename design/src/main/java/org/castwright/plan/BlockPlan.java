package org.castwright.plan;

import org.castwright.parting.BlockBox;
import org.locationtech.jts.geom.Polygon;

/**
 * The outside of the mold: a prism along the pull.
 *
 * @param shape what was asked
 * @param outline seen along the pull, inside {@code box}, mold frame
 * @param box the box round it; heights of the prism
 * @param wallMm wall round the casting by the rule or as asked
 */
public record BlockPlan(BlockShape shape, Polygon outline, BlockBox box, double wallMm) {

  /** mm³. */
  public double volume() {
    return outline.getArea() * (box.z1() - box.z0());
  }
}
