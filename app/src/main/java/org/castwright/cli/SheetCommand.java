package org.castwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.concurrent.Callable;
import org.castwright.mesh.MeshException;
import org.castwright.sheet.Sheet;
import org.castwright.sheet.SheetPictures;
import org.castwright.sheet.SheetSource;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code castwright sheet DIR}: the sheet for printing again, on other paper or in other units. */
@Command(
    name = "sheet",
    description = "Writes the sheet for printing of a mold folder again.",
    footerHeading = Examples.HEADING,
    footer = {"  castwright sheet shell-mold --paper letter --sheet-units inch"},
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class SheetCommand implements Callable<Integer> {

  @Parameters(index = "0", paramLabel = "DIR", description = "A folder that castwright wrote.")
  private Path folder;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "File to write (default: DIR/sheet.pdf).")
  private Path output;

  @Mixin private SheetArguments sheet;
  @Mixin private RunArguments run;

  @Override
  public Integer call() throws IOException {
    SheetSource source = SheetSource.read(folder);
    if (source.report().proof() == null) {
      throw new MeshException(
          folder + " holds no finished mold: its report has no proof; make the mold again.");
    }
    Path file = output == null ? folder.resolve(Sheet.NAME) : output;
    Path parent = file.toAbsolutePath().getParent();
    Path side = Files.createTempFile(parent, ".sheet-", ".pdf");
    try {
      SheetPictures pictures = SheetPictures.of(source, run.threads());
      Sheet.write(folder, source, pictures, sheet.options(), side);
      Files.move(side, file, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(side);
    }
    return Exit.OK.code();
  }
}
