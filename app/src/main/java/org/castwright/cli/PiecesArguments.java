package org.castwright.cli;

import org.castwright.cover.CoverOptions;
import org.castwright.cover.CoverTolerance;
import org.castwright.plan.MoldOptions;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** How many pieces to look for, and what may stay caught in them. */
final class PiecesArguments {

  private static final int NOT_ASKED = -1;

  @Option(
      names = "--pieces",
      paramLabel = "auto|N",
      defaultValue = "-1",
      converter = Count.class,
      description =
          "Look for pulls in any directions: the fewest that open (auto), or so many (1 to 8). With"
              + " --pull, that one is among them.")
  private int pieces;

  @Option(
      names = "--leave-area",
      paramLabel = "MM2",
      defaultValue = "25",
      description =
          "Surface that may stay caught with --pieces, at most a thousandth of it all (default:"
              + " ${DEFAULT-VALUE}).")
  private double area;

  @Option(
      names = "--leave-volume",
      paramLabel = "MM3",
      defaultValue = "5",
      description = "Space that may stay caught with --pieces (default: ${DEFAULT-VALUE}).")
  private double volume;

  @Option(
      names = "--crease",
      paramLabel = "MM",
      defaultValue = "0.15",
      description =
          "Ledges no wider than this are creases and hold nothing, with --pieces (default:"
              + " ${DEFAULT-VALUE}).")
  private double crease;

  boolean asked() {
    return pieces != NOT_ASKED;
  }

  /** The pulls asked for, checked as those of a mold of so many pieces. */
  MoldOptions asked(PullArguments pulls) {
    int most = !asked() ? 2 : pieces == 0 ? MoldOptions.MOST_PIECES : Math.max(2, pieces);
    return MoldOptions.DEFAULT
        .with()
        .pieces(most)
        .pull(pulls.plain())
        .pulls(pulls.ofPieces())
        .build();
  }

  /**
   * @param asked pulls that must be used
   */
  CoverOptions options(MoldOptions asked, int threads) {
    CoverTolerance t = new CoverTolerance(area, CoverTolerance.DEFAULT.areaShare(), volume, crease);
    return CoverOptions.DEFAULT
        .withPieces(pieces)
        .withFixed(asked.fixedPulls(), asked.fixedPlaces())
        .withTolerance(t)
        .withThreads(threads);
  }

  /** Reads {@code auto} as 0, or a number. */
  static final class Count implements ITypeConverter<Integer> {
    @Override
    public Integer convert(String value) {
      if (value.equals("auto")) {
        return 0;
      }
      if (value.equals(String.valueOf(NOT_ASKED))) {
        return NOT_ASKED;
      }
      if (value.matches("[1-8]")) {
        return Integer.valueOf(value);
      }
      throw new TypeConversionException("pieces are auto or 1 to 8, not '" + value + "'");
    }
  }
}
