package org.castwright.pictures;

import java.awt.image.BufferedImage;
import java.util.List;

/** A picture without words and the pointers to be drawn over it. */
public record Guide(BufferedImage image, List<Pointer> pointers) {

  public Guide {
    pointers = List.copyOf(pointers);
  }
}
