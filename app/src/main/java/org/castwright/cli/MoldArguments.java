package org.castwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.material.Materials;
import org.castwright.pipeline.WishesFile;
import org.castwright.plan.BlockShape;
import org.castwright.plan.Closing;
import org.castwright.plan.GateEnd;
import org.castwright.plan.KeyShape;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.Openings;
import org.castwright.plan.Pour;
import org.castwright.plan.PrintProcess;
import org.castwright.seams.Wishes;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** What is asked of the mold; shared by {@code mold} and {@code demo}. */
final class MoldArguments {

  @Option(
      names = {"-m", "--material"},
      paramLabel = "ID",
      description =
          "Casting material; 'castwright materials' lists them; FILE.json:ID takes one from a table"
              + " of your own (default: ${DEFAULT-VALUE}).",
      completionCandidates = MaterialIds.class,
      defaultValue = "plaster-pottery")
  private String material;

  @Option(
      names = "--shrink",
      paramLabel = "PERCENT|X,Y,Z",
      description = "Linear shrink in percent instead of the material's, one or one for each axis.")
  private String shrink;

  @Mixin private PullArguments pulls;

  @Option(
      names = "--wall",
      paramLabel = "MM",
      defaultValue = "0",
      description = "Wall round the cavity (default: by size and material).")
  private double wall;

  @Option(
      names = "--block",
      paramLabel = "box|rounded|contour",
      defaultValue = "box",
      description = "Outside shape (default: ${DEFAULT-VALUE}).")
  private BlockShape block;

  @Option(
      names = "--process",
      paramLabel = "fdm|resin",
      defaultValue = "fdm",
      description = "Printing process, for gaps and walls (default: ${DEFAULT-VALUE}).")
  private PrintProcess process;

  @Option(
      names = "--clearance",
      paramLabel = "MM",
      defaultValue = "0",
      description = "Gap between key and socket (default: by process).")
  private double clearance;

  @Option(
      names = "--keys",
      paramLabel = "cone|dome",
      defaultValue = "cone",
      description = "Shape of the keys (default: ${DEFAULT-VALUE}).")
  private KeyShape keys;

  @Option(
      names = "--key-count",
      paramLabel = "N",
      defaultValue = "0",
      description = "Number of keys, at least 3 (default: by size).")
  private int keyCount;

  @Option(
      names = "--closing",
      paramLabel = "bands|bolts|clamps|none",
      defaultValue = "bands",
      description = "How the mold is held together (default: ${DEFAULT-VALUE}).")
  private Closing closing;

  @Option(
      names = "--pour",
      paramLabel = "seam|pull",
      defaultValue = "seam",
      description =
          "Fill standing with the seam upright, or lying with piece 1 on top"
              + " (default: ${DEFAULT-VALUE}).")
  private Pour pour;

  @Option(
      names = "--release",
      paramLabel = "MM",
      defaultValue = "0.05",
      description = "Width of a catch that still counts as free (default: ${DEFAULT-VALUE}).")
  private double release;

  @Option(
      names = "--pieces",
      paramLabel = "N|auto",
      defaultValue = "2",
      description =
          "Most pieces the mold may have: 2, up to 8, or auto, which is 8; fewer are made when"
              + " fewer open (default: ${DEFAULT-VALUE}).")
  private String pieces;

  @Option(
      names = "--wishes",
      paramLabel = "FILE",
      description =
          "JSON file of what the seams should do where, for molds of more than two pieces; the guide"
              + " has its format.")
  private Path wishes;

  @Option(
      names = "--leave-volume",
      paramLabel = "MM3",
      defaultValue = "5",
      description =
          "Space that may stay caught in creases when the mold has more than two pieces, mm³"
              + " (default: ${DEFAULT-VALUE}).")
  private double leaveVolume;

  @Option(
      names = "--block-out",
      paramLabel = "none|auto|MM3",
      defaultValue = "auto",
      converter = BlockingOut.class,
      description =
          "Volume that may be added to the casting to fill undercuts, so that two pieces open it:"
              + " none, so many mm³, or auto, up to a twentieth and only where a mold of more pieces"
              + " cannot be proved (default: ${DEFAULT-VALUE}).")
  private double blockOut;

