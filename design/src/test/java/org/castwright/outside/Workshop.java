package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.StlWriter;
import org.castwright.pipeline.Artist;
import org.castwright.pipeline.JobOptions;
import org.castwright.pipeline.MoldJob;
import org.castwright.plan.Closing;
import org.castwright.plan.MoldOptions;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;

/** Runs the whole job, from a file to a folder, and keeps what it wrote. */
final class Workshop {

  static final SolidKernel KERNEL = new ManifoldKernel();

  /** Facets round the axis of the round shapes below. */
  static final int SIDES = 48;

  private static final Map<String, Made> SHELF = new ConcurrentHashMap<>();

  private Workshop() {}

  /**
   * A mold made.
   *
   * @param files bytes by path in the folder, slashes forward
   */
  record Made(MoldJob.Result result, Map<String, byte[]> files) {

    void assertProved() {
      assertTrue(result.proof().passed(), () -> result.proof().failures().toString());
      assertTrue(result.report().proof().passed());
    }
  }

  /** Radius 20, held by bolts: used by several tests, made once. */
  static Made boltedSphere() {
    MoldOptions o = MoldOptions.DEFAULT.with().closing(Closing.BOLTS).build();
    return SHELF.computeIfAbsent("sphere", k -> make(Shapes.sphere(20, SIDES), o));
  }

  /** Ring 20, tube 7, held by bolts: used by several tests, made once. */
  static Made boltedTorus() {
    MoldOptions o = MoldOptions.DEFAULT.with().closing(Closing.BOLTS).build();
    return SHELF.computeIfAbsent("torus", k -> make(Shapes.torus(20, 7, SIDES, 24), o));
  }

  static Made along(TriMesh shape, Vec3 pull) {
    return make(shape, MoldOptions.DEFAULT.with().pull(pull).build());
  }

  static Made make(TriMesh shape, MoldOptions options) {
    try {
      Path room = Files.createTempDirectory("outside");
      try {
        Path model = room.resolve("model.stl");
        StlWriter.write(model, shape, "a model");
        JobOptions d = JobOptions.DEFAULT;
        JobOptions job = new JobOptions(d.model(), options, d.bed());
        Path out = room.resolve("mold");
        MoldJob.Result result =
            new MoldJob(job, KERNEL, Artist.NONE, Progress.NONE).run(model, out);
        return new Made(result, contents(out));
      } finally {
        remove(room);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Map<String, byte[]> contents(Path folder) throws IOException {
    Map<String, byte[]> files = new TreeMap<>();
    for (Path p : walk(folder)) {
      if (Files.isRegularFile(p)) {
        files.put(folder.relativize(p).toString().replace('\\', '/'), Files.readAllBytes(p));
      }
    }
    return files;
  }

  private static void remove(Path folder) throws IOException {
    List<Path> all = walk(folder);
    for (Path p : all.stream().sorted(Comparator.reverseOrder()).toList()) {
      Files.delete(p);
    }
  }

  private static List<Path> walk(Path folder) throws IOException {
    try (Stream<Path> s = Files.walk(folder)) {
      return s.toList();
    }
  }

  /** Several closed surfaces in one mesh. */
  static TriMesh together(TriMesh... meshes) {
    MeshBuilder m = new MeshBuilder();
    for (TriMesh mesh : meshes) {
      int first = m.vertexCount();
      for (int i = 0; i < mesh.vertexCount(); i++) {
        Vec3 p = mesh.vertex(i);
        m.vertex(p.x(), p.y(), p.z());
      }
      int[] t = mesh.tri();
      for (int i = 0; i < t.length; i += 3) {
        m.triangle(first + t[i], first + t[i + 1], first + t[i + 2]);
      }
    }
    return m.build();
  }
}
