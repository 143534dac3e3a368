package org.castwright.pour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PressureTest {

  @Test
  void pipeCoreAndCope() {
    // foundry solved problem, pipe core: OD 12.5, ID 10, L 180 cm, head 20 cm, metal 0.0771 N/cm³,
    // core sand 0.0165 N/cm³, flask 200 x 25 x 20 cm (prints 4326.7 and 2676.7 by rounding)
    double metal = 77_100 / Liquid.GRAVITY;
    double sand = 16_500 / Liquid.GRAVITY;
    double core = Math.PI / 4 * 100 * 100 * 1800;
    double coreN = Lift.holdDownN(core, metal, sand * core / 1e9);
    double roofN = Lift.flatRoofN(125 * 1800, metal, 200);
    double copeN = Lift.weightN(sand * 2000 * 250 * 200 / 1e9);
    assertEquals(856.7, coreN, 0.05);
    assertEquals(3469.5, roofN, 0.05);
    assertEquals(1650, copeN, 1e-6);
    assertEquals(2676.2, coreN + roofN - copeN, 0.05);
  }

  @Test
  void blockUnderACope() {
    // GATE Mechanical 1991: 150 x 100 mm under a 50 mm cope, iron 78, sand 16 kN/m³, flask 300 x
    // 200
    double lift = Lift.flatRoofN(150 * 100, 78_000 / Liquid.GRAVITY, 50);
    double cope = 16_000e-9 * (300 * 200 - 150 * 100) * 50 + 16_000e-9 * 150 * 100 * 50;
    assertEquals(58.5, lift, 1e-9);
    assertEquals(48, cope, 1e-9);
    assertEquals(10.5, lift - cope, 1e-9);
  }

  @Test
  void curvedLidByTheWeightOfTheColumnAboveIt() {
    // hemisphere R 250 in the cope, free surface 300 above the parting, 7200 kg/m³:
    // ρg(πR²H − 2πR³/3) = 1849 N
    int sides = 400;
    TriMesh dome = Primitives.sphere(250, sides);
    Liquid iron = new Liquid(7200, Vec3.Z, 300);
    Load up = Hydrostatics.on(dome, iron, Hydrostatics.Side.INSIDE, f -> dome.center(f).z() > 0);
    assertEquals(1849, up.forceN().z(), 0.001 * 1849);
    // the faceted dome itself, exactly: its disk and its volume in place of the circle's
    double disk = 0;
    for (int f = 0; f < dome.triangleCount(); f++) {
      if (dome.center(f).z() > 0) {
        disk += dome.areaVector(f).z();
      }
    }
    double exact = iron.weightN(disk * 300 - dome.volume() / 2);
    assertEquals(exact, up.forceN().z(), 1e-8 * exact);
  }

  @Test
  void flatRoofOfPlaster() {
    // 1600 kg/m³, 60 mm head over 100 x 80 mm: 7.53 N
    assertEquals(7.53, Lift.flatRoofN(100 * 80, 1600, 60), 5e-3);
  }

  @ParameterizedTest
  @CsvSource({
    // density, width, depth of the cavity, head over it: base pressure, force, center of pressure
    // below the surface; open-channel statics, any textbook: F = ρgw[(h0+h)²−h0²]/2
    "1600, 200, 150, 0, 2354.4, 35.3, 100",
    "1100, 200, 150, 0, 1618.7, 24.3, 100",
    "1600, 200, 150, 50, 3139.2, 58.9, 140",
    "2300, 300, 400, 0, 9025, 541.5, 266.7"
  })
  void verticalWalls(
      double density, double w, double h, double over, double base, double force, double center) {
    TriMesh box = Primitives.box(new Vec3(0, 0, 0), new Vec3(40, w, h));
    Liquid liquid = new Liquid(density, Vec3.Z, h + over);
    Load load =
        Hydrostatics.on(box, liquid, Hydrostatics.Side.INSIDE, f -> box.areaVector(f).x() > 1);
    assertEquals(base, load.highestPa(), 0.5);
    assertEquals(force, load.forceN().x(), 0.05);
    // the force acts along x; its lever about y is its height
    double height = load.momentNmm().y() / load.forceN().x();
    double below = h + over - height;
    assertEquals(center, below, over > 0 ? 0.5 : 0.05);
    assertEquals(height, load.lineOfForce().z(), 1e-9);
  }

  @Test
  void clampRowsShareTwoThirdsAndOneThird() {
    // the plaster wall above: clamps at base and top edge
    ClampRows rows = ClampRows.of(35.316, 50, 150);
    assertEquals(23.5, rows.baseN(), 0.05);
    assertEquals(11.8, rows.topN(), 0.05);
    // four equal clamps at a factor of two: 17.7 N each
    assertEquals(17.7, 2 * 35.316 / 4, 0.05);
    assertEquals(4, ClampRows.needed(35.316, 2, 17.7));
    assertEquals(5, ClampRows.needed(35.316, 2, 17.6));
    assertEquals(0, ClampRows.needed(-3, 2, 10));
    assertThrows(IllegalArgumentException.class, () -> ClampRows.of(1, 1, 0));
  }

  @Test
  void floatingMaster() {
    // 80 mm sphere of 120 g in silicone of 1100 kg/m³: 1.72 N
    double volume = Math.PI / 6 * 80 * 80 * 80;
    assertEquals(1.72, Lift.holdDownN(volume, 1100, 0.120), 5e-3);
  }

  @Test
  void aClosedBodyFeelsItsOwnWeightOfLiquidWhateverUpIs() {
    // Archimedes; the moment is that of the weight in the center of volume
    Random random = new Random(20260);
    for (int i = 0; i < 20; i++) {
      Vec3 up =
          new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
      Vec3 at = new Vec3(30 * random.nextDouble(), -12, 50 * random.nextDouble());
      TriMesh egg = Shapes.ellipsoid(30, 20, 10, 24).translated(at);
      Liquid liquid = new Liquid(1300, up, at.dot(up) + 100);
      Load load = Hydrostatics.on(egg, liquid, Hydrostatics.Side.OUTSIDE);
      double weight = liquid.weightN(egg.volume());
      assertEquals(0, load.forceN().minus(up.times(weight)).length(), 1e-9 * weight);
      Vec3 moment = at.cross(up.times(weight));
      assertEquals(0, load.momentNmm().minus(moment).length(), 1e-7 * weight * 100);
    }
  }

  @Test
  void aHalfSunkBodyFeelsOnlyWhatIsSunk() {
    // a cube 20 mm sunk to 7.5 mm: a third of its facets are cut by the surface
    TriMesh cube = Primitives.box(Vec3.ZERO, new Vec3(20, 20, 20));
    Liquid water = new Liquid(1000, Vec3.Z, 7.5);
    Load load = Hydrostatics.on(cube, water, Hydrostatics.Side.OUTSIDE);
    assertEquals(water.weightN(20 * 20 * 7.5), load.forceN().z(), 1e-12);
    assertEquals(0, load.forceN().x(), 1e-12);
    assertEquals(400 + 4 * 20 * 7.5, load.wettedMm2(), 1e-9);
    double[] p = Hydrostatics.pressures(cube, water);
    for (int f = 0; f < p.length; f++) {
      double depth = Math.max(0, 7.5 - cube.center(f).z());
      assertEquals(1000 * 9.81 * depth / 1000, p[f], 1e-9);
    }
    Load dry = Hydrostatics.on(cube, new Liquid(1000, Vec3.Z, -1), Hydrostatics.Side.OUTSIDE);
    assertEquals(Load.NONE, dry);
    assertNull(dry.lineOfForce());
  }

  @Test
  void freshConcrete() {
    // engineering forum calculation by CIRIA Report 108: column, D 25, H 9.05 m, R 1 m/h, T 12.5
    FreshConcrete column = new FreshConcrete(25, 1.5, 0.45);
    assertEquals(86.82, column.pressureKnPerM2(9.05, 9.05, 1, 12.5), 5e-3);
    // wall, computed from the same formula
    FreshConcrete wall = new FreshConcrete(25, 1.0, 0.3);
    assertEquals(49.8, wall.pressureKnPerM2(3, 3, 1.5, 10), 0.05);
    assertEquals(40.6, wall.pressureKnPerM2(3, 3, 1.5, 20), 0.05);
    // hydrostatic branch: the root has no real value
    assertEquals(12.5, wall.pressureKnPerM2(0.5, 0.5, 2, 15), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({
    "10, 0.413, 0.393", "20, 0.732, 0.676", "30, 1.142, 1.161", "40, 1.690, 1.994",
    "50, 2.456, 3.425", "60, 3.605, 5.884", "70, 5.521, 10.11", "80, 9.351, 17.37",
    "90, 20.84, 29.83"
  })
  void hardnessToModulus(double shore, double gent, double log) {
    // Gent 1958 (from memory) and the log form of Qi, Joyce and Boyce 2003; four digits
    assertEquals(gent, Elastic.gentMPa(shore), 6e-4 * Math.max(1, gent));
    assertEquals(log, Elastic.logMPa(shore), 6e-4 * Math.max(1, log));
    assertTrue(Elastic.gentMPa(shore + 1) > Elastic.gentMPa(shore));
  }
}
