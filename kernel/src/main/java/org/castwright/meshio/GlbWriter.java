package org.castwright.meshio;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.castwright.geom.Box3;

/**
 * Writes binary glTF 2.0 (Khronos Group, glTF 2.0 Specification, 2021; ISO/IEC 12113:2022) for
 * looking at a mold in any viewer: a node "mold" that turns millimeters into the format's meters,
 * and under it one named node a mesh, in the order given. The format's y axis points up, and so
 * must the meshes'. Vertices keep their order and are stored as 32-bit floats; no normals are
 * written, so viewers shade facets flat, as the format asks. The same meshes give the same bytes.
 */
public final class GlbWriter {

  private static final int MAGIC = 0x46546C67;
  private static final int VERSION = 2;
  private static final int JSON = 0x4E4F534A;
  private static final int BIN = 0x004E4942;

  /** Header of the file and of a chunk, bytes. */
  private static final int HEAD = 12;

  private static final int CHUNK_HEAD = 8;

  private static final int FLOAT = 5126;
  private static final int UNSIGNED_INT = 5125;
  private static final int VERTICES = 34962;
  private static final int TRIANGLES = 34963;

  /** Bytes of a vertex and of a triangle. */
  private static final int STRIDE = 12;

  private static final int BUFFER = 1 << 16;
  private static final long LONGEST = 0xFFFF_FFFFL;

  /** What has no color of its own: a light gray. */
  private static final String PLAIN = "#CCCCCC";

  private final List<NamedMesh> meshes;

  private GlbWriter(List<NamedMesh> meshes) {
    this.meshes = meshes;
  }

  /**
   * Writes the meshes, replacing the file.
   *
   * @throws IllegalArgumentException if there is no mesh, one has no triangle, a coordinate is no
   *     finite 32-bit float, or all is more than the format's 4 GB
   */
  public static void write(Path file, List<NamedMesh> meshes) throws IOException {
    check(meshes);
    new GlbWriter(meshes).write(file);
  }

  private static void check(List<NamedMesh> meshes) {
    if (meshes.isEmpty()) {
      throw new IllegalArgumentException("there is no mesh to write");
    }
    for (NamedMesh m : meshes) {
      if (m.mesh().isEmpty()) {
        throw new IllegalArgumentException("'" + m.name() + "' has no triangles");
      }
      for (double c : m.mesh().xyz()) {
        if (!Float.isFinite((float) c)) {
          throw new IllegalArgumentException("'" + m.name() + "' has a coordinate of " + c);
        }
      }
    }
  }

