package org.castwright.pipeline;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.castwright.mesh.MeshException;

/** {@code job.json}: everything to run a job again. */
public final class JobFile {

  static final String NAME = "job.json";

  /** What jobs of earlier versions do not say: openings were by rule, nothing was blocked out. */
  private static final List<Json.Added> ADDED =
      List.of(
          new Json.Added("/options/mold/openings", null),
          new Json.Added("/options/mold/openings/gate", null),
          new Json.Added("/options/mold/block_out_mm3", 0),
          new Json.Added("/options/mold/blocked_out", false));

  private JobFile() {}

  /**
   * A job as written.
   *
   * @param castwright version that wrote it
   * @param model path of the model file
   * @param modelSha256 of its bytes
   * @param options in force, defaults included
   */
  public record Job(String castwright, String model, String modelSha256, JobOptions options) {}

  static String write(Path model, JobOptions options) throws IOException {
    String path = model.toAbsolutePath().normalize().toString();
    return Json.write(new Job(MoldJob.VERSION, path, sha256(model), options));
  }

  /**
   * Reads a job.
   *
   * @throws MeshException if the file is not a job, or its model is gone or has changed
   */
  public static Job read(Path file) throws IOException {
    Job job = readAnyway(file);
    Path model = Path.of(job.model());
    if (!Files.isRegularFile(model)) {
      throw new MeshException("the job's model " + model + " is gone; put it back.");
    }
    if (!sha256(model).equals(job.modelSha256())) {
      throw new MeshException(
          "the job's model " + model + " has changed since; run mold on the new model.");
    }
    return job;
  }

  /** Reads a job that is only looked at, whatever became of its model. */
  static Job readAnyway(Path file) throws IOException {
    if (!Files.isRegularFile(file)) {
      throw new MeshException(file + " is not there; the mold was made in memory or is damaged.");
    }
    Job job;
    try {
      job = Json.read(Files.readString(file), Job.class, ADDED);
    } catch (JsonProcessingException e) {
      throw new MeshException(file + " is not a job file: " + e.getOriginalMessage() + ".", e);
    }
    if (job == null || job.model() == null || job.options() == null) {
      throw new MeshException(file + " is not a job file; name the job.json of a mold folder.");
    }
    return job;
  }

  private static String sha256(Path file) throws IOException {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(digest.digest(Files.readAllBytes(file)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
