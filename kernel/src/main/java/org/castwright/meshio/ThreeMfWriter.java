package org.castwright.meshio;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.castwright.mesh.TriMesh;

/**
 * Writes 3MF by the Core Specification 1.4.0: millimeters, one object and one build item a mesh, in
 * the order given. Vertices keep their order and every bit; triangles that name a vertex twice,
 * which 3MF forbids, are left out. Whether a mesh is closed is for the caller to know. The same
 * meshes give the same bytes (under the same Java, whose zip library packs them).
 */
public final class ThreeMfWriter {

  private static final String MODEL_PART = "3D/3dmodel.model";

  /** The stamp of every part, so that the clock does not reach the file. */
  private static final LocalDateTime STAMP = LocalDateTime.of(2000, 1, 1, 0, 0);

  private static final String XML = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

  private static final String CONTENT_TYPES =
      XML
          + "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">\n"
          + " <Default Extension=\"rels\" ContentType=\""
          + "application/vnd.openxmlformats-package.relationships+xml\"/>\n"
          + " <Default Extension=\"model\" ContentType=\""
          + "application/vnd.ms-package.3dmanufacturing-3dmodel+xml\"/>\n"
          + "</Types>\n";

  private static final String RELATIONS =
      XML
          + "<Relationships xmlns=\""
          + ThreeMfReader.RELATION_SPACE
          + "\">\n <Relationship Target=\"/"
          + MODEL_PART
          + "\" Id=\"rel0\" Type=\""
          + ThreeMfReader.START
          + "\"/>\n</Relationships>\n";

  private static final int FLUSH_AT = 1 << 16;

  private final List<NamedMesh> meshes;
  private final List<String> colors = new ArrayList<>();
  private final StringBuilder text = new StringBuilder(FLUSH_AT * 2);
  private final OutputStream out;

  private ThreeMfWriter(List<NamedMesh> meshes, OutputStream out) {
    this.meshes = meshes;
    this.out = out;
    for (NamedMesh m : meshes) {
      if (m.color() != null && !colors.contains(color(m))) {
        colors.add(color(m));
      }
    }
  }

  /**
   * Writes the meshes, replacing the file.
   *
   * @throws IllegalArgumentException if there is no mesh, or one has no triangle of three different
   *     vertices or a coordinate that is not finite; the file is then left as it was
   */
  public static void write(Path file, List<NamedMesh> meshes) throws IOException {
    check(meshes);
    try (OutputStream raw = new BufferedOutputStream(Files.newOutputStream(file), FLUSH_AT);
        ZipOutputStream zip = new ZipOutputStream(raw, StandardCharsets.UTF_8)) {
      part(zip, "[Content_Types].xml", CONTENT_TYPES);
      part(zip, ThreeMfReader.RELATIONS, RELATIONS);
      part(zip, MODEL_PART, "");
      new ThreeMfWriter(meshes, zip).model();
    }
  }

  private static void check(List<NamedMesh> meshes) {
    if (meshes.isEmpty()) {
      throw new IllegalArgumentException("there is no mesh to write");
    }
    for (NamedMesh m : meshes) {
      for (double c : m.mesh().xyz()) {
        if (!Double.isFinite(c)) {
          throw new IllegalArgumentException("'" + m.name() + "' has a coordinate of " + c);
        }
      }
      int f = 0;
      while (f < m.mesh().triangleCount() && repeats(m.mesh().tri(), 3 * f)) {
        f++;
      }
      if (f == m.mesh().triangleCount()) {
        throw new IllegalArgumentException("'" + m.name() + "' has no triangles");
      }
    }
  }

  private static boolean repeats(int[] tri, int at) {
    return tri[at] == tri[at + 1] || tri[at + 1] == tri[at + 2] || tri[at + 2] == tri[at];
  }

  private static void part(ZipOutputStream zip, String name, String content) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(STAMP);
    zip.putNextEntry(entry);
    zip.write(content.getBytes(StandardCharsets.UTF_8));
  }

  private static String color(NamedMesh m) {
    return m.color().toUpperCase(Locale.ROOT);
  }

  private void model() throws IOException {
    text.append(XML)
        .append("<model unit=\"millimeter\" xml:lang=\"en-US\" xmlns=\"")
        .append(ThreeMfPart.CORE)
        .append("\">\n <resources>\n");
    materials();
    for (int i = 0; i < meshes.size(); i++) {
      object(meshes.get(i), objectId(i));
    }
    text.append(" </resources>\n <build>\n");
    for (int i = 0; i < meshes.size(); i++) {
      text.append("  <item objectid=\"").append(objectId(i)).append("\"/>\n");
    }
    text.append(" </build>\n</model>\n");
    flush();
  }

  /** The materials come first and take number 1. */
  private int objectId(int mesh) {
    return mesh + (colors.isEmpty() ? 1 : 2);
  }

  private void materials() {
    if (colors.isEmpty()) {
      return;
    }
    text.append("  <basematerials id=\"1\">\n");
    for (String c : colors) {
      text.append("   <base name=\"").append(c).append("\" displaycolor=\"").append(c);
      text.append("\"/>\n");
    }
    text.append("  </basematerials>\n");
  }

  private void object(NamedMesh named, int id) throws IOException {
    text.append("  <object id=\"").append(id).append("\" type=\"model\" name=\"");
    text.append(escaped(named.name())).append('"');
    if (named.color() != null) {
      text.append(" pid=\"1\" pindex=\"").append(colors.indexOf(color(named))).append('"');
    }
    text.append(">\n   <mesh>\n    <vertices>\n");
    TriMesh mesh = named.mesh();
    double[] xyz = mesh.xyz();
    for (int i = 0; i < xyz.length; i += 3) {
      text.append("     <vertex x=\"");
      Decimals.append(text, xyz[i]);
      text.append("\" y=\"");
      Decimals.append(text, xyz[i + 1]);
      text.append("\" z=\"");
      Decimals.append(text, xyz[i + 2]);
      text.append("\"/>\n");
      flushIfLong();
    }
    text.append("    </vertices>\n    <triangles>\n");
    int[] tri = mesh.tri();
    for (int i = 0; i < tri.length; i += 3) {
      if (!repeats(tri, i)) {
        text.append("     <triangle v1=\"").append(tri[i]);
        text.append("\" v2=\"").append(tri[i + 1]);
        text.append("\" v3=\"").append(tri[i + 2]).append("\"/>\n");
        flushIfLong();
      }
    }
    text.append("    </triangles>\n   </mesh>\n  </object>\n");
  }

  private static String escaped(String s) {
    return s.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
  }

  private void flushIfLong() throws IOException {
    if (text.length() > FLUSH_AT) {
      flush();
    }
  }

  private void flush() throws IOException {
    out.write(text.toString().getBytes(StandardCharsets.UTF_8));
    text.setLength(0);
  }
}
