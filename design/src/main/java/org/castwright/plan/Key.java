package org.castwright.plan;

import org.castwright.geom.Vec3;

/**
 * One key: a bump on one piece in a socket of another, along the pull of that of the two which
 * leaves first.
 *
 * @param name for the report
 * @param shape its form
 * @param center on the sheet, mold frame
 * @param axis unit direction from its foot to its tip, along that pull or against it
 * @param radius at the sheet, mm
 * @param height above the sheet, mm
 * @param clearance between key and socket, normal to the surface, mm
 * @param keyPiece order of the piece that carries it, from 1
 * @param socketPiece order of the piece with its socket, from 1
 */
public record Key(
    String name,
    KeyShape shape,
    Vec3 center,
    Vec3 axis,
    double radius,
    double height,
    double clearance,
    int keyPiece,
    int socketPiece) {

  /** Draft of a cone key from the pull, degrees; common practice gives keys 10 to 30. */
  public static final double DRAFT_DEG = 15;

  /** A key of a two-part mold: on piece 2, into piece 1 along +z. */
  public Key(
      String name, KeyShape shape, Vec3 center, double radius, double height, double clearance) {
    this(name, shape, center, Vec3.Z, radius, height, clearance, 2, 1);
  }

  /** The same key between other pieces. */
  Key between(int carrier, int other) {
    return new Key(name, shape, center, axis, radius, height, clearance, carrier, other);
  }
}
