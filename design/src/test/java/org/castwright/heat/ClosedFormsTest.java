package org.castwright.heat;

import static org.castwright.heat.OneTerm.Shape.CYLINDER;
import static org.castwright.heat.OneTerm.Shape.SLAB;
import static org.castwright.heat.OneTerm.Shape.SPHERE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

/** Closed forms against textbook tables and worked examples; each names its source. */
class ClosedFormsTest {

  private static final double INFINITE = Double.POSITIVE_INFINITY;

  /** Half of the last printed digit. */
  private static final double FOUR_DIGITS = 0.5001e-4;

  /** Biot; λ and A of wall, cylinder, sphere. Çengel, Heat and Mass Transfer, table 4-2. */
  private static final double[][] ONE_TERM = {
    {0.01, 0.0998, 1.0017, 0.1412, 1.0025, 0.1730, 1.0030},
    {0.1, 0.3111, 1.0161, 0.4417, 1.0246, 0.5423, 1.0298},
    {0.2, 0.4328, 1.0311, 0.6170, 1.0483, 0.7593, 1.0592},
    {0.5, 0.6533, 1.0701, 0.9408, 1.1143, 1.1656, 1.1441},
    {0.8, 0.7910, 1.1016, 1.1490, 1.1724, 1.4320, 1.2236},
    {1, 0.8603, 1.1191, 1.2558, 1.2071, 1.5708, 1.2732},
    {2, 1.0769, 1.1785, 1.5994, 1.3384, 2.0288, 1.4793},
    {4, 1.2646, 1.2287, 1.9081, 1.4698, 2.4556, 1.7202},
    {5, 1.3138, 1.2402, 1.9898, 1.5029, 2.5704, 1.7870},
    {10, 1.4289, 1.2620, 2.1795, 1.5677, 2.8363, 1.9249},
    {20, 1.4961, 1.2699, 2.2880, 1.5919, 2.9857, 1.9781},
    {50, 1.5400, 1.2727, 2.3572, 1.6002, 3.0788, 1.9962},
    {100, 1.5552, 1.2731, 2.3809, 1.6015, 3.1102, 1.9990},
    {INFINITE, 1.5708, 1.2732, 2.4048, 1.6020, 3.1416, 2.0000},
  };

  @Test
  void oneTermTable() {
    for (double[] row : ONE_TERM) {
      OneTerm.Shape[] shapes = {SLAB, CYLINDER, SPHERE};
      for (int s = 0; s < shapes.length; s++) {
        OneTerm t = OneTerm.of(shapes[s], row[0]);
        assertEquals(row[1 + 2 * s], t.lambda(), FOUR_DIGITS, shapes[s] + " λ at " + row[0]);
        assertEquals(row[2 + 2 * s], t.a1(), FOUR_DIGITS, shapes[s] + " A at " + row[0]);
      }
    }
    assertThrows(IllegalArgumentException.class, () -> OneTerm.of(SLAB, 0));
  }

  /** Boiled eggs as spheres: Çengel example 4-3 (from memory) and two exercises of its kind. */
  @Test
  void spheresInHotWater() {
    assertEquals(863, OneTerm.timeS(SPHERE, 25, 0.627, 0.151e-6, 1200, 5, 95, 70), 0.5);
    assertEquals(1106, OneTerm.timeS(SPHERE, 27.5, 0.607, 0.146e-6, 800, 4.3, 100, 74), 0.5);
    assertEquals(1064, OneTerm.timeS(SPHERE, 27.5, 0.6, 0.14e-6, 1400, 8, 97, 70), 0.5);
    // from 8 °C in water of 100 °C to 60 °C in the middle, Biot's number by the radius
    assertEquals(845, OneTerm.timeS(SPHERE, 27.5, 0.607, 0.146e-6, 800, 8, 100, 60), 0.5);
    // soap slab of 40 mm cooled from both sides, computed from the same equations
    assertEquals(9480, OneTerm.timeS(SLAB, 20, 0.25, 1e-7, 10, 60, 20, 30), 5);
    assertThrows(
        IllegalArgumentException.class, () -> OneTerm.timeS(SLAB, 20, 0.25, 1e-7, 10, 60, 20, 15));
  }

