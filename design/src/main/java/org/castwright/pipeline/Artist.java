package org.castwright.pipeline;

import java.io.IOException;
import java.nio.file.Path;
import org.castwright.mold.Mold;
import org.castwright.progress.Progress;

/** Draws the pictures of a mold; the pipeline does not know how. */
@FunctionalInterface
public interface Artist {

  /** Draws nothing. */
  Artist NONE = (folder, mold, progress) -> {};

  /** Writes PNG files into {@code folder}, which exists. */
  void draw(Path folder, Mold mold, Progress progress) throws IOException;
}
