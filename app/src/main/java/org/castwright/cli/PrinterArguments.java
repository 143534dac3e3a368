package org.castwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.castwright.mesh.MeshException;
import org.castwright.pipeline.CalibrationFile;
import org.castwright.plan.MoldOptions;
import org.castwright.trial.Calibration;
import org.castwright.trial.Readings;
import picocli.CommandLine.Option;

/** The maker's own printer and what was read of it. */
final class PrinterArguments {

  @Option(
      names = "--calibration",
      paramLabel = "FILE",
      description = "Your own readings, kept by 'trial' and 'calibrate' (default: none).")
  private Path file;

  @Option(
      names = "--printer",
      paramLabel = "NAME",
      description = "Your name for the printer that the readings are of.")
  private String printer = "";

  Path file() {
    return file;
  }

  String name() {
    return printer.isBlank() ? Readings.NO_PRINTER : printer.strip();
  }

  Calibration read() throws IOException {
    return file == null ? Calibration.NONE : CalibrationFile.read(file);
  }

  /** Options with the readings, where they say nothing else. */
  MoldOptions use(MoldOptions o) throws IOException {
    if (file == null) {
      return o;
    }
    if (!java.nio.file.Files.exists(file)) {
      throw new MeshException(
          "there is no calibration " + file + "; make one with 'castwright calibrate'.");
    }
    return CalibrationFile.use(read(), name(), o);
  }
}
