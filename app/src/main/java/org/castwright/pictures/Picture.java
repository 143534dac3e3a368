package org.castwright.pictures;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Draws scenes. The same scene gives the same pixels, whatever the number of threads. */
public final class Picture {

  private Picture() {}

  /**
   * Draws a scene with its words.
   *
   * @throws IllegalArgumentException if the scene has no facets
   */
  public static BufferedImage draw(Scene scene, View view, PictureOptions options) {
    Margins margins = Margins.of(scene, options);
    Camera camera = Camera.fit(scene, view, margins);
    BufferedImage image = plain(scene, camera, options);
    new Overlay(image, scene, camera, margins).draw();
    return image;
  }

  /** The scene without its words. */
  static BufferedImage plain(Scene scene, Camera camera, PictureOptions options) {
    Stage stage = new Stage(scene, camera, options);
    BufferedImage image =
        new BufferedImage(options.width(), options.height(), BufferedImage.TYPE_INT_RGB);
    int[] pixels = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
    Workers.run(
        options.threads(),
        Band.count(options),
        () -> {
          Band band = new Band(stage, scene, options, pixels);
          return band::draw;
        });
    return image;
  }

  /** Puts pictures of equal height side by side. */
  public static BufferedImage beside(List<BufferedImage> pictures) {
    int width = pictures.stream().mapToInt(BufferedImage::getWidth).sum();
    int height = pictures.get(0).getHeight();
    BufferedImage row = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = row.createGraphics();
    int x = 0;
    for (BufferedImage p : pictures) {
      g.drawImage(p, x, 0, null);
      x += p.getWidth();
    }
    g.dispose();
    return row;
  }

  /** Writes a picture as a PNG file and returns the file's name. */
  public static String write(BufferedImage picture, Path file) throws IOException {
    PngFile.write(picture, file);
    return file.getFileName().toString();
  }
}
