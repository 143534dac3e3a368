package org.castwright.web;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.castwright.mesh.Thinning;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.GlbWriter;
import org.castwright.meshio.MeshReader;
import org.castwright.meshio.NamedMesh;
import org.castwright.pipeline.Colors;
import org.castwright.pipeline.ProofFolder;
import org.castwright.pipeline.Report;

/**
 * Molds and models with so few triangles that a view stays smooth; the files of a job keep them
 * all. A mold's are made once and kept beside the jobs.
 */
final class ViewMeshes {

  /** Triangles of all bodies together that an old graphics chip turns smoothly. */
  static final int MOST = 180_000;

  private static final String KEPT = ".views";

  private final Shelf shelf;

  ViewMeshes(Shelf shelf) {
    this.shelf = shelf;
  }

  /** A mold. */
  void job(HttpExchange x, String name) throws IOException {
    Path dir = shelf.job(name);
    Path kept = shelf.root().resolve(KEPT);
    Path file = kept.resolve(name + "-" + Shelf.modified(dir) + ".glb");
    if (!Files.isRegularFile(file)) {
      Files.createDirectories(kept);
      Path side = Files.createTempFile(kept, ".part-", ".glb");
      try {
        GlbWriter.write(side, bodies(dir));
        drop(kept, name);
        Files.move(side, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(side);
      }
    }
    Reply.file(x, file);
  }

  /** A model as its file has it. */
  static List<NamedMesh> model(TriMesh mesh) {
    return List.of(new NamedMesh("model", Thinning.to(mesh, MOST), Colors.CASTING));
  }

  private static List<NamedMesh> bodies(Path dir) throws IOException {
    Report r = ProofFolder.report(dir);
    List<NamedMesh> all = new ArrayList<>();
    for (Report.PieceFile p : r.pieces()) {
      TriMesh mesh = MeshReader.read(dir.resolve(p.file())).mesh();
      all.add(new NamedMesh(p.name(), mesh, Colors.ofPiece(all.size())));
    }
    TriMesh casting = MeshReader.read(dir.resolve(r.casting().file())).mesh();
    all.add(new NamedMesh("casting", casting, Colors.CASTING));
    long sum = all.stream().mapToLong(m -> m.mesh().triangleCount()).sum();
    if (sum <= MOST) {
      return all;
    }
    List<NamedMesh> thin = new ArrayList<>();
    for (NamedMesh m : all) {
      int share = (int) Math.max(2000, (long) MOST * m.mesh().triangleCount() / sum);
      thin.add(new NamedMesh(m.name(), Thinning.to(m.mesh(), share), m.color()));
    }
    return thin;
  }

  private static void drop(Path kept, String name) throws IOException {
    List<Path> old;
    try (Stream<Path> all = Files.list(kept)) {
      old = all.filter(f -> f.getFileName().toString().matches(name + "-\\d+\\.glb")).toList();
    }
    for (Path f : old) {
      Files.deleteIfExists(f);
    }
  }
}
