package org.castwright.mold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** The cavity looks up whenever a flat face allows it. */
class PrintPoseTest {

  private static final TriMesh SLAB = Primitives.box(new Vec3(-20, -15, -4), new Vec3(20, 15, 4));

  /** The height, in the print, of the side that looks against the pull. */
  private static double up(PrintPose pose, Vec3 pull) {
    return pose.axes().toLocal(pull.negate()).z();
  }

  private static TriMesh turned(TriMesh mesh, Frame frame) {
    Frame back =
        new Frame(
            new Vec3(frame.u().x(), frame.v().x(), frame.w().x()),
            new Vec3(frame.u().y(), frame.v().y(), frame.w().y()),
            new Vec3(frame.u().z(), frame.v().z(), frame.w().z()));
    return mesh.toLocal(back);
  }

  @Test
  void outerFaceLiesOnTheBed() {
    for (Vec3 pull : new Vec3[] {Vec3.Z, Vec3.Z.negate(), Vec3.X, Vec3.Y.negate()}) {
      PrintPose pose = PrintPose.of(SLAB, pull);
      assertEquals(PrintPose.Foot.OUTER_FACE, pose.foot());
      assertEquals(1, up(pose, pull), 1e-15);
      TriMesh print = pose.apply(SLAB);
      assertEquals(0, print.bounds().min().z());
      assertEquals(2 * Math.abs(pull.dot(SLAB.bounds().max())), print.bounds().max().z(), 1e-6);
    }
  }

  @Test
  void slantedOuterFaceLiesOnTheBedExactly() {
    Vec3 pull = new Vec3(1, 2, -0.7).unit();
    TriMesh slanted = turned(SLAB, Frame.along(pull));
    PrintPose pose = PrintPose.of(slanted, pull);
    assertEquals(PrintPose.Foot.OUTER_FACE, pose.foot());
    TriMesh print = pose.apply(slanted);
    int on = 0;
    for (int i = 0; i < print.vertexCount(); i++) {
      on += print.vertex(i).z() == 0 ? 1 : 0;
    }
    assertEquals(4, on);
    assertEquals(SLAB.volume(), print.volume(), 1e-3);
    assertTrue(MeshCheck.of(print).closedManifold());
  }

  @Test
  void otherwiseTheLargestOutwardFace() {
    // pulled along a bisector it ends in an edge
    Vec3 pull = new Vec3(0, 1, 1).unit();
    PrintPose pose = PrintPose.of(SLAB, pull);
    assertEquals(PrintPose.Foot.FLAT_FACE, pose.foot());
    assertEquals(1, pose.axes().w().dot(Vec3.Z.negate()), 1e-12);
    // the largest faces of all look neither way here; of the outward ones 40 by 8 beats 30 by 8
    Vec3 side = new Vec3(1, 1, 0).unit();
    assertEquals(1, PrintPose.of(SLAB, side).axes().w().dot(Vec3.Y.negate()), 1e-12);
  }

  @Test
  void theFaceTowardTheCavityIsNeverTheFoot() {
    // a half ball pulled off its flat side: the flat side is the cavity's
    TriMesh dome = Primitives.revolve(dome(), 64);
    PrintPose pose = PrintPose.of(dome, Vec3.Z);
    assertEquals(PrintPose.Foot.NONE, pose.foot());
    assertEquals(1, up(pose, Vec3.Z), 1e-15);
    assertEquals(PrintPose.Foot.OUTER_FACE, PrintPose.of(dome, Vec3.Z.negate()).foot());
  }

  private static double[] dome() {
    int rings = 20;
    double[] profile = new double[2 * (rings + 1)];
    for (int k = 0; k <= rings; k++) {
      double a = Math.PI / 2 * k / rings;
      profile[2 * k] = k == rings ? 0 : 10 * StrictMath.cos(a);
      profile[2 * k + 1] = 10 * StrictMath.sin(a);
    }
    return profile;
  }

  @Test
  void nothingFlatStandsWithThePullDown() {
    TriMesh ball = Primitives.sphere(10, 48);
    Vec3 pull = new Vec3(0.3, -0.2, 0.9).unit();
    PrintPose pose = PrintPose.of(ball, pull);
    assertEquals(PrintPose.Foot.NONE, pose.foot());
    assertEquals(1, up(pose, pull), 1e-12);
    assertEquals(0, pose.apply(ball).bounds().min().z());
  }
}
