package org.castwright.mesh;

import java.util.HashSet;
import java.util.Set;

/**
 * Rounds a mesh to the numbers a binary STL can hold. STL stores 32-bit floats and no vertex
 * indices, so a reader finds shared corners by equal coordinates. After {@link #snap} every vertex
 * has its own float position, and therefore a file read back has the very topology that was
 * written.
 */
public final class FloatGrid {

  private FloatGrid() {}

  /**
   * The mesh with every coordinate rounded to the nearest float. Where two vertices would fall on
   * one position the later one is moved in x by as few float steps as make it unique.
   */
  public static TriMesh snap(TriMesh mesh) {
    double[] in = mesh.xyz();
    double[] out = new double[in.length];
    Set<Position> taken = new HashSet<>(in.length);
    for (int i = 0; i < in.length; i += 3) {
      // adding zero turns -0 into 0, which a reader compares as equal
      float x = (float) in[i] + 0f;
      float y = (float) in[i + 1] + 0f;
      float z = (float) in[i + 2] + 0f;
      while (!taken.add(new Position(x, y, z))) {
        x = Math.nextUp(x);
      }
      out[i] = x;
      out[i + 1] = y;
      out[i + 2] = z;
    }
    return new TriMesh(out, mesh.tri());
  }

  private record Position(float x, float y, float z) {}
}
