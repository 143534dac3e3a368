package org.castwright.survey;

import org.castwright.mesh.TriMesh;

/** Whether a model is a made thing, with large flat faces, or a scan or a sculpture. */
public final class Made {

  /** A facet with more than this share of the surface is a face of a made thing. */
  private static final double FACE = 0.005;

  /** A model with so much of its surface in such faces is one. */
  private static final double FACES = 0.3;

  private Made() {}

  /** Judges by the largest facets. */
  public static boolean of(TriMesh mesh) {
    double whole = mesh.area();
    double faces = 0;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      double area = mesh.areaVector(f).length();
      faces += area > FACE * whole ? area : 0;
    }
    return faces > FACES * whole;
  }
}
