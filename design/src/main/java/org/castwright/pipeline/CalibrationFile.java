package org.castwright.pipeline;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.material.Materials;
import org.castwright.mesh.MeshException;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.Openings;
import org.castwright.trial.Calibration;

/** {@code calibration.json}: the maker's own readings, and their use for a job. */
public final class CalibrationFile {

  /** Its usual name. */
  public static final String NAME = "calibration.json";

  private CalibrationFile() {}

  /** As written. */
  record Kept(String castwright, Calibration calibration) {}

  /**
   * Reads a file; one that is not there holds nothing.
   *
   * @throws MeshException if it is damaged
   */
  public static Calibration read(Path file) throws IOException {
    if (!Files.exists(file)) {
      return Calibration.NONE;
    }
    try {
      Kept kept = Json.read(Files.readString(file), Kept.class);
      if (kept == null || kept.calibration() == null) {
        throw new MeshException(file + " is not a calibration file; name another or remove it.");
      }
      return kept.calibration();
    } catch (JsonProcessingException e) {
      throw new MeshException(
          file + " is not a calibration file: " + e.getOriginalMessage() + ".", e);
    }
  }

  /** Replaces the file in one step. */
  public static void write(Path file, Calibration calibration) throws IOException {
    WholeFile.write(file, Json.write(new Kept(MoldJob.VERSION, calibration)));
  }

  /**
   * Options with what is known of material and printer, where they do not say otherwise: shrink,
   * gap of keys, bores.
   */
  public static MoldOptions use(Calibration calibration, String printer, MoldOptions o) {
    String process = o.process().name().toLowerCase(java.util.Locale.ROOT);
    Calibration.Own own = calibration.of(o.material(), printer, process);
    if (own.nothing()) {
      return o;
    }
    Material m = Materials.of(o.material());
    Double shrink = own.shrinkPercent(m.shrink().percent());
    Openings openings = o.openings();
    if (openings.ventMm() == 0 && own.ventMm() != null) {
      openings = openings.withVentMm(own.ventMm());
    }
    if (openings.gateMm() == 0 && own.gateMm() != null) {
      // a gate fills a whole cavity where the coupon's bore only had to let through
      openings = openings.withGateMm(Math.max(own.gateMm(), m.gateMm()));
    }
    return o.with()
        .shrinkPercent(
            o.shrinkPercent() == null && shrink != null
                ? new Vec3(shrink, shrink, shrink)
                : o.shrinkPercent())
        .clearanceMm(
            o.clearanceMm() == 0 && own.clearanceMm() != null ? own.clearanceMm() : o.clearanceMm())
        .openings(openings)
        .build();
  }
}
