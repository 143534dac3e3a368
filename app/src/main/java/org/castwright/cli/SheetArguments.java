package org.castwright.cli;

import org.castwright.sheet.Paper;
import org.castwright.sheet.SheetOptions;
import org.castwright.sheet.Units;
import picocli.CommandLine.Option;

/** How {@code sheet.pdf} is printed; shared by the commands that write one. */
final class SheetArguments {

  @Option(
      names = "--paper",
      paramLabel = "a4|letter",
      defaultValue = "a4",
      description = "Paper of sheet.pdf (default: ${DEFAULT-VALUE}).")
  private Paper paper;

  @Option(
      names = "--sheet-units",
      paramLabel = "metric|inch",
      defaultValue = "metric",
      description = "Units in sheet.pdf (default: ${DEFAULT-VALUE}).")
  private Units units;

  SheetOptions options() {
    return new SheetOptions(paper, units);
  }
}
