package org.castwright.demo;

import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;

/**
 * Builds a closed body from an upper and a lower height over one outline that is star-shaped about
 * the origin. Both sides stand on the same grid of rings, ring {@code k} with {@code 6 k} points,
 * and share the points of the rim, so every vertical line through the body enters it once and
 * leaves it once.
 */
final class TwoSided {

  private static final int SECTORS = 6;

  /** The shape to be built; {@code share} runs from 0 at the middle to 1 on the rim. */
  interface Form {

    /** Distance of the outline from the origin, mm; the angle is measured from x toward y. */
    double radius(double angle);

    /** Height of the rim, which is also the limit of both sides there, mm. */
    double rim(double angle);

    double upper(double x, double y, double share);

    double lower(double x, double y, double share);
  }

  private TwoSided() {}

  /** The vertices of one side: the middle, then ring after ring. */
  static int sideVertices(int rings) {
    return 1 + SECTORS / 2 * rings * (rings + 1);
  }

  /** The vertices inside the rim; the lower side has only these of its own. */
  static int innerVertices(int rings) {
    return sideVertices(rings - 1);
  }

  /**
   * Upper side first, then the inner vertices of the lower side in the same order: inner vertex
   * {@code i} and vertex {@code sideVertices + i} stand over one another.
   */
  static TriMesh build(Form form, int rings) {
    MeshBuilder m = new MeshBuilder();
    addVertices(m, form, rings, true);
    addVertices(m, form, rings - 1, false, rings);
    int side = sideVertices(rings);
    int inner = innerVertices(rings);
    for (int ring = 1; ring <= rings; ring++) {
      for (int sector = 0; sector < SECTORS; sector++) {
        for (int j = 0; j < ring; j++) {
          int a = vertex(ring, sector * ring + j);
          int b = vertex(ring, sector * ring + j + 1);
          int c = vertex(ring - 1, sector * (ring - 1) + j);
          both(m, a, b, c, side, inner);
          if (j + 1 < ring) {
            int d = vertex(ring - 1, sector * (ring - 1) + j + 1);
            both(m, c, b, d, side, inner);
          }
        }
      }
    }
    return m.build();
  }

  private static void addVertices(MeshBuilder m, Form form, int rings, boolean upper) {
    addVertices(m, form, rings, upper, rings);
  }

  private static void addVertices(MeshBuilder m, Form form, int upTo, boolean upper, int rings) {
    m.vertex(0, 0, upper ? form.upper(0, 0, 0) : form.lower(0, 0, 0));
    for (int ring = 1; ring <= upTo; ring++) {
      double share = (double) ring / rings;
      for (int i = 0; i < SECTORS * ring; i++) {
        double angle = 2 * Math.PI * i / (SECTORS * ring);
        double r = share * form.radius(angle);
        double x = r * StrictMath.cos(angle);
        double y = r * StrictMath.sin(angle);
        double z =
            ring == rings
                ? form.rim(angle)
                : upper ? form.upper(x, y, share) : form.lower(x, y, share);
        m.vertex(x, y, z);
      }
    }
  }

  private static int vertex(int ring, int i) {
    return ring == 0 ? 0 : 1 + SECTORS / 2 * ring * (ring - 1) + i % (SECTORS * ring);
  }

  private static void both(MeshBuilder m, int a, int b, int c, int side, int inner) {
    m.triangle(a, b, c);
    m.triangle(below(a, side, inner), below(c, side, inner), below(b, side, inner));
  }

  private static int below(int v, int side, int inner) {
    return v < inner ? side + v : v;
  }
}
