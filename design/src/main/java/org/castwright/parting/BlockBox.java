package org.castwright.parting;

import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;

/**
 * The block a mold is cut from, in the mold frame (upper half pulled along +z), millimeters. Every
 * value is exactly a 32-bit float, so a file holds it unchanged.
 */
public record BlockBox(double x0, double y0, double x1, double y1, double z0, double z1) {

  /**
   * @throws IllegalArgumentException if a side is not above zero or a value is not a float
   */
  public BlockBox {
    for (double v : new double[] {x0, y0, x1, y1, z0, z1}) {
      if (!Double.isFinite(v) || (float) v != v) {
        throw new IllegalArgumentException("block coordinate " + v + " is not a 32-bit float");
      }
    }
    if (!(x0 < x1 && y0 < y1 && z0 < z1)) {
      throw new IllegalArgumentException("a block needs x0 < x1, y0 < y1 and z0 < z1");
    }
  }

  /**
   * The block around a body: {@code side} beside it, {@code height} above and below, each wall
   * moved outward to a whole millimeter.
   */
  public static BlockBox around(Box3 body, double side, double height) {
    return new BlockBox(
        Math.floor(body.min().x() - side),
        Math.floor(body.min().y() - side),
        Math.ceil(body.max().x() + side),
        Math.ceil(body.max().y() + side),
        Math.floor(body.min().z() - height),
        Math.ceil(body.max().z() + height));
  }

  /** mm³. */
  public double volume() {
    return (x1 - x0) * (y1 - y0) * (z1 - z0);
  }

  public TriMesh mesh() {
    return Primitives.box(new Vec3(x0, y0, z0), new Vec3(x1, y1, z1));
  }

  /** The least distance from a body inside to one of the four side walls, mm. */
  double sideMargin(Box3 body) {
    return Math.min(
        Math.min(body.min().x() - x0, x1 - body.max().x()),
        Math.min(body.min().y() - y0, y1 - body.max().y()));
  }

  /** The least distance from a body inside to top or bottom, mm. */
  double heightMargin(Box3 body) {
    return Math.min(body.min().z() - z0, z1 - body.max().z());
  }
}
