package org.castwright.meshio;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.castwright.geom.LengthUnit;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/** Reads a model file of any {@link Format}, plain or gzipped. */
public final class MeshReader {

  private MeshReader() {}

  /** As {@link #read(Path, ReadLimits, Progress)}, with the default limits and in silence. */
  public static RawModel read(Path file) throws IOException {
    return read(file, ReadLimits.DEFAULT, Progress.NONE);
  }

  /**
   * The model as the file states it. What the file is decides its content; its name counts only
   * where the content leaves it open.
   *
   * @throws MeshException if it is no model file, is damaged, states a coordinate that is not
   *     finite or a vertex that is not there, holds no triangles, or asks for more than the limits
   * @throws IOException if the file cannot be read from the disk
   */
  public static RawModel read(Path file, ReadLimits limits, Progress progress) throws IOException {
    Path last = file.getFileName();
    String name = last == null ? file.toString() : last.toString();
    try {
      Source source = new Source(name, load(file, name, limits), limits, progress);
      if (Gunzip.isGzip(source.bytes())) {
        source = new Source(name, Gunzip.unpack(source), limits, progress);
      }
      return read(source);
    } catch (OutOfMemoryError e) {
      throw new MeshException(
          name
              + ": the model needs more memory than Java was given; "
              + "give it more with -Xmx or reduce the model.",
          e);
    }
  }

  private static byte[] load(Path file, String name, ReadLimits limits) throws IOException {
    if (!Files.isRegularFile(file)) {
      throw new MeshException(name + ": there is no such file at " + file + "; check the path.");
    }
    long size = Files.size(file);
    if (size > limits.maxBytes()) {
      throw new MeshException(
          name
              + ": its "
              + size
              + " bytes are more than the limit of "
              + limits.maxBytes()
              + "; reduce the model and export it again.");
    }
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes((int) size);
    }
  }

  private static RawModel read(Source source) throws IOException {
    Format format = FormatGuess.of(source);
    LengthUnit unit = null;
    TriMesh mesh;
    switch (format) {
      case STL_BINARY -> mesh = new StlBinaryReader(source).read();
      case STL_TEXT -> mesh = new StlTextReader(source).read();
      case OBJ -> mesh = new ObjReader(source).read();
      case PLY -> mesh = new PlyReader(source).read();
      case OFF -> mesh = new OffReader(source).read();
      case THREE_MF -> {
        ThreeMfReader reader = new ThreeMfReader(source);
        mesh = reader.read();
        unit = reader.unit();
      }
      default -> throw new IllegalStateException("no reader for " + format);
    }
    if (mesh.isEmpty()) {
      throw source.fault(
          "byte " + source.length(),
          "the " + format.title() + " file holds no triangles",
          "export the model as a mesh of triangles");
    }
    return new RawModel(mesh, format, unit, source.notes(), source.name());
  }
}
