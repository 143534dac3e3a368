package org.castwright.plan;

import org.castwright.geom.Vec3;

/**
 * One key: a bump on piece 2 that enters a socket in piece 1 along +z.
 *
 * @param name for the report
 * @param shape its form
 * @param center on the sheet, mold frame
 * @param radius at the sheet, mm
 * @param height above the sheet, mm
 * @param clearance between key and socket, normal to the surface, mm
 */
public record Key(
    String name, KeyShape shape, Vec3 center, double radius, double height, double clearance) {

  /** Draft of a cone key from the pull, degrees; common practice gives keys 10 to 30. */
  public static final double DRAFT_DEG = 15;
}
