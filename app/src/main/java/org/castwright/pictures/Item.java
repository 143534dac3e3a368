package org.castwright.pictures;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * One mesh in a scene.
 *
 * @param offset moves the mesh, mm
 * @param opacity 1 for a solid; below 1 the nearest surface of the item tints what lies behind it
 */
public record Item(TriMesh mesh, Paint paint, Vec3 offset, double opacity) {

  public Item {
    if (!paint.fits(mesh.triangleCount())) {
      throw new IllegalArgumentException(
          "the paint needs one value for each of " + mesh.triangleCount() + " facets");
    }
    if (!(opacity > 0 && opacity <= 1)) {
      throw new IllegalArgumentException("opacity must be above 0 and at most 1: " + opacity);
    }
  }

  /** A solid item where its mesh stands. */
  public static Item of(TriMesh mesh, Paint paint) {
    return new Item(mesh, paint, Vec3.ZERO, 1);
  }

  /** A solid item of one color. */
  public static Item of(TriMesh mesh, int rgb) {
    return of(mesh, new Paint.Plain(rgb));
  }

  public Item moved(Vec3 by) {
    return new Item(mesh, paint, offset.plus(by), opacity);
  }

  public Item translucent(double opacityBelowOne) {
    return new Item(mesh, paint, offset, opacityBelowOne);
  }

  boolean solid() {
    return opacity == 1;
  }
}
