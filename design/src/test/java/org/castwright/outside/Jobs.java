package org.castwright.outside;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.Format;
import org.castwright.meshio.RawModel;
import org.castwright.pipeline.Artist;
import org.castwright.pipeline.JobOptions;
import org.castwright.pipeline.Model;
import org.castwright.pipeline.ModelOptions;
import org.castwright.pipeline.MoldJob;
import org.castwright.plan.MoldOptions;
import org.castwright.progress.Progress;
import org.castwright.proof.ProofCheck;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;

/** Whole jobs on models made in memory, with everything they wrote. Close it to end the kernel. */
final class Jobs implements AutoCloseable {

  private final SolidKernel kernel = new ManifoldKernel();
  private final Path temp;
  private int count;

  /** Jobs whose folders stand under {@code temp} only while they run. */
  Jobs(Path temp) {
    this.temp = temp;
  }

  /**
   * What a job left.
   *
   * @param result as returned
   * @param files contents by path inside the folder
   */
  record Done(MoldJob.Result result, Map<String, byte[]> files) {

    /** The words of the checks that failed. */
    List<String> failures() {
      return result.proof().failures().stream().map(ProofCheck::words).toList();
    }

    /** The STL files, by path. */
    List<String> stl() {
      return files.keySet().stream().filter(f -> f.endsWith(".stl")).toList();
    }
  }

  /** Whether the last job left its folder or part of it. */
  boolean leftSomething() throws IOException {
    try (Stream<Path> all = Files.list(temp)) {
      return all.anyMatch(p -> p.getFileName().toString().contains(folderName()));
    }
  }

  private String folderName() {
    return "mold-" + count + "-of";
  }

  /** Runs the main job with two threads. */
  Done run(String name, TriMesh mesh, MoldOptions.With options) throws IOException {
    JobOptions job =
        new JobOptions(ModelOptions.DEFAULT, options.threads(2).build(), JobOptions.DEFAULT.bed());
    RawModel raw = new RawModel(mesh, Format.STL_BINARY, null, List.of(), name);
    Model model = Model.of(raw, job.model(), kernel, Progress.NONE);
    count++;
    Path folder = temp.resolve(folderName());
    MoldJob.Result result = new MoldJob(job, kernel, Artist.NONE, Progress.NONE).run(model, folder);
    return new Done(result, contents(folder));
  }

  private static Map<String, byte[]> contents(Path folder) throws IOException {
    Map<String, byte[]> out = new LinkedHashMap<>();
    List<Path> files = new ArrayList<>();
    try (Stream<Path> all = Files.walk(folder)) {
      all.filter(Files::isRegularFile).sorted().forEach(files::add);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    for (Path f : files) {
      String name = folder.relativize(f).toString().replace('\\', '/');
      out.put(name, Files.readAllBytes(f));
    }
    return out;
  }

  @Override
  public void close() {
    kernel.close();
  }
}