  private void write(Path file) throws IOException {
    long bytes = 0;
    for (NamedMesh m : meshes) {
      bytes += positionBytes(m) + indexBytes(m);
    }
    byte[] json = padded(json(bytes));
    long total = HEAD + CHUNK_HEAD + json.length + CHUNK_HEAD + bytes;
    if (total > LONGEST) {
      throw new IllegalArgumentException("the mold is too large for one glTF file");
    }
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), BUFFER)) {
      out.write(ints(MAGIC, VERSION, (int) total, json.length, JSON));
      out.write(json);
      out.write(ints((int) bytes, BIN));
      for (NamedMesh m : meshes) {
        body(out, m);
      }
    }
  }

  private static long positionBytes(NamedMesh m) {
    return (long) STRIDE * m.mesh().vertexCount();
  }

  private static long indexBytes(NamedMesh m) {
    return (long) STRIDE * m.mesh().triangleCount();
  }

  /** Chunks end on a multiple of four bytes; JSON is filled up with spaces. */
  private static byte[] padded(String json) {
    byte[] plain = json.getBytes(StandardCharsets.UTF_8);
    String spaces = " ".repeat((4 - plain.length % 4) % 4);
    return (json + spaces).getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] ints(int... values) {
    ByteBuffer b = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
    for (int v : values) {
      b.putInt(v);
    }
    return b.array();
  }

  private static void body(OutputStream out, NamedMesh m) throws IOException {
    byte[] room = new byte[BUFFER];
    ByteBuffer b = ByteBuffer.wrap(room).order(ByteOrder.LITTLE_ENDIAN);
    for (double c : m.mesh().xyz()) {
      b.putFloat((float) c);
      if (!b.hasRemaining()) {
        out.write(room);
        b.clear();
      }
    }
    for (int v : m.mesh().tri()) {
      b.putInt(v);
      if (!b.hasRemaining()) {
        out.write(room);
        b.clear();
      }
    }
    out.write(room, 0, b.position());
  }

  private String json(long bytes) {
    StringBuilder nodes = new StringBuilder();
    StringBuilder children = new StringBuilder();
    StringBuilder bodies = new StringBuilder();
    StringBuilder materials = new StringBuilder();
    StringBuilder accessors = new StringBuilder();
    StringBuilder views = new StringBuilder();
    long at = 0;
    for (int i = 0; i < meshes.size(); i++) {
      NamedMesh m = meshes.get(i);
      String comma = i == 0 ? "" : ",";
      String name = quoted(m.name());
      children.append(comma).append(i + 1);
      nodes.append(",{\"name\":").append(name).append(",\"mesh\":").append(i).append('}');
      bodies.append(comma).append("{\"name\":").append(name);
      bodies.append(",\"primitives\":[{\"attributes\":{\"POSITION\":").append(2 * i);
      bodies.append("},\"indices\":").append(2 * i + 1).append(",\"material\":").append(i);
      bodies.append("}]}");
      materials.append(comma).append(material(m, name));
      accessors.append(comma).append(positions(m, 2 * i)).append(',').append(indices(m, 2 * i + 1));
      views.append(comma).append(view(at, positionBytes(m), VERTICES)).append(',');
      at += positionBytes(m);
      views.append(view(at, indexBytes(m), TRIANGLES));
      at += indexBytes(m);
    }
    return "{\"asset\":{\"version\":\"2.0\",\"generator\":\"castwright\"},\"scene\":0,\"scenes\":"
        + "[{\"nodes\":[0]}],\"nodes\":[{\"name\":\"mold\",\"scale\":[0.001,0.001,0.001],"
        + "\"children\":["
        + children
        + "]}"
        + nodes
        + "],\"meshes\":["
        + bodies
        + "],\"materials\":["
        + materials
        + "],\"accessors\":["
        + accessors
        + "],\"bufferViews\":["
        + views
        + "],\"buffers\":[{\"byteLength\":"
        + bytes
        + "}]}";
  }

  private static String positions(NamedMesh m, int view) {
    Box3 b = m.mesh().bounds();
    return accessor(view, FLOAT, m.mesh().vertexCount(), "VEC3")
        + ",\"min\":["
        + ((float) b.min().x() + "," + (float) b.min().y() + "," + (float) b.min().z())
        + "],\"max\":["
        + ((float) b.max().x() + "," + (float) b.max().y() + "," + (float) b.max().z())
        + "]}";
  }

  private static String indices(NamedMesh m, int view) {
    return accessor(view, UNSIGNED_INT, 3 * m.mesh().triangleCount(), "SCALAR") + "}";
  }

  private static String accessor(int view, int component, int count, String type) {
    return "{\"bufferView\":"
        + view
        + ",\"componentType\":"
        + component
        + ",\"count\":"
        + count
        + ",\"type\":\""
        + type
        + "\"";
  }

  private static String view(long offset, long length, int target) {
    return "{\"buffer\":0,\"byteOffset\":"
        + offset
        + ",\"byteLength\":"
        + length
        + ",\"target\":"
        + target
        + "}";
  }

  private static String material(NamedMesh m, String name) {
    String color = m.color() == null ? PLAIN : m.color();
    StringBuilder factor = new StringBuilder();
    for (int at = 1; at < color.length(); at += 2) {
      factor.append((float) linear(Integer.parseInt(color, at, at + 2, 16) / 255.0)).append(',');
    }
    return "{\"name\":"
        + name
        + ",\"pbrMetallicRoughness\":{\"baseColorFactor\":["
        + factor
        + "1],\"metallicFactor\":0,\"roughnessFactor\":0.7}}";
  }

  /** From sRGB to the linear light that the format asks for (IEC 61966-2-1). */
  private static double linear(double c) {
    return c <= 0.04045 ? c / 12.92 : StrictMath.pow((c + 0.055) / 1.055, 2.4);
  }

  private static String quoted(String s) {
    return '"' + s.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }
}
