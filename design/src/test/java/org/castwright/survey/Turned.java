package org.castwright.survey;

import java.util.SplittableRandom;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** Rotations for tests. */
final class Turned {

  private Turned() {}

  static Vec3 direction(SplittableRandom random) {
    double z = 2 * random.nextDouble() - 1;
    double a = 2 * Math.PI * random.nextDouble();
    double r = Math.sqrt(1 - z * z);
    return new Vec3(r * StrictMath.cos(a), r * StrictMath.sin(a), z);
  }

  static Frame frame(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    return Frame.along(direction(random)).turned(360 * random.nextDouble());
  }

  /** The mesh with its z axis laid along {@code frame.w()}. */
  static TriMesh by(TriMesh mesh, Frame frame) {
    double[] out = mesh.xyz().clone();
    for (int i = 0; i < out.length; i += 3) {
      Vec3 p = frame.toWorld(new Vec3(out[i], out[i + 1], out[i + 2]));
      out[i] = p.x();
      out[i + 1] = p.y();
      out[i + 2] = p.z();
    }
    return new TriMesh(out, mesh.tri());
  }

  /** Degrees between two axes, sign ignored. */
  static double degrees(Vec3 a, Vec3 b) {
    return Math.toDegrees(Math.asin(Math.min(1, a.cross(b).length())));
  }
}
