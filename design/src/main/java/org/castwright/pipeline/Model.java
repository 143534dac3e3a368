package org.castwright.pipeline;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.blocking.BlockOut;
import org.castwright.geom.LengthUnit;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.MeshReader;
import org.castwright.meshio.RawModel;
import org.castwright.meshio.ReadLimits;
import org.castwright.progress.Progress;
import org.castwright.repair.MeshHealth;
import org.castwright.repair.Repair;
import org.castwright.repair.RepairResult;
import org.castwright.solid.SolidKernel;

/**
 * A model ready for the survey: healed, in millimeters, z up.
 *
 * @param mesh closed, oriented, manifold
 * @param source file name without folder
 * @param trianglesRead before healing
 * @param units in force
 * @param repair what healing did
 * @param blockedOut what was filled so that two pieces open it, or null
 * @param warnings sentences for the maker
 */
public record Model(
    TriMesh mesh,
    String source,
    int trianglesRead,
    LengthUnit units,
    RepairResult repair,
    BlockOut blockedOut,
    List<String> warnings) {

  /** Outside these longest sides the units are probably wrong, mm. */
  private static final double SMALL = 5;

  private static final double LARGE = 2000;

  /**
   * Reads and heals a file.
   *
   * @throws org.castwright.mesh.MeshException if the file or the model cannot be used
   * @throws IOException if the disk fails
   */
  public static Model read(Path file, ModelOptions options, SolidKernel kernel, Progress progress)
      throws IOException {
    progress.at("read", 0);
    RawModel raw = MeshReader.read(file, ReadLimits.DEFAULT, progress.as("read"));
    return of(raw, options, kernel, progress);
  }

  /** As {@link #read} for a model already in memory. */
  public static Model of(
      RawModel raw, ModelOptions options, SolidKernel kernel, Progress progress) {
    List<String> warnings = new ArrayList<>(raw.notes());
    LengthUnit units = raw.statedUnit() == null ? options.units() : raw.statedUnit();
    double factor = units.millimeters() * options.scale();
    if (options.sizeMm() > 0) {
      factor = options.sizeMm() / raw.mesh().bounds().longestSide();
    }
    TriMesh mesh = raw.mesh().toLocal(options.up().frame());
    if (factor != 1) {
      mesh = mesh.scaled(new Vec3(factor, factor, factor));
    }
    warnAboutSize(mesh.bounds().longestSide(), units, raw.statedUnit() != null, warnings);
    progress.at("heal", 0);
    RepairResult repair = Repair.heal(mesh, options.repair(), kernel, progress.as("heal"));
    int parts = MeshCheck.of(repair.mesh()).components();
    if (parts > 1) {
      warnings.add(
          "The model consists of "
              + parts
              + " parts that do not touch: they cannot leave one mold as one casting; join them or"
              + " mold each alone.");
    }
    warnAboutCrossings(repair, progress, warnings);
    return new Model(
        repair.mesh(),
        raw.source(),
        raw.mesh().triangleCount(),
        units,
        repair,
        null,
        List.copyOf(warnings));
  }

  /** The same with one more sentence for the maker. */
  Model noted(String words) {
    List<String> all = new ArrayList<>(warnings);
    all.add(words);
    return new Model(mesh, source, trianglesRead, units, repair, blockedOut, List.copyOf(all));
  }

  /**
   * The same with undercuts filled.
   *
   * @param why a sentence on why that was done unasked, or nothing
   */
  Model with(BlockOut filled, String why) {
    List<String> all = new ArrayList<>(warnings);
    if (!why.isEmpty()) {
      all.add(why);
    }
    all.add(
        String.format(
            Locale.ROOT,
            "Blocked out: so that two pieces open it, %.0f mm³ are added to the casting (%.1f %%), where"
                + " %.0f mm³ of undercut were caught in %d place(s), the largest %.1f mm³ near (%.1f,"
                + " %.1f, %.1f) of the model. Where that must not be, forbid it with --block-out"
                + " none.",
            filled.addedMm3(),
            100 * filled.addedMm3() / mesh.volume(),
            filled.caughtMm3(),
            filled.places().size(),
            filled.places().get(0).volumeMm3(),
            filled.places().get(0).center().x(),
            filled.places().get(0).center().y(),
            filled.places().get(0).center().z()));
    return new Model(filled.mesh(), source, trianglesRead, units, repair, filled, List.copyOf(all));
  }

  private static void warnAboutCrossings(
      RepairResult repair, Progress progress, List<String> warnings) {
    if (repair.before().selfIntersectingPairs() == 0) {
      return;
    }
    int pairs = MeshHealth.of(repair.mesh(), progress.as("heal")).selfIntersectingPairs();
    if (pairs > 0) {
      warnings.add(
          "The model's surface passes through itself at "
              + pairs
              + (pairs == 1 ? " pair" : " pairs")
              + " of triangles, and the mold's would, too, which the proof refuses: --heal remesh"
              + " rebuilds the surface without them.");
    }
  }

  private static void warnAboutSize(
      double side, LengthUnit units, boolean stated, List<String> warnings) {
    if (side < SMALL || side > LARGE) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "The model's longest side is %.4g mm: are %s the right units%s? Use --units or --size.",
              side,
              units.symbol(),
              stated ? " (the file states them)" : ""));
    }
  }
}
