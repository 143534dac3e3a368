package org.castwright.meshio;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.castwright.mesh.TriMesh;

/** Files of every format for the tests, written without the help of the writers under test. */
final class ModelFiles {

  static final String CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";

  /** A tetrahedron with its corner at the origin and legs of one: volume 1/6. */
  static final String TETRA_MESH =
      "<mesh><vertices><vertex x='0' y='0' z='0'/><vertex x='1' y='0' z='0'/>"
          + "<vertex x='0' y='1' z='0'/><vertex x='0' y='0' z='1'/></vertices><triangles>"
          + "<triangle v1='0' v2='2' v3='1'/><triangle v1='0' v2='1' v3='3'/>"
          + "<triangle v1='1' v2='2' v3='3'/><triangle v1='2' v2='0' v3='3'/></triangles></mesh>";

  private ModelFiles() {}

  static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  static byte[] golden(String name) {
    try (var in = ModelFiles.class.getResourceAsStream(name)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static RawModel read(Path folder, String name, byte[] content) throws IOException {
    Path file = folder.resolve(name);
    Files.write(file, content);
    return MeshReader.read(file);
  }

  static byte[] stlText(TriMesh m) {
    StringBuilder s = new StringBuilder("solid test\n");
    for (int i = 0; i < m.tri().length; i += 3) {
      s.append("facet normal 0 0 0\nouter loop\n");
      for (int k = 0; k < 3; k++) {
        s.append("vertex ").append(point(m, m.tri()[i + k])).append('\n');
      }
      s.append("endloop\nendfacet\n");
    }
    return ascii(s.append("endsolid test\n").toString());
  }

  static byte[] obj(TriMesh m) {
    StringBuilder s = new StringBuilder();
    for (int i = 0; i < m.vertexCount(); i++) {
      s.append("v ").append(point(m, i)).append('\n');
    }
    for (int i = 0; i < m.tri().length; i += 3) {
      s.append("f ").append(m.tri()[i] + 1).append(' ').append(m.tri()[i + 1] + 1).append(' ');
      s.append(m.tri()[i + 2] + 1).append('\n');
    }
    return ascii(s.toString());
  }

  static byte[] off(TriMesh m) {
    String head = "OFF\n" + m.vertexCount() + " " + m.triangleCount() + " 0\n";
    return ascii(head + rows(m));
  }

  static byte[] plyText(TriMesh m) {
    return ascii(plyHeader(m, "ascii") + rows(m));
  }

  static byte[] plyBinary(TriMesh m, ByteOrder order) {
    boolean little = order == ByteOrder.LITTLE_ENDIAN;
    byte[] head = ascii(plyHeader(m, little ? "binary_little_endian" : "binary_big_endian"));
    ByteBuffer b =
        ByteBuffer.allocate(head.length + 24 * m.vertexCount() + 13 * m.triangleCount())
            .order(order);
    b.put(head);
    for (double c : m.xyz()) {
      b.putDouble(c);
    }
    for (int i = 0; i < m.tri().length; i += 3) {
      b.put((byte) 3).putInt(m.tri()[i]).putInt(m.tri()[i + 1]).putInt(m.tri()[i + 2]);
    }
    return b.array();
  }

  private static String plyHeader(TriMesh m, String format) {
    return "ply\nformat "
        + format
        + " 1.0\nelement vertex "
        + m.vertexCount()
        + "\nproperty double x\nproperty double y\nproperty double z\nelement face "
        + m.triangleCount()
        + "\nproperty list uchar int vertex_indices\nend_header\n";
  }

  private static String rows(TriMesh m) {
    StringBuilder s = new StringBuilder();
    for (int i = 0; i < m.vertexCount(); i++) {
      s.append(point(m, i)).append('\n');
    }
    for (int i = 0; i < m.tri().length; i += 3) {
      s.append("3 ").append(m.tri()[i]).append(' ').append(m.tri()[i + 1]).append(' ');
      s.append(m.tri()[i + 2]).append('\n');
    }
    return s.toString();
  }

  private static String point(TriMesh m, int i) {
    return m.xyz()[3 * i] + " " + m.xyz()[3 * i + 1] + " " + m.xyz()[3 * i + 2];
  }

  /** A 3MF package whose start part holds the text given inside its model element. */
  static byte[] threeMf(String attributes, String content) {
    return zip(List.of("3D/3dmodel.model", model(attributes, content)));
  }

  static String model(String attributes, String content) {
    return "<?xml version='1.0' encoding='UTF-8'?>\n<model xmlns='"
        + CORE
        + "' "
        + attributes
        + ">\n"
        + content
        + "\n</model>";
  }

  /** A zip of the parts given as name, content, name, content, with relations to the usual part. */
  static byte[] zip(List<String> parts) {
    Map<String, byte[]> map = new LinkedHashMap<>();
    for (int i = 0; i < parts.size(); i += 2) {
      map.put(parts.get(i), parts.get(i + 1).getBytes(StandardCharsets.UTF_8));
    }
    return zip(map);
  }

  static byte[] zip(String part, byte[] content) {
    return zip(Map.of(part, content));
  }

  private static byte[] zip(Map<String, byte[]> parts) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, byte[]> part : parts.entrySet()) {
        zip.putNextEntry(new ZipEntry(part.getKey()));
        zip.write(part.getValue());
      }
      zip.putNextEntry(new ZipEntry("_rels/.rels"));
      zip.write(
          ascii(
              "<Relationships xmlns='http://schemas.openxmlformats.org/package/2006/relationships'>"
                  + "<Relationship Target='/3D/3dmodel.model' Id='a' Type='"
                  + "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel'/>"
                  + "</Relationships>"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  static byte[] gzip(byte[] content) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(bytes)) {
      out.write(content);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }
}