  /** Roots of √π λ exp(λ²) erf λ = Ste; Carslaw and Jaeger 11.2. */
  @Test
  void stefanTable() {
    double[][] table = {
      {0.01, 0.0706}, {0.05, 0.1568}, {0.1, 0.2200}, {0.2, 0.3064}, {0.3, 0.3699}, {0.4, 0.4212},
      {0.5, 0.4648}, {0.6, 0.5028}, {0.8, 0.5669}, {1, 0.6201}, {1.5, 0.7232}, {2, 0.8006},
      {3, 0.9138}, {5, 1.0597}
    };
    for (double[] row : table) {
      assertEquals(row[1], Stefan.lambda(row[0]), FOUR_DIGITS, "Ste " + row[0]);
    }
  }

  @Test
  void freezingFronts() {
    // ice behind a wall of -10 °C: 10, 20 and 50 mm
    double ice = 2.22 / (917 * 2100);
    double lambda = Stefan.lambda(2100 * 10 / 334e3);
    assertEquals(0.1755, lambda, FOUR_DIGITS);
    assertEquals(704, Stefan.timeS(lambda, ice, 10), 0.5);
    assertEquals(2817, Stefan.timeS(lambda, ice, 20), 0.5);
    assertEquals(17604, Stefan.timeS(lambda, ice, 50), 2);
    assertEquals(397, Stefan.timeS(Stefan.lambda(2100 * 18 / 334e3), ice, 10), 0.5);
    // paraffin of 58 °C on a wall of 20 °C
    double wax = 0.21 / (900 * 2100);
    double ste = 2100 * 38 / 190e3;
    assertEquals(0.4305, Stefan.lambda(ste), FOUR_DIGITS);
    assertEquals(1214, Stefan.timeS(Stefan.lambda(ste), wax, 10), 0.5);
    // poured at 70 and 80 °C, Neumann's two phases
    double liquid = 0.15 / (780 * 2300);
    double at70 = Stefan.lambda(ste, 12.0 / 38, 0.21, 0.15, wax, liquid);
    double at80 = Stefan.lambda(ste, 22.0 / 38, 0.21, 0.15, wax, liquid);
    assertEquals(0.3901, at70, FOUR_DIGITS);
    assertEquals(0.3614, at80, FOUR_DIGITS);
    assertEquals(1479, Stefan.timeS(at70, wax, 10), 0.5);
    assertEquals(1723, Stefan.timeS(at80, wax, 10), 0.5);
    // without excess the two-phase front is the one-phase front
    assertEquals(Stefan.lambda(ste), Stefan.lambda(ste, 0, 0.21, 0.15, wax, liquid), FOUR_DIGITS);
  }

  /** Ice 30 mm in still air of −18 °C; Plank's factors from memory, times computed from them. */
  @Test
  void plank() {
    double slab = Plank.SLAB.timeS(917, 334e3, 2.22, 10, 30, 0, -18);
    double cube = Plank.CUBE.timeS(917, 334e3, 2.22, 10, 30, 0, -18);
    assertEquals(7.33, slab / 3600, 0.005);
    assertEquals(2.44, cube / 3600, 0.005);
    assertEquals(3, slab / cube, 1e-12);
    assertEquals(1.5, Plank.CYLINDER.timeS(917, 334e3, 2.22, 10, 30, 0, -18) / cube, 1e-12);
    assertThrows(
        IllegalArgumentException.class, () -> Plank.SLAB.timeS(917, 334e3, 2.22, 10, 30, 0, 5));
  }

