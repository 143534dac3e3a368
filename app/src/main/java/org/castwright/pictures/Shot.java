package org.castwright.pictures;

import java.awt.image.BufferedImage;
import java.util.List;
import org.castwright.geom.Vec3;

/**
 * A drawn scene that still knows where its points lie, for those who write words and arrows beside
 * it. It has no margins for words: what it shows reaches nearly to its edges.
 */
public final class Shot {

  private final BufferedImage image;
  private final Camera camera;

  private Shot(BufferedImage image, Camera camera) {
    this.image = image;
    this.camera = camera;
  }

  /**
   * Draws a scene without its caption and legend.
   *
   * @param around points that must lie in the picture besides the items, mm
   * @throws IllegalArgumentException if the scene has no facets
   */
  public static Shot take(Scene scene, View view, PictureOptions options, List<Vec3> around) {
    Camera camera = Camera.fit(scene, view, Margins.slim(options), around);
    return new Shot(Picture.plain(scene, camera, options), camera);
  }

  public BufferedImage image() {
    return image;
  }

  /** Where a point of the scene lies: pixels to the right and down from the upper left corner. */
  public double[] at(Vec3 point) {
    double[] p = new double[3];
    camera.project(point, p);
    return new double[] {p[0] / Camera.SAMPLES, p[1] / Camera.SAMPLES};
  }
}
