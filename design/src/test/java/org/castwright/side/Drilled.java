package org.castwright.side;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * Blocks with round holes, and bodies of revolution: shapes whose pieces can be told by argument.
 */
public final class Drilled {

  private static final int SIDES = 48;
  private static final Frame ALONG_X = new Frame(Vec3.Y, Vec3.Z, Vec3.X);
  private static final Frame ALONG_Y = new Frame(Vec3.Z, Vec3.X, Vec3.Y);
  private static final Frame ALONG_Z = Frame.WORLD;

  private Drilled() {}

  /**
   * A block 60 × 40 × 30 mm with a hole of 10 mm along x and another along z that miss each other.
   */
  public static TriMesh twoHoles(SolidKernel kernel) {
    return less(
        kernel,
        Primitives.box(new Vec3(-30, -20, -15), new Vec3(30, 20, 15)),
        List.of(
            cylinder(5, 40, ALONG_X, new Vec3(0, -8, 0)),
            cylinder(5, 40, ALONG_Z, new Vec3(0, 8, 0))));
  }

  /** A block with a hole of 8 mm along each axis; none meets another. */
  public static TriMesh threeHoles(SolidKernel kernel) {
    return less(
        kernel,
        Primitives.box(new Vec3(-30, -20, -15), new Vec3(30, 20, 15)),
        List.of(
            cylinder(4, 40, ALONG_X, new Vec3(0, -9, -6)),
            cylinder(4, 40, ALONG_Y, new Vec3(15, 0, 6)),
            cylinder(4, 40, ALONG_Z, new Vec3(-15, 9, 0))));
  }

  /** A cube of 50 mm with a blind hole, 10 mm wide and 8 deep, in each face. */
  public static TriMesh sixBlindHoles(SolidKernel kernel) {
    List<TriMesh> holes = new ArrayList<>();
    for (Frame f : List.of(ALONG_X, ALONG_Y, ALONG_Z)) {
      for (int s = -1; s <= 1; s += 2) {
        holes.add(cylinder(5, 8, f, f.w().times(s * 25)));
      }
    }
    return less(kernel, Primitives.box(new Vec3(-25, -25, -25), new Vec3(25, 25, 25)), holes);
  }

  /**
   * A ball of 34 mm with three blind holes, 10 mm wide at the mouth, drilled toward its middle in
   * one plane, 120° apart, the first 10° off x. A hole's floor is seen along its own axis alone, so
   * three pieces are the least, and the middles between the holes are free for two of them.
   */
  public static TriMesh threeWayBall(SolidKernel kernel) {
    List<TriMesh> holes = new ArrayList<>();
    for (Vec3 d : threeWays()) {
      Frame f = Frame.along(d);
      Frame back =
          new Frame(
              new Vec3(f.u().x(), f.v().x(), f.w().x()),
              new Vec3(f.u().y(), f.v().y(), f.w().y()),
              new Vec3(f.u().z(), f.v().z(), f.w().z()));
      holes.add(Primitives.frustum(3.5, 10, 5, 20, SIDES).toLocal(back));
    }
    return less(kernel, Primitives.sphere(17, 64), holes);
  }

  /** The ways out of the holes of {@link #threeWayBall}. */
  public static List<Vec3> threeWays() {
    List<Vec3> out = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      double a = Math.toRadians(10 + 120.0 * k);
      out.add(new Vec3(StrictMath.cos(a), StrictMath.sin(a), 0));
    }
    return out;
  }

  /** A vase 80 mm high, upright along z, whose foot is hollow underneath. */
  public static TriMesh vase() {
    return FloatGrid.snap(
        Primitives.revolve(
            new double[] {0, 6, 14, 6, 16, 0, 20, 0, 30, 25, 24, 50, 14, 70, 18, 80, 0, 80}, 64));
  }

  private static TriMesh less(SolidKernel kernel, TriMesh body, List<TriMesh> holes) {
    List<Solid> tools = new ArrayList<>();
    for (TriMesh h : holes) {
      tools.add(kernel.solid("hole-" + tools.size(), h));
    }
    return FloatGrid.snap(kernel.difference("drilled", kernel.solid("body", body), tools).mesh());
  }

  private static TriMesh cylinder(double radius, double half, Frame frame, Vec3 at) {
    TriMesh m =
        Primitives.revolve(new double[] {0, -half, radius, -half, radius, half, 0, half}, SIDES);
    double[] v = m.xyz().clone();
    for (int i = 0; i < v.length; i += 3) {
      Vec3 p = frame.toWorld(new Vec3(v[i], v[i + 1], v[i + 2])).plus(at);
      v[i] = p.x();
      v[i + 1] = p.y();
      v[i + 2] = p.z();
    }
    return new TriMesh(v, m.tri());
  }
}
