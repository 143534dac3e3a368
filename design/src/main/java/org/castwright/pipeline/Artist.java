package org.castwright.pipeline;

import java.io.IOException;
import java.nio.file.Path;
import org.castwright.mold.Mold;
import org.castwright.progress.Progress;

/** Draws the pictures and the sheet of a mold; the pipeline does not know how. */
@FunctionalInterface
public interface Artist {

  /** Draws nothing. */
  Artist NONE = (folder, mold, progress) -> {};

  /** Writes PNG files into {@code folder}, which exists. */
  void draw(Path folder, Mold mold, Progress progress) throws IOException;

  /**
   * Writes what is made from a finished report, such as a sheet for printing.
   *
   * @param folder the mold folder, complete but for this
   */
  default void finish(Path folder, Report report, Mold mold, Progress progress) throws IOException {
    // most artists only draw
  }
}
