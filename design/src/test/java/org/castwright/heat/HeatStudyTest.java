package org.castwright.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

/** Castings in their molds. */
class HeatStudyTest {

  private static final HeatOptions SMALL = HeatOptions.COARSE.withCells(12_000).withBand(false);
  private static final MoldWall PLA = MoldWall.full(ThermalTable.mold("pla"));

  private static Box3 round(TriMesh casting, double wall) {
    Vec3 w = new Vec3(wall, wall, wall);
    Box3 b = casting.bounds();
    return new Box3(b.min().minus(w), b.max().plus(w));
  }

  private static HeatResult study(TriMesh casting, String material, HeatOptions options) {
    return HeatStudy.of(
        Poured.alone(casting),
        round(casting, 6),
        ThermalTable.casting(material),
        PLA,
        options,
        Progress.NONE);
  }

  private static final TriMesh BALL = Primitives.sphere(20, 64);

  /** Two balls of radius 16 and 13 on a neck too thin to feed the smaller through. */
  private static TriMesh dumbbell() {
    int n = 24;
    List<double[]> p = new ArrayList<>();
    for (int i = 0; i <= n; i++) {
      double a = Math.PI * i / n;
      if (i < n) {
        p.add(new double[] {i == 0 ? 0 : 16 * Math.sin(a), -30 - 16 * Math.cos(a)});
      }
    }
    p.removeIf(q -> q[1] > -18 && q[0] < 4);
    p.add(new double[] {4, -13});
    p.add(new double[] {4, 16});
    for (int i = 1; i <= n; i++) {
      double a = Math.PI * i / n;
      if (13 * Math.sin(a) > 4 || i == n || a > 2) {
        p.add(new double[] {i == n ? 0 : 13 * Math.sin(a), 30 - 13 * Math.cos(a)});
      }
    }
    double[] profile = new double[2 * p.size()];
    for (int i = 0; i < p.size(); i++) {
      profile[2 * i] = p.get(i)[0];
      profile[2 * i + 1] = p.get(i)[1];
    }
    return Primitives.revolve(profile, 48);
  }

  @Test
  void aBallFreezesLastInItsMiddle() {
    HeatResult r = study(BALL, "paraffin-wax", SMALL);
    assertEquals(Setting.FREEZING, r.setting());
    double off = Math.hypot(Math.hypot(r.last().x(), r.last().y()), r.last().z());
    assertTrue(off < 1.5 * r.cellMm(), off + " mm");
    assertEquals(1, r.hotSpots().size());
    assertEquals(77.5, r.peakC(), 1e-6);
    HeatResult.Sample end = r.samples().get(r.samples().size() - 1);
    assertEquals(1, end.setShare());
    assertTrue(r.demoldS() <= end.timeS() && r.demoldS() > 600, r.demoldS() + " s");
  }

  @Test
  void twoBallsAreTwoPools() {
    HeatResult r = study(dumbbell(), "paraffin-wax", SMALL.withCells(40_000));
    assertEquals(2, r.hotSpots().size());
    HeatResult.HotSpot large = r.hotSpots().get(0);
    HeatResult.HotSpot small = r.hotSpots().get(1);
    assertEquals(-30, large.place().z(), 3);
    assertEquals(30, small.place().z(), 3);
    assertEquals(r.demoldS(), large.setS(), 1);
    assertTrue(small.cutOffS() < 0.6 * small.setS());
    // when it is cut off, most of the ball of 9.2 cm³ is still liquid
    assertTrue(small.cutOffMm3() > 3000 && small.cutOffMm3() < 9200, small.cutOffMm3() + "");
  }