  @Test
  void chvorinov() {
    // riser problem after Groover: plate 7.5 × 12.5 × 2 cm in 1.6 min, riser D = H in 2.0 min
    double plate = Chvorinov.modulusMm(Primitives.box(Vec3.ZERO, new Vec3(75, 125, 20)));
    assertEquals(7.009, plate, 0.001);
    double b = Chvorinov.constant(96, plate);
    assertEquals(3.257, b / 60 * 100, 0.001);
    double riser = Chvorinov.riserDiameterMm(Chvorinov.modulusMm(b, 120), 1);
    assertEquals(47.0, riser, 0.05);
    assertEquals(81.6, Math.PI / 4 * riser * riser * riser / 1000, 0.1);
    // GATE Mechanical 2018: plate 80 × 120 × 20 mm in 2 min, riser D = H in 3 min
    double second = Chvorinov.modulusMm(Primitives.box(Vec3.ZERO, new Vec3(80, 120, 20)));
    double trial = Chvorinov.constant(120, second);
    double wanted = Chvorinov.modulusMm(trial, 180);
    assertEquals(51.87, Chvorinov.riserDiameterMm(wanted, 1), 0.005);
    // plate 30 × 15 × 2 cm, 4 min/cm²
    double third = Chvorinov.modulusMm(Primitives.box(Vec3.ZERO, new Vec3(300, 150, 20)));
    assertEquals(2.78, Chvorinov.timeS(4 * 60 / 100.0, third) / 60, 0.005);
    // plate 12 × 12 × 1.1 in, 13 min/in²; riser H = 1.5 D for 1.3 times as long
    double inch = 12 * 12 * 1.1 / (2 * 144 + 4 * 12 * 1.1);
    double longer = Chvorinov.modulusMm(13, 1.3 * Chvorinov.timeS(13, inch));
    assertEquals(2.826, Chvorinov.riserDiameterMm(longer, 1.5), 0.0005);
  }

  /**
   * Shapes of equal volume against the sphere: a cube takes 0.650 of its time, cylinders as high as
   * wide 0.763 and ten times as high 0.336.
   */
  @Test
  void chvorinovOfSolids() {
    double sphere = Chvorinov.modulusMm(Primitives.sphere(10, 512));
    double edge = Math.cbrt(4.0 / 3 * Math.PI * 1000);
    double cube = Chvorinov.modulusMm(Primitives.box(Vec3.ZERO, new Vec3(edge, edge, edge)));
    assertEquals(0.650, cube * cube / (sphere * sphere), 0.0005);
    double volume = 4.0 / 3 * Math.PI * 1000;
    double[][] cylinders = {{1, 0.763}, {10, 0.336}};
    for (double[] c : cylinders) {
      double d = Math.cbrt(4 * volume / (Math.PI * c[0]));
      double h = c[0] * d;
      TriMesh body = Primitives.revolve(new double[] {0, 0, d / 2, 0, d / 2, h, 0, h}, 2048);
      double m = Chvorinov.modulusMm(body);
      assertEquals(c[1], m * m / (sphere * sphere), 0.0005);
    }
  }

  /** Reaction heats from DSC literature as remembered, heat capacities beside them. */
  @Test
  void adiabaticRise() {
    assertEquals(237, Exotherm.riseK(450, 1900), 0.5);
    assertEquals(184, Exotherm.riseK(350, 1900), 0.5);
    assertEquals(194, Exotherm.riseK(350, 1800), 0.5);
    assertEquals(111, Exotherm.riseK(200, 1800), 0.5);
    // plaster at 70 : 100 and 30 : 100, 112 to 133 kJ for each kg of hemihydrate
    assertEquals(33, Exotherm.plasterRiseK(0.7, 112), 0.51);
    assertEquals(39, Exotherm.plasterRiseK(0.7, 133), 0.51);
    assertEquals(63, Exotherm.plasterRiseK(0.3, 112), 0.51);
    assertEquals(75, Exotherm.plasterRiseK(0.3, 133), 0.51);
    assertThrows(IllegalArgumentException.class, () -> Exotherm.plasterRiseK(0.1, 120));
    // concrete: 350 kg/m³ cement of 350 kJ/kg in 2400 kg/m³
    assertEquals(51, Exotherm.riseK(350 * 350 / 2400.0, 1000), 0.5);
  }
}
