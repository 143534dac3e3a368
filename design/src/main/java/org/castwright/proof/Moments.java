package org.castwright.proof;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** Moments of the facets' centers, weighted by area, about their mean; the body scaled to one. */
final class Moments {

  private final TriMesh mesh;
  private final double size;
  private final Vec3 origin;
  private final double area;

  Moments(TriMesh mesh) {
    this.mesh = mesh;
    this.size = mesh.bounds().diagonal();
    Vec3 sum = Vec3.ZERO;
    double total = 0;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      double w = mesh.areaVector(f).length();
      sum = sum.plus(mesh.center(f).times(w));
      total += w;
    }
    origin = sum.times(1 / total);
    area = total;
  }

  /** The mean of r |r|²: towards where the body reaches out farther. */
  Vec3 lean() {
    Vec3 sum = Vec3.ZERO;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      Vec3 r = mesh.center(f).minus(origin).times(1 / size);
      sum = sum.plus(r.times(r.dot(r) * mesh.areaVector(f).length() / area));
    }
    return sum;
  }

  /** The mean of r (r · x): the matrix of second moments times x. */
  Vec3 spread(Vec3 x) {
    Vec3 sum = Vec3.ZERO;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      Vec3 r = mesh.center(f).minus(origin).times(1 / size);
      sum = sum.plus(r.times(r.dot(x) * mesh.areaVector(f).length() / area));
    }
    return sum;
  }
}
