package org.castwright.proof;

import java.util.Arrays;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Whether the print file holds the piece itself, moved but not bent, scaled or mirrored, and stands
 * on the bed. Compared are volume, the sorted lengths of all edges, and the handedness of moments
 * of the surface (which says nothing for a body that is its own mirror image).
 */
final class PrintCheck {

  /** Float steps by which an edge may differ: each of its ends is rounded once in each file. */
  private static final int STEPS = 4;

  /** Distance from the bed that no printer shows, mm. */
  private static final double FLOAT_OFF = 1e-3;

  /** Below this, moments scaled to one, handedness may be drowned by rounding to floats (1e-7). */
  private static final double HANDED = 1e-5;

  private PrintCheck() {}

  static ProofCheck sameBody(String piece, TriMesh mesh, TriMesh print) {
    String name = "print: " + piece + " same body";
    double noise = STEPS * Math.ulp((float) Math.max(largest(mesh), largest(print)));
    double[] a = edges(mesh);
    double[] b = edges(print);
    if (a.length != b.length) {
      String words =
          "The print file of "
              + piece
              + " has "
              + print.triangleCount()
              + " triangles, the piece "
              + mesh.triangleCount()
              + ".";
      return new ProofCheck(name, false, Double.NaN, noise, "mm", words);
    }
    double off = 0;
    for (int i = 0; i < a.length; i++) {
      off = Math.max(off, Math.abs(a[i] - b[i]));
    }
    // volume: every facet may move by the noise
    double volumeOff = Math.abs(mesh.volume() - print.volume());
    boolean sameVolume = volumeOff <= noise * mesh.area();
    boolean mirrored = handedness(mesh) * handedness(print) < 0;
    boolean passed = off <= noise && sameVolume && !mirrored;
    String words;
    if (passed) {
      words = "The print file of " + piece + " is the piece, only moved.";
    } else if (mirrored && off <= noise) {
      words = "The print file of " + piece + " is the piece's mirror image.";
    } else {
      words =
          "The print file of "
              + piece
              + " is another body: edges differ by up to "
              + Say.number(off)
              + " mm and volumes by "
              + Say.number(volumeOff)
              + " mm³.";
    }
    return new ProofCheck(name, passed, off, noise, "mm", words);
  }

  static ProofCheck standing(String piece, TriMesh print) {
    double low = print.bounds().min().z();
    boolean passed = Math.abs(low) <= FLOAT_OFF;
    String words =
        "The print file of "
            + piece
            + (passed
                ? " stands on the bed."
                : low > 0
                    ? " floats " + Say.number(low) + " mm above the bed."
                    : " reaches " + Say.number(-low) + " mm below the bed.");
    return new ProofCheck(
        "print: " + piece + " stands on the bed", passed, low, FLOAT_OFF, "mm", words);
  }

  private static double largest(TriMesh mesh) {
    double most = 0;
    for (double x : mesh.xyz()) {
      most = Math.max(most, Math.abs(x));
    }
    return most;
  }

  private static double[] edges(TriMesh mesh) {
    int[] t = mesh.tri();
    double[] out = new double[t.length];
    for (int h = 0; h < t.length; h++) {
      out[h] = mesh.vertex(t[h]).minus(mesh.vertex(t[Outline.next(h)])).length();
    }
    Arrays.sort(out);
    return out;
  }

  /**
   * The sign of d · (M d × M² d), d the mean of the facets' centers weighted by area and distance
   * squared, M their second moments; 0 where it is too small to tell.
   */
  private static int handedness(TriMesh mesh) {
    Moments m = new Moments(mesh);
    Vec3 a = m.lean();
    if (a.length() <= HANDED) {
      return 0;
    }
    Vec3 b = m.spread(a.unit());
    Vec3 c = m.spread(b.unit());
    double triple = a.unit().dot(b.unit().cross(c.unit()));
    return Math.abs(triple) <= HANDED ? 0 : (int) Math.signum(triple);
  }
}
