package org.castwright.cli;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.plan.PiecePull;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;

/** Pulls that the maker fixes. */
final class PullArguments {

  @Option(
      names = "--pull",
      paramLabel = "[N=]X,Y,Z",
      converter = Reader.class,
      description =
          "Direction in which piece 1 leaves, in the model's frame; with N= the piece that leaves"
              + " N-th, for as many pieces as wished (default: surveyed).")
  private List<Given> given = List.of();

  /** A pull, of a piece from 1 or of any with 0. */
  record Given(int piece, Vec3 direction) {}

  /** The one pull given without a number, or null. */
  Vec3 plain() {
    List<Vec3> plain = given.stream().filter(g -> g.piece() == 0).map(Given::direction).toList();
    if (plain.size() > 1 || (plain.size() == 1 && given.size() > 1)) {
      throw new IllegalArgumentException(
          "--pull is given more than once: say which piece each is for, as in --pull 2=0,0,1");
    }
    return plain.isEmpty() ? null : plain.get(0);
  }

  /** The pulls of single pieces. */
  List<PiecePull> ofPieces() {
    return given.stream()
        .filter(g -> g.piece() > 0)
        .map(g -> new PiecePull(g.piece(), g.direction()))
        .toList();
  }

  /** Reads {@code 0,0,1} or {@code 2=0,0,1}. */
  static final class Reader implements ITypeConverter<Given> {
    @Override
    public Given convert(String value) {
      int at = value.indexOf('=');
      if (at < 0) {
        return new Given(0, new Vector().convert(value));
      }
      String piece = value.substring(0, at).trim();
      if (!piece.matches("[1-8]")) {
        throw new picocli.CommandLine.TypeConversionException(
            "pieces have numbers from 1 to 8, as in 2=0,0,1, not '" + piece + "'");
      }
      return new Given(Integer.parseInt(piece), new Vector().convert(value.substring(at + 1)));
    }
  }
}
