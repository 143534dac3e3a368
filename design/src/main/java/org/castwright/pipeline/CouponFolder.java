package org.castwright.pipeline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.castwright.coupon.Coupon;
import org.castwright.coupon.CouponOptions;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.StlWriter;
import org.castwright.solid.SolidKernel;

/** The folder of a set of fit coupons: files to print and what to read from them. */
public final class CouponFolder {

  static final String NAME = "coupon.json";

  /** What to do, in words. */
  public static final String WORDS = "coupon.txt";

  private CouponFolder() {}

  /**
   * What {@code coupon.json} holds; lengths mm.
   *
   * @param castwright version
   * @param files to print
   */
  public record Written(String castwright, CouponOptions options, List<String> files) {}

  /** Writes the folder whole or not at all. */
  public static Written write(Path output, CouponOptions options, SolidKernel kernel)
      throws IOException {
    Coupon c = Coupon.of(options, kernel);
    try (OutputFolder folder = OutputFolder.at(output)) {
      Path dir = folder.path();
      stl(dir, "key", c.key());
      stl(dir, "sockets", c.sockets());
      stl(dir, "bar", c.bar());
      stl(dir, "plate", c.plate());
      Written w =
          new Written(
              MoldJob.VERSION, options, List.of("key.stl", "sockets.stl", "bar.stl", "plate.stl"));
      Files.writeString(dir.resolve(NAME), Json.write(w));
      Files.writeString(dir.resolve(WORDS), words(options));
      folder.publish();
      return w;
    }
  }

  private static void stl(Path dir, String name, TriMesh mesh) throws IOException {
    StlWriter.write(dir.resolve(name + ".stl"), mesh, "castwright coupon " + name + ", mm");
  }

  private static String words(CouponOptions o) {
    return """
    FIT COUPONS for %s

    Print all four files as they lie, with the settings that molds are printed with.

    Keys: try key.stl in each socket of sockets.stl. Pits tell the gap: %s mm.
      Note for each: does not go in, tight, good, or loose.
    Shrink: measure on the printed bar.stl from the edge of the first ridge to those at %s mm.
      Then grease it, fill it to the rim, and when the cast bar has its final size measure its
      grooves likewise. The cast is what makes the size; the print alone tells the printer's part.
    Bores: pits at plate.stl tell the bore: %s mm. Look through: the smallest you see light in
      is your smallest vent. Set it on spacers over a dish, pour into its tray as into a mold: the
      smallest bore the material runs through is your smallest gate.

    Enter what you read in the page, or by: castwright calibrate --help
    The cautions of the material hold here, too.
    """
        .formatted(
            o.process().name().toLowerCase(Locale.ROOT).equals("fdm") ? "filament" : "resin",
            rungs(o.gapsMm()),
            o.marksMm().stream().map(CouponFolder::plain).collect(Collectors.joining(" and ")),
            rungs(o.boresMm()));
  }

  private static String rungs(List<Double> values) {
    return values.stream().map(CouponFolder::plain).collect(Collectors.joining(", "));
  }

  private static String plain(double v) {
    return String.format(Locale.ROOT, "%.2f", v).replaceAll("\\.?0+$", "");
  }
}
