package org.castwright.meshio;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.castwright.mesh.TriMesh;

/**
 * Writes binary STL: 84 bytes and 50 a triangle, coordinates rounded to the nearest float, normals
 * from the rounded corners. The same mesh and header give the same bytes. STL keeps no shared
 * corners: snap the mesh with {@link org.castwright.mesh.FloatGrid} first if a reader must find
 * them again.
 */
public final class StlWriter {

  private static final int BUFFER = 1 << 16;

  private StlWriter() {}

  /** As {@link #write(OutputStream, TriMesh, String)}, replacing the file. */
  public static void write(Path file, TriMesh mesh, String header) throws IOException {
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), BUFFER)) {
      write(out, mesh, header);
    }
  }

  /**
   * Writes the mesh and leaves the stream open.
   *
   * @param header at most 80 characters of ASCII; not "solid" at the start, by which many programs
   *     know text STL
   * @throws IllegalArgumentException if the header is none of that, or a coordinate is not finite
   *     as a float
   */
  public static void write(OutputStream out, TriMesh mesh, String header) throws IOException {
    out.write(head(mesh, header));
    ByteBuffer record = ByteBuffer.allocate(StlBinaryReader.RECORD).order(ByteOrder.LITTLE_ENDIAN);
    float[] corners = new float[9];
    for (int f = 0; f < mesh.triangleCount(); f++) {
      load(mesh, f, corners);
      record.clear();
      putNormal(record, corners);
      for (float c : corners) {
        record.putFloat(c);
      }
      record.putShort((short) 0);
      out.write(record.array());
    }
  }

  private static byte[] head(TriMesh mesh, String header) {
    boolean ascii = header.chars().allMatch(c -> c >= ' ' && c <= '~');
    if (!ascii
        || header.length() > StlBinaryReader.COUNT_AT
        || header.toLowerCase(Locale.ROOT).startsWith("solid")) {
      throw new IllegalArgumentException(
          "an STL header is up to 80 ASCII characters that do not begin with 'solid': " + header);
    }
    byte[] head = new byte[StlBinaryReader.HEADER];
    byte[] text = header.getBytes(StandardCharsets.US_ASCII);
    System.arraycopy(text, 0, head, 0, text.length);
    ByteBuffer.wrap(head)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putInt(StlBinaryReader.COUNT_AT, mesh.triangleCount());
    return head;
  }

  private static void load(TriMesh mesh, int f, float[] corners) {
    for (int k = 0; k < 3; k++) {
      int v = 3 * mesh.tri()[3 * f + k];
      for (int axis = 0; axis < 3; axis++) {
        // adding zero turns -0 into 0
        float c = (float) mesh.xyz()[v + axis] + 0f;
        if (!Float.isFinite(c)) {
          throw new IllegalArgumentException(
              "triangle " + f + " has a corner at " + mesh.vertex(v / 3) + ", no finite float");
        }
        corners[3 * k + axis] = c;
      }
    }
  }

  private static void putNormal(ByteBuffer record, float[] c) {
    double ux = (double) c[3] - c[0];
    double uy = (double) c[4] - c[1];
    double uz = (double) c[5] - c[2];
    double vx = (double) c[6] - c[0];
    double vy = (double) c[7] - c[1];
    double vz = (double) c[8] - c[2];
    double nx = uy * vz - uz * vy;
    double ny = uz * vx - ux * vz;
    double nz = ux * vy - uy * vx;
    double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    double scale = length > 0 ? 1 / length : 0;
    record.putFloat((float) (nx * scale) + 0f);
    record.putFloat((float) (ny * scale) + 0f);
    record.putFloat((float) (nz * scale) + 0f);
  }
}
