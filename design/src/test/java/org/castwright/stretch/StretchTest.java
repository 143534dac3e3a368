package org.castwright.stretch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.material.Materials;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

/** Strains of shapes whose lip and throat are known. */
class StretchTest {

  private static final List<Vec3> UP = List.of(Vec3.Z);
  private static final List<Vec3> BOTH = List.of(Vec3.Z, Vec3.Z.negate());

  /** Allows any strain up to 100 %. */
  private static final double RUBBER = 2;

  /** Coarser than usual, for speed. */
  private static final StretchOptions OPTIONS = new StretchOptions(200, 48, 0.05, 2);

  private static StretchResult measure(TriMesh casting, List<Vec3> pulls) {
    return Stretch.of(casting, pulls, RUBBER, OPTIONS, Progress.NONE);
  }

  /** A bead of radius {@code bead} on a neck of radius {@code neck} on a wide foot. */
  private static TriMesh bead(double bead, double neck) {
    int n = 40;
    double from = Math.PI - Math.asin(neck / bead);
    double center = 8 + bead * Math.cos(Math.PI - from);
    double[] p = new double[2 * (n + 5)];
    double[] low = {0, -4, 16, -4, 16, 0, neck, 0};
    System.arraycopy(low, 0, p, 0, low.length);
    for (int k = 0; k <= n; k++) {
      double a = from * (n - k) / n;
      p[8 + 2 * k] = k == n ? 0 : bead * Math.sin(a);
      p[9 + 2 * k] = center + bead * Math.cos(a);
    }
    return Primitives.revolve(p, 96);
  }

  @Test
  void beadOnANeck() {
    double r = 5;
    for (double bead : new double[] {5.5, 6, 8}) {
      StretchResult result = measure(bead(bead, r), BOTH);
      assertEquals(1, result.places().size());
      StretchPlace p = result.places().get(0);
      // closed form: the neck's loop has to let the bead pass
      assertEquals((bead - r) / r, p.widthStrain(), 0.03);
      assertEquals((bead - r) / r, p.girthStrain(), 0.03);
      assertEquals(bead - r, p.width(), 1.5 * result.resolution());
      assertEquals(2 * bead, p.lipWidth(), 3 * result.resolution());
      assertEquals(2 * r, p.throatWidth(), 3 * result.resolution());
      // upward the bead, downward the foot of radius 16
      assertEquals(Vec3.Z, p.pull());
    }
  }

  @Test
  void anyDirectionOfThePull() {
    Vec3 pull = new Vec3(1, -2, 3).unit();
    TriMesh slanted = turned(bead(6, 5), Frame.along(pull));
    StretchPlace p = measure(slanted, List.of(pull, pull.negate())).places().get(0);
    assertEquals(0.2, p.strain(), 0.03);
    assertEquals(0, p.pull().minus(pull).length(), 1e-12);
  }

  /** The mesh with its axes laid along those of a frame. */
  private static TriMesh turned(TriMesh mesh, Frame f) {
    double[] xyz = mesh.xyz().clone();
    for (int i = 0; i < mesh.vertexCount(); i++) {
      Vec3 p = f.toWorld(mesh.vertex(i));
      xyz[3 * i] = p.x();
      xyz[3 * i + 1] = p.y();
      xyz[3 * i + 2] = p.z();
    }
    return new TriMesh(xyz, mesh.tri());
  }

  @Test
  void waistOfAnHourglass() {
    // rim 10, waist 8: the mold round the waist has to pass a rim, 10 / 8 - 1
    StretchPlace p = measure(Shapes.hourglass(10, 8, 20, 96), BOTH).places().get(0);
    assertEquals(0.25, p.widthStrain(), 0.03);
    assertEquals(0.25, p.girthStrain(), 0.03);
    assertEquals(20, p.depth(), 1);
  }

  @Test
  void mouthOfACupLetsItsCorePass() {
    // inside 8, mouth 6.5: the mouth has to stretch by 8 / 6.5 - 1
    double[] profile = {0, 0, 12, 0, 12, 20, 6.5, 20, 8, 14, 8, 3, 0, 3};
    StretchPlace p = measure(Primitives.revolve(profile, 96), BOTH).places().get(0);
    assertEquals(8 / 6.5 - 1, p.widthStrain(), 0.03);
    assertEquals(8 / 6.5 - 1, p.girthStrain(), 0.03);
    assertEquals(16, p.lipWidth(), 0.3);
    assertEquals(13, p.throatWidth(), 0.3);
  }

