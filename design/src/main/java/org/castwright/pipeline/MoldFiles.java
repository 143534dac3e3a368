package org.castwright.pipeline;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.GlbWriter;
import org.castwright.meshio.NamedMesh;
import org.castwright.meshio.StlWriter;
import org.castwright.meshio.ThreeMfWriter;
import org.castwright.mold.Mold;
import org.castwright.mold.Piece;
import org.castwright.plan.Prism;

/** The mesh files of a mold folder. */
final class MoldFiles {

  static final String CASTING = "casting.stl";
  static final String CHANNELS = "channels.stl";
  static final String BLOCK = "block.stl";
  static final String PACKAGE = "mold.3mf";

  /** For looking at; the proof reads the other files. */
  static final String VIEW = "mold.glb";

  private MoldFiles() {}

  static String piece(Piece p) {
    return "pieces/" + p.name() + ".stl";
  }

  static String print(Piece p) {
    return "print/" + p.name() + ".stl";
  }

  /** The bodies that the proof reads, by the names of their files. */
  static NavigableMap<String, TriMesh> bodies(Mold mold) {
    NavigableMap<String, TriMesh> out = new TreeMap<>();
    out.put(CASTING, mold.casting());
    if (!mold.channels().isEmpty()) {
      out.put(CHANNELS, mold.channels());
    }
    var block = mold.plan().block();
    out.put(BLOCK, FloatGrid.snap(Prism.of(block.outline(), block.box().z0(), block.box().z1())));
    for (Piece p : mold.pieces()) {
      out.put(piece(p), p.mesh());
      out.put(print(p), p.print());
    }
    return out;
  }

  static void write(Path dir, Mold mold) throws IOException {
    Files.createDirectories(dir.resolve("pieces"));
    Files.createDirectories(dir.resolve("print"));
    List<NamedMesh> objects = new ArrayList<>();
    List<NamedMesh> shown = new ArrayList<>();
    for (Piece p : mold.pieces()) {
      objects.add(new NamedMesh(p.name(), p.mesh()));
      shown.add(new NamedMesh(p.name(), p.mesh(), Colors.ofPiece(shown.size())));
    }
    objects.add(new NamedMesh("casting", mold.casting()));
    shown.add(new NamedMesh("casting", mold.casting(), Colors.CASTING));
    List<Writing> files = new ArrayList<>();
    files.add(() -> ThreeMfWriter.write(dir.resolve(PACKAGE), objects));
    files.add(() -> GlbWriter.write(dir.resolve(VIEW), shown));
    bodies(mold)
        .forEach(
            (file, mesh) -> {
              String name = file.replace(".stl", "").replace('/', ' ');
              files.add(
                  () -> StlWriter.write(dir.resolve(file), mesh, "castwright " + name + ", mm"));
            });
    try {
      files.parallelStream().forEach(Writing::runUnchecked);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /** The writing of one file. */
  private interface Writing {
    void run() throws IOException;

    default void runUnchecked() {
      try {
        run();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
