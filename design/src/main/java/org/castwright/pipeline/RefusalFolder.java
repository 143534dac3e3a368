package org.castwright.pipeline;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.castwright.plan.CaughtException;

/** The folder left when a model is refused: {@code refusal.json} and pictures, no mold. */
public final class RefusalFolder {

  static final String NAME = "refusal.json";

  private RefusalFolder() {}

  /** Draws into a folder whose {@code pictures} exists. */
  @FunctionalInterface
  public interface Drawing {
    void into(Path folder) throws IOException;
  }

  /**
   * Why there is no mold.
   *
   * @param never whether no number of rigid pieces opens the model; its {@code cover} names the
   *     space that no direction frees
   * @param cover the fewest pulls; null if only two pieces were asked for
   */
  public record Refused(
      String castwright,
      String refused,
      boolean never,
      Report.SurveyInfo survey,
      @JsonInclude(JsonInclude.Include.NON_NULL) CoverInfo cover) {}

  /** Writes the folder whole or not at all. */
  public static void write(CaughtException e, Path output, Drawing drawing) throws IOException {
    try (OutputFolder folder = OutputFolder.at(output)) {
      Files.createDirectories(folder.path().resolve("pictures"));
      Refused refused =
          new Refused(
              MoldJob.VERSION,
              e.getMessage(),
              e.never(),
              ReportMaker.survey(e.survey(), e.releaseMm()),
              e.cover() == null ? null : CoverInfo.of(e.cover()));
      Files.writeString(folder.path().resolve(NAME), Json.write(refused));
      drawing.into(folder.path());
      folder.publish();
    }
  }
}