  @Test
  void longRibIsJudgedAcross() {
    // a head of 6 by 40 on a web of 4 by 40
    try (SolidKernel kernel = new ManifoldKernel()) {
      TriMesh rib =
          kernel
              .union(
                  "rib",
                  List.of(
                      box(kernel, 20, 12, -4, 0),
                      box(kernel, 20, 2, 0, 6),
                      box(kernel, 20, 3, 6, 10)))
              .mesh();
      StretchResult result = measure(rib, UP);
      assertEquals(2, result.places().size(), "one on either side of the web");
      for (StretchPlace p : result.places()) {
        assertEquals(1, p.width(), 0.2);
        assertEquals(6.0 / 4 - 1, p.widthStrain(), 0.1);
        // of one side only: perimeter of 40 by 5 against that of 40 by 4
        assertEquals(90.0 / 88 - 1, p.girthStrain(), 0.01);
        assertEquals(6, p.depth(), 0.5);
      }
    }
  }

  private static Solid box(SolidKernel kernel, double x, double y, double low, double high) {
    return kernel.solid("box", Primitives.box(new Vec3(-x, -y, low), new Vec3(x, y, high)));
  }

  private static TriMesh bored(double from) {
    try (SolidKernel kernel = new ManifoldKernel()) {
      Solid cube = kernel.solid("cube", Shapes.cube(20));
      TriMesh bore = turned(Primitives.frustum(3, from, 3, 11, 48), Frame.along(Vec3.X));
      return kernel.difference("bored", cube, List.of(kernel.solid("bore", bore))).mesh();
    }
  }

  @Test
  void plugOfABlindHoleHasToLeaveSideways() {
    TriMesh blind = bored(2);
    StretchResult result = measure(blind, BOTH);
    assertEquals(1, result.places().size());
    StretchPlace p = result.places().get(0);
    // the hole is 8 deep, the cube behind it 12 thick
    assertEquals(8, p.width(), 0.2);
    assertEquals(8.0 / 12, p.widthStrain(), 0.05);
    assertEquals(Math.PI * 9 * 8, p.volume(), 10);
    assertEquals(List.of(), measure(blind, List.of(Vec3.Z, Vec3.Z.negate(), Vec3.X)).places());
  }

  @Test
  void throughHoleIsFastHoweverSoftTheMold() {
    StretchResult result = measure(bored(-11), BOTH);
    assertEquals(Double.POSITIVE_INFINITY, result.places().get(0).strain());
    assertFalse(result.opens());
    assertTrue(measure(bored(-11), List.of(Vec3.Z, Vec3.Z.negate(), Vec3.X)).opens());
  }

  @Test
  void facetsAreThoseThatBorderThePlace() {
    TriMesh blind = bored(2);
    StretchResult result = measure(blind, BOTH);
    double area = 0;
    for (int f = 0; f < blind.triangleCount(); f++) {
      area += result.placeOfFacet()[f] == 0 ? blind.areaVector(f).length() : 0;
    }
    // the bore's flank and its end
    assertEquals(2 * Math.PI * 3 * 8 + Math.PI * 9, area, 5);
  }

  @Test
  void whatOpensHasNoPlaces() {
    assertEquals(List.of(), measure(Shapes.sphere(10, 64), BOTH).places());
    assertEquals(List.of(), measure(Shapes.cube(10), BOTH).places());
    assertEquals(List.of(), measure(bead(6, 5), List.of(Vec3.X, Vec3.X.negate())).places());
    assertTrue(measure(Shapes.cube(10), BOTH).opens());
  }

  @Test
  void materialAndSafetySetTheLimit() {
    // a casting of silicone: 30 % over a factor of 2
    Material silicone = Materials.of("silicone-platinum");
    double share = silicone.demoldStrain().share();
    StretchResult slight = Stretch.of(bead(5.4, 5), BOTH, silicone, OPTIONS, Progress.NONE);
    assertEquals(share / 2, slight.limit());
    assertTrue(slight.opens(), slight.toString());
    assertFalse(Stretch.of(bead(8, 5), BOTH, silicone, OPTIONS, Progress.NONE).opens());
    assertFalse(Stretch.of(bead(5.4, 5), BOTH, 0.0, OPTIONS, Progress.NONE).opens());
  }

  @Test
  void catchesUnderTheReleaseAreFree() {
    StretchOptions wide = new StretchOptions(300, 64, 1.2, 2);
    assertEquals(List.of(), Stretch.of(bead(6, 5), BOTH, RUBBER, wide, Progress.NONE).places());
  }

  @Test
  void refusesWhatCannotBeMeasured() {
    assertThrows(IllegalArgumentException.class, () -> measure(Shapes.cube(10), List.of()));
    assertThrows(IllegalArgumentException.class, () -> new StretchOptions(300, 64, 0.05, 0.5));
    assertThrows(
        IllegalArgumentException.class,
        () -> Stretch.of(Shapes.cube(1), UP, -1.0, OPTIONS, Progress.NONE));
  }
}
