package org.castwright.web;

import com.sun.net.httpserver.HttpExchange;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.castwright.demo.Medallion;
import org.castwright.demo.RestingBird;
import org.castwright.demo.ShellSoap;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.GlbWriter;
import org.castwright.meshio.MeshReader;
import org.castwright.meshio.RawModel;
import org.castwright.meshio.StlWriter;

/** Models that are brought or come with the program. */
final class Models {

  private static final Set<String> KINDS = Set.of("stl", "obj", "ply", "off", "3mf");

  private final Shelf shelf;
  private final Limits limits;

  Models(Shelf shelf, Limits limits) {
    this.shelf = shelf;
    this.limits = limits;
  }

  /**
   * A model that can be ordered.
   *
   * @param sizeMm as the file states it, in its own axes, each of its units taken for 1 mm
   * @param units that the file states, or null
   */
  record Info(String model, long bytes, int triangles, List<Double> sizeMm, String units) {}

  /** A bundled model. */
  enum Sample {
    SHELL("Shell soap", "soap-melt-and-pour", ShellSoap::mesh),
    BIRD("Resting bird", "plaster-pottery", RestingBird::mesh),
    MEDALLION("Medallion", "chocolate-dark", Medallion::mesh);

    private final String title;
    private final String material;

    @SuppressWarnings("ImmutableEnumChecker") // refers to a static method
    private final Supplier<TriMesh> mesh;

    Sample(String title, String material, Supplier<TriMesh> mesh) {
      this.title = title;
      this.material = material;
      this.mesh = mesh;
    }

    Card card() {
      return new Card(name().toLowerCase(java.util.Locale.ROOT), title, material);
    }
  }

  /** What is told of a bundled model. */
  record Card(String sample, String title, String material) {}

  /** Takes a file in, and reads it once: what cannot be read is not kept. */
  Info take(HttpExchange x, String name) throws IOException {
    String plain = Shelf.harmless(name);
    String kind =
        Reply.kind(plain.endsWith(".gz") ? plain.substring(0, plain.length() - 3) : plain);
    if (!KINDS.contains(kind)) {
      throw new Refused(415, "Models are STL, OBJ, PLY, OFF or 3MF files, plain or gzipped.");
    }
    String end = plain.substring(plain.indexOf("." + kind));
    Path side = Files.createTempFile(shelf.root(), ".bring-", end);
    try {
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(side))) {
        Ask.copy(x, out, limits.modelBytes());
      }
      RawModel raw = read(side, plain);
      return info(shelf.keep(side, plain), raw);
    } finally {
      Files.deleteIfExists(side);
    }
  }

  private static RawModel read(Path file, String name) throws IOException {
    try {
      return MeshReader.read(file);
    } catch (MeshException e) {
      // the person knows the file by the name it had, not by that of the copy
      String copy = file.getFileName().toString();
      throw new Refused(422, e.getMessage().replace(file.toString(), name).replace(copy, name));
    }
  }

  private static Info info(Path file, RawModel raw) throws IOException {
    var size = raw.mesh().bounds().size();
    return new Info(
        file.getFileName().toString(),
        Files.size(file),
        raw.mesh().triangleCount(),
        List.of(size.x(), size.y(), size.z()),
        raw.statedUnit() == null ? null : raw.statedUnit().symbol());
  }

  /** What is told of a model that was brought earlier. */
  Info known(String name) throws IOException {
    Path file = shelf.model(name);
    return info(file, read(file, name));
  }

  /** Puts a bundled model among the models, once. */
  Info sample(String wanted) throws IOException {
    for (Sample s : Sample.values()) {
      if (s.card().sample().equals(wanted)) {
        String name = Shelf.harmless(s.title) + ".stl";
        Path file = shelf.root().resolve(Shelf.MODELS).resolve(name);
        if (!Files.exists(file)) {
          Path side = Files.createTempFile(shelf.root(), ".bring-", ".stl");
          try {
            StlWriter.write(side, s.mesh.get(), s.title);
            file = shelf.keep(side, name);
          } finally {
            Files.deleteIfExists(side);
          }
        }
        return info(file, read(file, name));
      }
    }
    throw new Refused(404, "There is no sample of that name.");
  }

  static List<Card> samples() {
    return List.of(Sample.values()).stream().map(Sample::card).toList();
  }

  /** A model as binary glTF for the page. */
  void show(HttpExchange x, String name) throws IOException {
    Path file = shelf.model(name);
    RawModel raw = read(file, name);
    Path side = Files.createTempFile(shelf.root(), ".show-", ".glb");
    try {
      GlbWriter.write(side, ViewMeshes.model(raw.mesh()));
      Reply.file(x, side);
    } finally {
      Files.deleteIfExists(side);
    }
  }
}
