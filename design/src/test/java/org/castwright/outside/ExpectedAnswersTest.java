package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.pipeline.Report;
import org.castwright.plan.CaughtException;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.MoldPlan;
import org.castwright.plan.Pour;
import org.castwright.progress.Progress;
import org.castwright.survey.Opening;
import org.junit.jupiter.api.Test;

/**
 * What two rigid pieces can and cannot do, by whole jobs. The expected answers are those any mold
 * maker gives for these shapes: common practice, no source, except where a line says otherwise.
 */
class ExpectedAnswersTest {

  private static final int N = Workshop.SIDES;

  /** Two pieces, any great circle: the seam is as long as one. */
  @Test
  void sphere() {
    Workshop.Made made = Workshop.boltedSphere();
    made.assertProved();
    Report r = made.result().report();
    double circle = 2 * Math.PI * 20 * r.scale().get(0);
    // facets shorten it; where they run crosswise to the pull it steps from meridian to meridian
    assertEquals(circle, r.parting().seamLengthMm(), 0.05 * circle);
    assertEquals(1, r.parting().loops());
  }

  /** Two pieces, any face plane: flat, along a face normal. */
  @Test
  void cube() {
    Workshop.Made made = Workshop.make(Shapes.cube(30), MoldOptions.DEFAULT);
    made.assertProved();
    Vec3 d = made.result().mold().plan().survey().best().direction();
    double most = Math.max(Math.abs(d.x()), Math.max(Math.abs(d.y()), Math.abs(d.z())));
    assertEquals(1, most, 1e-9);
    assertTrue(made.result().report().parting().flat());
  }

  /**
   * Two pieces, with the wall flagged as having no draft: it is h / (h + r) of the surface, 2 π r h
   * of 2 π r h + 2 π r² (closed form).
   */
  @Test
  void cylinderStanding() {
    Workshop.Made made = Workshop.along(Shapes.cylinder(12, 40, N), Vec3.Z);
    made.assertProved();
    double share = made.result().report().survey().shareOfAreaUnderDraft().get("0.5");
    assertEquals(40.0 / 52, share, 0.002);
  }

  /** Two pieces, draft fine but for the end faces: r / (h + r) of the surface. */
  @Test
  void cylinderLying() {
    // the facets' normals stand half a facet off the axes: none of the wall is along the pull
    Workshop.Made made = Workshop.along(Shapes.cylinder(12, 40, N), Vec3.X);
    made.assertProved();
    double share = made.result().report().survey().shareOfAreaUnderDraft().get("0.5");
    assertEquals(12.0 / 52, share, 0.002);
  }

  /** Two pieces by a plane through the axis; filled lying down as well. */
  @Test
  void hourglassOpensLyingDown() {
    hourglass(Pour.PULL);
  }

  /** The same with the block standing while it is filled. */
  @Test
  void hourglassFilledStanding() {
    hourglass(Pour.SEAM);
  }

  private static void hourglass(Pour pour) {
    MoldOptions o = MoldOptions.DEFAULT.with().pour(pour).build();
    Workshop.Made made = Workshop.make(Shapes.hourglass(18, 8, 50, N), o);
    made.assertProved();
    Vec3 d = made.result().mold().plan().survey().best().direction();
    assertEquals(0, d.z(), Math.sin(Math.toRadians(1)));
  }

  /**
   * Not by a plane across the axis: the waist's ring cannot leave. Its width is rim less waist, its
   * space that of the cylinder round it less its two frusta, h (a² + ab + b²) π/3 (closed form).
   */
  @Test
  void hourglassIsRefusedAlongItsAxis() {
    CaughtException e = refused(Shapes.hourglass(18, 8, 50, N), Vec3.Z);
    Opening o = e.survey().best();
    double s = height(e) / 50;
    double share = Math.sin(2 * Math.PI / N) / (2 * Math.PI / N);
    double trapped =
        share * s * s * s * Math.PI * (50 * 18 * 18 - 50.0 / 3 * (18 * 18 + 18 * 8 + 8 * 8));
    assertEquals(trapped, o.trappedVolume(), 0.01 * trapped);
    assertEquals(10 * s, o.caughtWidth(), 0.05 * 10 * s);
  }

  /** The scaled model's height, mm. */
  private static double height(CaughtException e) {
    return e.scaled().bounds().size().z();
  }

  /** Two pieces, one face up. */
  @Test
  void tetrahedron() {
    double[] xyz = {18, 18, 18, 18, -18, -18, -18, 18, -18, -18, -18, 18};
    int[] tri = {0, 1, 2, 0, 3, 1, 0, 2, 3, 1, 3, 2};
    Workshop.make(new TriMesh(xyz, tri), MoldOptions.DEFAULT).assertProved();
  }

  /** Two pieces at the equatorial plane: outer and inner circle, so a web across the hole. */
  @Test
  void torus() {
    Workshop.Made made = Workshop.boltedTorus();
    made.assertProved();
    Vec3 d = made.result().mold().plan().survey().best().direction();
    assertEquals(1, Math.abs(d.z()), 1e-4);
    Report r = made.result().report();
    assertEquals(2, r.parting().loops());
    double circles = 2 * Math.PI * (27 + 13) * r.scale().get(0);
    assertEquals(circles, r.parting().seamLengthMm(), 0.01 * circles);
  }

  /** A split through the axis leaves an undercut in the bore. */
  @Test
  void torusIsRefusedAcrossItsAxis() {
    refused(Shapes.torus(20, 7, N, 24), Vec3.X);
  }

  /** A knot needs more than two pieces or a flexible mold. */
  @Test
  void trefoil() {
    refused(Shapes.trefoil(12, 5, 90, 16), null);
  }

  /** So do two rings, each through the other; the same two side by side do not. */
  @Test
  void linkedRings() {
    TriMesh ring = Shapes.torus(20, 5, 36, 16);
    // the second stands on edge, its center on the circle of the first
    TriMesh standing = ring.toLocal(Frame.along(Vec3.Y)).translated(new Vec3(20, 0, 0));
    refused(Workshop.together(ring, standing), null);
    MoldPlan apart =
        plan(Workshop.together(ring, ring.translated(new Vec3(55, 0, 0))), MoldOptions.DEFAULT);
    assertTrue(apart.survey().best().free());
  }

  /** No number of outer pieces reaches an enclosed void; its volume is 4/3 π r³ (closed form). */
  @Test
  void enclosedVoid() {
    TriMesh hollow = Workshop.together(Shapes.sphere(20, N), Shapes.sphere(8, N).reversed());
    MeshException e =
        assertThrows(MeshException.class, () -> Workshop.make(hollow, MoldOptions.DEFAULT));
    assertTrue(e.getMessage().contains("enclosed void"), e.getMessage());
  }

  private static CaughtException refused(TriMesh shape, Vec3 pull) {
    MoldOptions o = MoldOptions.DEFAULT.with().pull(pull).build();
    CaughtException e = assertThrows(CaughtException.class, () -> Workshop.make(shape, o));
    assertFalse(e.survey().best().free());
    assertTrue(e.survey().best().caughtWidth() > 1);
    return e;
  }

  private static MoldPlan plan(TriMesh shape, MoldOptions options) {
    return MoldPlan.of(shape, options, Workshop.KERNEL, Progress.NONE);
  }
}
