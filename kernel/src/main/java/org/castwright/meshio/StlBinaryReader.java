package org.castwright.meshio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.castwright.mesh.PointTable;
import org.castwright.mesh.TriMesh;

/**
 * Binary STL: 80 bytes of header, a 32-bit count, then 50 bytes a triangle (normal, three corners,
 * two spare bytes), little-endian. Normals and spare bytes are not read.
 */
final class StlBinaryReader {

  static final int COUNT_AT = 80;
  static final int HEADER = 84;
  static final int RECORD = 50;
  private static final int CORNERS_AT = 12;

  private final Source source;
  private final ByteBuffer data;

  StlBinaryReader(Source source) {
    this.source = source;
    this.data = ByteBuffer.wrap(source.bytes()).order(ByteOrder.LITTLE_ENDIAN);
  }

  /** Whether the file is as long as the count in its header says. */
  static boolean fits(Source source) {
    if (source.length() < HEADER) {
      return false;
    }
    return source.length() == HEADER + RECORD * promised(source);
  }

  private static long promised(Source source) {
    return ByteBuffer.wrap(source.bytes()).order(ByteOrder.LITTLE_ENDIAN).getInt(COUNT_AT)
        & 0xffffffffL;
  }

  TriMesh read() {
    int n = count();
    int[] tri = new int[3 * n];
    // a closed mesh has half as many vertices as triangles
    PointTable points = new PointTable(n / 2 + 2);
    for (int f = 0; f < n; f++) {
      source.progress(f, f, n);
      int at = HEADER + RECORD * f + CORNERS_AT;
      for (int k = 0; k < 3; k++, at += 12) {
        float x = data.getFloat(at);
        float y = data.getFloat(at + 4);
        float z = data.getFloat(at + 8);
        if (!Float.isFinite(x) || !Float.isFinite(y) || !Float.isFinite(z)) {
          throw source.fault(
              "triangle " + f + " (byte " + at + ")",
              "a corner is at " + x + ", " + y + ", " + z + ", which is no finite place",
              "repair the model in the program that made it");
        }
        tri[3 * f + k] = points.indexOf(x, y, z);
      }
    }
    return new TriMesh(points.toArray(), tri);
  }

  private int count() {
    int length = source.length();
    if (length < HEADER) {
      throw source.fault(
          "byte " + length,
          "the file ends inside the " + HEADER + " bytes of a binary STL header",
          Source.EXPORT_AGAIN);
    }
    long promised = promised(source);
    int held = (length - HEADER) / RECORD;
    int spare = (length - HEADER) % RECORD;
    if (promised > held) {
      throw source.fault(
          "byte " + COUNT_AT,
          String.format(
              "the header promises %d triangles but the %d bytes of the file hold %d",
              promised, length, held),
          "the file was cut short or damaged, " + Source.EXPORT_AGAIN);
    }
    if (promised < held) {
      throw source.fault(
          "byte " + COUNT_AT,
          String.format(
              "the header promises %d triangles but the %d bytes of the file hold %d",
              promised, length, held),
          "the count is wrong, " + Source.EXPORT_AGAIN);
    }
    if (spare > 0) {
      source.note(spare + " bytes after the last triangle were left out.");
    }
    return source.allowed(promised, "byte " + COUNT_AT);
  }
}