  /** A riser twice as thick as the casting below it: what sets last stands in it. */
  @Test
  void aThickRiserFreezesLast() {
    TriMesh plate = Primitives.box(new Vec3(-12, -12, 0), new Vec3(12, 12, 10));
    TriMesh riser = Primitives.frustum(11, 10, 11, 40, 64);
    Box3 block = new Box3(new Vec3(-20, -20, -8), new Vec3(20, 20, 40));
    HeatOptions o = SMALL.withCells(40_000);
    ThermalMaterial wax = ThermalTable.casting("beeswax");
    HeatResult with = HeatStudy.of(new Poured(plate, riser), block, wax, PLA, o, Progress.NONE);
    HeatResult alone = HeatStudy.of(Poured.alone(plate), block, wax, PLA, o, Progress.NONE);
    assertTrue(alone.hotSpots().stream().noneMatch(HeatResult.HotSpot::inChannels));
    assertTrue(alone.last().z() < 10, alone.last() + "");
    assertTrue(with.last().z() > 12, with.last() + "");
    assertEquals(1, with.hotSpots().size(), with.hotSpots() + "");
    assertTrue(with.hotSpots().get(0).inChannels());
    assertTrue(with.demoldS() > 1.3 * alone.demoldS(), with.demoldS() + " s");
    // a thin one freezes first: the casting keeps its own hot spot
    TriMesh thin = Primitives.frustum(2.5, 10, 2.5, 40, 64);
    HeatResult gate = HeatStudy.of(new Poured(plate, thin), block, wax, PLA, o, Progress.NONE);
    assertFalse(gate.hotSpots().get(0).inChannels());
    assertTrue(gate.last().z() < 10, gate.last() + "");
  }

  @Test
  void hotAlloySoftensAPrint() {
    HeatResult r = study(BALL, "tin-bismuth", SMALL);
    assertTrue(r.wall().over());
    assertEquals(0.0, r.wall().overS());
    assertEquals(1, r.wall().overShare());
    assertTrue(r.wall().peakC() > 138, r.wall() + "");
    HeatResult gummy = study(BALL, "chocolate-dark", SMALL.inAirOf(12));
    assertFalse(gummy.wall().over());
    assertNull(gummy.wall().overS());
    assertEquals(0, gummy.wall().overShare());
  }

  @Test
  void setPlasterStaysBelowItsAdiabaticTemperature() {
    HeatResult r = study(BALL, "plaster-pottery", SMALL.withBand(true));
    double rise = Exotherm.riseK(72.05, 2027);
    assertTrue(r.peakC() > 33 && r.peakC() < 29.5 + rise, r.peakC() + " °C");
    assertTrue(r.demoldS() > 40 * 60 && r.demoldS() < 50 * 60, r.demoldS() + " s");
    assertTrue(r.demoldFromS() < r.demoldS() && r.demoldS() < r.demoldToS());
    assertNotNull(r.peakPlace());
    assertTrue(r.peakToC() > r.peakC());
  }

  @Test
  void thickResinRunsHotterThanThin() {
    HeatResult thick = study(BALL, "resin-polyurethane", SMALL);
    TriMesh plate = Primitives.box(new Vec3(-20, -20, -2), new Vec3(20, 20, 2));
    HeatResult thin = study(plate, "resin-polyurethane", SMALL.withCells(30_000));
    assertTrue(thick.peakC() > thin.peakC() + 20, thick.peakC() + " and " + thin.peakC());
    assertTrue(thick.peakC() < 22.5 + Exotherm.riseK(200, 1800) + 15);
    assertTrue(thick.wall().over());
    assertTrue(thick.notes().stream().anyMatch(n -> n.contains("safety data sheet")));
  }

  /** A maker who knows the product gets a narrower band. */
  @Test
  void ownFigures() {
    ThermalMaterial grade = ThermalTable.casting("paraffin-wax").meltingAt(58);
    assertEquals(58, grade.solidusC().middle());
    HeatOptions o = SMALL.withCells(8000).withBand(true);
    HeatResult any = study(BALL, "paraffin-wax", o);
    HeatResult own = HeatStudy.of(Poured.alone(BALL), round(BALL, 6), grade, PLA, o, Progress.NONE);
    assertTrue(own.demoldToS() / own.demoldFromS() < 0.8 * any.demoldToS() / any.demoldFromS());
    ThermalMaterial slow =
        ThermalTable.casting("resin-polyurethane")
            .withTimes(Figure.of(30, "given"), Figure.of(240, "given"));
    double peak =
        HeatStudy.of(Poured.alone(BALL), round(BALL, 6), slow, PLA, SMALL, Progress.NONE).peakC();
    assertTrue(peak < study(BALL, "resin-polyurethane", SMALL).peakC() - 5, peak + " °C");
    assertThrows(IllegalArgumentException.class, () -> slow.meltingAt(58));
    assertThrows(
        IllegalArgumentException.class, () -> grade.withTimes(slow.workMin(), slow.demoldMin()));
  }

