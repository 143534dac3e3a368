package org.castwright.pictures;

import java.awt.image.BufferedImage;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Writes pictures as PNG without time stamps: the same picture gives the same bytes. */
final class PngFile {

  private PngFile() {}

  static void write(BufferedImage image, Path file) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file));
        ImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
      writer.setOutput(stream);
      writer.write(image);
    } finally {
      writer.dispose();
    }
  }
}