  @Option(
      names = "--gate",
      paramLabel = "top|bottom|auto",
      defaultValue = "top",
      description =
          "End of the casting that the gate joins: bottom means a sprue beside the casting and a"
              + " riser on top, auto as the material table advises (default: ${DEFAULT-VALUE}).")
  private GateEnd gateEnd;

  @Option(
      names = "--gate-at",
      paramLabel = "X,Y,Z",
      converter = Vector.class,
      description =
          "Where the gate should join, in the model's frame; it is made as near as it can be"
              + " (default: at the top).")
  private Vec3 gateAt;

  @Option(
      names = "--vent-at",
      paramLabel = "X,Y,Z",
      converter = Vector.class,
      description = "Where a further vent should join; may be given more than once.")
  private List<Vec3> ventsAt = List.of();

  @Option(
      names = "--gate-bore",
      paramLabel = "MM",
      defaultValue = "0",
      description = "Bore of the gate's throat (default: the material's).")
  private double gateBore;

  @Option(
      names = "--vent-bore",
      paramLabel = "MM",
      defaultValue = "0",
      description = "Bore of the vents (default: the material's).")
  private double ventBore;

  @Option(
      names = "--mold-strain",
      paramLabel = "PERCENT",
      defaultValue = "0",
      description =
          "Strain that the mold's own material takes, for molds printed or cast in rubber"
              + " (default: ${DEFAULT-VALUE}, rigid).")
  private double moldStrain;

  @Option(
      names = "--allow-caught",
      description = "Build even when trapped space is left; the report records it.")
  private boolean allowCaught;

  @Option(
      names = "--bed",
      paramLabel = "XxYxZ",
      defaultValue = "220x220x250",
      converter = Vector.class,
      description = "Room of the printer, mm (default: ${DEFAULT-VALUE}).")
  private Vec3 bed;

  @Option(
      names = "--wedge",
      paramLabel = "DEG",
      defaultValue = "25",
      description = "Thinnest wedge a piece may have along the seam (default: ${DEFAULT-VALUE}).")
  private double wedge;

  Vec3 bed() {
    return bed;
  }

  double wedge() {
    return wedge;
  }

  MoldOptions options(int threads) throws IOException {
    return MoldOptions.DEFAULT
        .with()
        .material(Materials.reference(material))
        .shrinkPercent(shrinkPercent())
        .pull(pulls.plain())
        .pulls(pulls.ofPieces())
        .wallMm(wall)
        .block(block)
        .process(process)
        .clearanceMm(clearance)
        .keyShape(keys)
        .keyCount(keyCount)
        .closing(closing)
        .pour(pour)
        .releaseMm(release)
        .pieces(pieces())
        .wishes(wishes == null ? Wishes.NONE : WishesFile.read(wishes))
        .leaveMm3(leaveVolume)
        .moldStrain(moldStrain / 100)
        .blockOutMm3(blockOut)
        .allowCaught(allowCaught)
        .openings(new Openings(gateAt, ventsAt, gateEnd, gateBore, ventBore))
        .threads(threads)
        .build();
  }

  private int pieces() {
    if (pieces.equals("auto")) {
      return MoldOptions.MOST_PIECES;
    }
    try {
      return Integer.parseInt(pieces);
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(
          "--pieces takes auto or a whole number from 2 to 8, not '" + pieces + "'", e);
    }
  }

  private Vec3 shrinkPercent() {
    if (shrink == null) {
      return null;
    }
    if (shrink.contains(",")) {
      return new Vector().convert(shrink);
    }
    try {
      double s = Double.parseDouble(shrink);
      return new Vec3(s, s, s);
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(
          "--shrink takes one number or three, in percent, not '" + shrink + "'", e);
    }
  }

  /** Reads {@code none} as 0, {@code auto}, or a volume. */
  static final class BlockingOut implements ITypeConverter<Double> {
    @Override
    public Double convert(String value) {
      if (value.equals("auto")) {
        return MoldOptions.BLOCK_OUT_AUTO;
      }
      if (value.equals("none")) {
        return 0.0;
      }
      try {
        double mm3 = Double.parseDouble(value);
        if (mm3 > 0 && Double.isFinite(mm3)) {
          return mm3;
        }
      } catch (NumberFormatException e) {
        // told below
      }
      throw new TypeConversionException(
          "what is blocked out is none, auto or a number of mm³ above 0, not '" + value + "'");
    }
  }
}