  @Test
  void infillKeepsWarm() {
    TriMesh cube = Primitives.box(new Vec3(-15, -15, -15), new Vec3(15, 15, 15));
    Box3 block = round(cube, 12);
    ThermalMaterial wax = ThermalTable.casting("beeswax");
    MoldWall loose = new MoldWall(ThermalTable.mold("pla"), 0.15, 1.8);
    double full = HeatStudy.of(Poured.alone(cube), block, wax, PLA, SMALL, Progress.NONE).demoldS();
    double airy =
        HeatStudy.of(Poured.alone(cube), block, wax, loose, SMALL, Progress.NONE).demoldS();
    assertTrue(airy > 1.2 * full, airy + " and " + full);
  }

  @Test
  void threadsChangeNothing() {
    for (String material : List.of("soy-wax", "resin-polyester")) {
      HeatOptions o = SMALL.withCells(6000).withBand(material.equals("soy-wax"));
      assertEquals(
          study(BALL, material, o.withThreads(1)), study(BALL, material, o.withThreads(3)));
    }
  }

  @Test
  void finerGridsAgree() {
    double coarse = study(BALL, "beeswax", SMALL.withCells(8000)).demoldS();
    double fine = study(BALL, "beeswax", SMALL.withCells(64_000)).demoldS();
    assertEquals(1, coarse / fine, 0.03);
  }

  @Test
  void progressRisesAndCancelStops() {
    List<Double> shares = new ArrayList<>();
    HeatStudy.of(
        Poured.alone(BALL),
        round(BALL, 6),
        ThermalTable.casting("paraffin-wax"),
        PLA,
        SMALL.withBand(true),
        (stage, share) -> shares.add(share));
    assertTrue(shares.size() > 50);
    assertEquals(1, shares.get(shares.size() - 1));
    for (int i = 1; i < shares.size(); i++) {
      assertTrue(shares.get(i) >= shares.get(i - 1) - 1e-12, "at " + i);
    }
    assertThrows(
        Progress.CancelledException.class,
        () ->
            HeatStudy.of(
                Poured.alone(BALL),
                round(BALL, 6),
                ThermalTable.casting("paraffin-wax"),
                PLA,
                SMALL,
                (stage, share) -> {
                  if (share > 0.2) {
                    throw new Progress.CancelledException();
                  }
                }));
  }

  @Test
  void badInputIsOneSentence() {
    refused("sets at 0.0 °C", () -> study(BALL, "ice", SMALL));
    refused(
        "heat cannot be computed without the law of setting of Platinum-cure silicone",
        () -> study(BALL, "silicone-platinum", SMALL));
    refused(
        "the conductivity of Standard photopolymer print",
        () ->
            HeatStudy.of(
                Poured.alone(BALL),
                round(BALL, 6),
                ThermalTable.casting("beeswax"),
                MoldWall.full(ThermalTable.mold("photopolymer")),
                SMALL,
                Progress.NONE));
    refused(
        "reaches out of the block",
        () -> {
          Box3 small = new Box3(new Vec3(-10, -10, -10), new Vec3(10, 10, 10));
          HeatStudy.of(
              Poured.alone(BALL),
              small,
              ThermalTable.casting("beeswax"),
              PLA,
              SMALL,
              Progress.NONE);
        });
    refused("not liquid at 40.0 °C", () -> study(BALL, "beeswax", SMALL.pouredAt(40)));
    refused("at least 1000 cells", () -> SMALL.withCells(10));
  }

  private static void refused(String words, Runnable work) {
    String said = assertThrows(IllegalArgumentException.class, work::run).getMessage();
    assertTrue(said.contains(words), said);
  }

  @Test
  void whatTakesTooLongIsSaid() {
    HeatOptions o =
        new HeatOptions(20, SMALL.air(), SMALL.contact(), null, null, 12_000, false, 60, 1);
    HeatResult r = study(BALL, "beeswax", o);
    assertNull(r.demoldS());
    assertNull(r.last());
    assertTrue(r.notes().stream().anyMatch(n -> n.contains("does not set")));
  }
}
