package org.castwright.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.material.Materials;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.pour.Liquid;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A brick of 100 x 60 x 40 mm in a standing mold of two halves, y up, 10 mm of wall all round. */
class AdviceTest {

  private static final TriMesh CASTING = box(-50, 0, -20, 50, 60, 20);
  private static final TriMesh BLOCK = box(-60, -10, -30, 60, 70, 30);
  private static final TriMesh GATE = box(-40, 60, -5, -30, 70, 5);
  private static final TriMesh VENT = box(45, 60, -1, 47, 70, 1);
  private static TriMesh channels;
  private static List<PourJob.Piece> pieces;

  @BeforeAll
  static void cut() {
    try (SolidKernel kernel = new ManifoldKernel()) {
      Solid bores =
          kernel.union("bores", List.of(kernel.solid("g", GATE), kernel.solid("v", VENT)));
      channels = bores.mesh();
      Solid rest =
          kernel.difference(
              "rest", kernel.solid("b", BLOCK), List.of(kernel.solid("c", CASTING), bores));
      TriMesh half = box(-99, -99, 0, 99, 99, 99);
      TriMesh other = box(-99, -99, -99, 99, 99, 0);
      pieces =
          List.of(
              piece("piece-1", kernel.intersection("1", rest, kernel.solid("h", half)), Vec3.Z),
              piece(
                  "piece-2",
                  kernel.intersection("2", rest, kernel.solid("o", other)),
                  Vec3.Z.negate()));
    }
  }

  private static PourJob.Piece piece(String name, Solid solid, Vec3 pull) {
    return new PourJob.Piece(name, solid.mesh(), pull);
  }

  private static TriMesh box(double x0, double y0, double z0, double x1, double y1, double z1) {
    return Primitives.box(new Vec3(x0, y0, z0), new Vec3(x1, y1, z1));
  }

  private static PourJob job(String material, Vec3 up, double scale, PourJob.Order order) {
    return new PourJob(
        CASTING,
        channels,
        BLOCK,
        Double.POSITIVE_INFINITY,
        pieces,
        List.of(
            new PourJob.Bore(
                "gate", true, List.of(new Vec3(-35, 60, 0), new Vec3(-35, 70, 0)), 10, 10),
            new PourJob.Bore(
                "vent-1", false, List.of(new Vec3(46, 60, 0), new Vec3(46, 70, 0)), 2, 2)),
        new PourJob.Holds("band", 2),
        new PourJob.Sizes(
            new Vec3(100 / scale, 60 / scale, 40 / scale), new Vec3(scale, scale, scale), false),
        Materials.of(material),
        up,
        PourJob.Print.FDM,
        order,
        PourJob.Cooling.OFF);
  }

  private static PourAdvice advise(String material, Vec3 up) {
    double scale = Materials.of(material).scaleFactor();
    return Advisor.of(job(material, up, scale, PourJob.Order.ONE), Progress.NONE);
  }

  @Test
  void aBrickFillsAndFits() {
    PourAdvice a = advise("resin-polyurethane", Vec3.Y);
    assertEquals(List.of(), a.reasons());
    assertTrue(a.fits());
    assertEquals(List.of(), a.fill().pockets());
    assertEquals(1, a.fill().roofPeaks());
    assertEquals(10, a.fill().mouthOverCastingMm(), 1e-6);
    List<Double> poured = a.fill().pouredMm3();
    double whole = CASTING.volume() + GATE.volume() + VENT.volume();
    assertEquals(whole, poured.get(poured.size() - 1), 0.1);
    List<Double> times = a.fill().timeS();
    for (int i = 1; i < times.size() - 1; i++) {
      assertTrue(times.get(i) >= times.get(i - 1));
    }
    assertTrue(a.flow().fillLowS() <= a.flow().fillS() && a.flow().fillS() <= a.flow().fillHighS());
  }

  @Test
  void openingForceIsPressureTimesTheWallItRestsOn() {
    // both halves: 100 mm wide, liquid from y = 0 to 60 under 10 mm more of head, less the ends of
    // the bores, whose walls across z balance; F = ρgw[(h0+h)²−h0²]/2
    PourAdvice a = advise("resin-polyurethane", Vec3.Y);
    double rho = Materials.of("resin-polyurethane").liquidKgPerM3();
    double bores = rho * Liquid.GRAVITY * (0.010 + 0.002) * 0.010 * 0.010 / 2;
    double force = rho * Liquid.GRAVITY * 0.1 * (0.07 * 0.07 - 0.01 * 0.01) / 2 + bores;
    for (PourAdvice.PieceLoad p : a.pressure().pieces()) {
      assertEquals(force, p.openingN(), 1e-3 * force, p.piece());
      // floor 100 x 20 under 70 mm, roof under 10 less the halves of the bores' ends
      double floor = -rho * Liquid.GRAVITY * 0.070 * 0.1 * 0.020;
      double roof = rho * Liquid.GRAVITY * 0.010 * (0.1 * 0.020 - 0.010 * 0.005 - 0.002 * 0.001);
      assertEquals(floor + roof, p.liftN(), 1e-3 * Math.abs(floor), p.piece());
    }
    assertEquals(2 * force, a.pressure().closingN(), 2e-3 * force);
    assertEquals(force, a.pressure().eachN(), 1e-3 * force);
    // the center of pressure under the surface: ∫y²dy/∫y dy, a little higher by the bores
    double below = 2.0 / 3 * (Math.pow(70, 3) - Math.pow(10, 3)) / (70 * 70 - 10 * 10);
    assertEquals(80 - below, a.pressure().pieces().get(0).heightMm(), 0.2);
    assertEquals(rho * Liquid.GRAVITY * 0.070, a.pressure().highestPa(), 0.1);
  }

  @Test
  void lyingTheUpperHalfMustBeHeldAgainstItsLift() {
    // a lying mold whose mouths lie in its middle: the surface stands at the casting's roof, which
    // bears nothing; the roofs of the bores, 10 x 10 and 2 x 10 mm, lie 15 and 19 mm below it
    PourAdvice a = advise("resin-polyurethane", Vec3.Z);
    double rho = Materials.of("resin-polyurethane").liquidKgPerM3();
    double lift = rho * Liquid.GRAVITY * (0.015 * 0.010 * 0.010 + 0.019 * 0.002 * 0.010);
    assertEquals(lift, a.pressure().pieces().get(0).liftN(), 1e-4);
    assertEquals(2 * lift, a.pressure().closingN(), 1e-3);
    double floor = rho * Liquid.GRAVITY * 0.040 * 0.100 * 0.060;
    assertEquals(floor, a.pressure().pieces().get(1).openingN(), 0.02 * floor);
  }

  @Test
  void aFinTooThinForSiliconeIsNamed() {
    try (SolidKernel kernel = new ManifoldKernel()) {
      // a fin of 0.6 mm that stands 25 mm out of the brick's end
      TriMesh fin = box(49, 10, -0.3, 75, 50, 0.3);
      TriMesh finned =
          kernel.union("f", List.of(kernel.solid("c", CASTING), kernel.solid("fin", fin))).mesh();
      double s = Materials.of("silicone-platinum").scaleFactor();
      PourJob plain = job("silicone-platinum", Vec3.Y, s, PourJob.Order.ONE);
      PourJob job =
          new PourJob(
              finned,
              channels,
              BLOCK,
              Double.POSITIVE_INFINITY,
              pieces,
              plain.bores(),
              plain.holds(),
              plain.sizes(),
              plain.material(),
              Vec3.Y,
              PourJob.Print.FDM,
              PourJob.Order.ONE,
              PourJob.Cooling.OFF);
      PourAdvice a = Advisor.of(job, Progress.NONE);
      PourAdvice.WebInfo web = a.detail().webs().get(0);
      assertEquals(1, a.detail().webs().size());
      assertEquals(0.6, web.thicknessMm(), 0.01);
      assertEquals(25, web.depthMm(), 2);
      // L² = ρgH·h²·t/(6µ) turned round, with the head down to the fin's middle
      double head = 70 - web.place().get(1);
      double t = a.flow().workingS() / 3;
      double mu = Materials.of("silicone-platinum").viscosityPaS();
      double pa = Materials.of("silicone-platinum").liquidKgPerM3() * Liquid.GRAVITY * head / 1000;
      assertEquals(
          web.depthMm() * Math.sqrt(6 * mu / (pa * t)), web.neededMm(), 0.01 * web.neededMm());
      assertTrue(a.reasons().toString().contains("web of 0.60 mm"), a.reasons() + "");
      assertEquals(
          List.of(), Advisor.of(plain, Progress.NONE).detail().webs(), "the brick has no web");
    }
  }

  @Test
  void detailAndHeldModel() {
    PourAdvice a = advise("resin-polyurethane", Vec3.Y);
    assertEquals(0.45, a.detail().printMm());
    double rho = Materials.of("resin-polyurethane").liquidKgPerM3();
    // 2γ/(ρgH) with 0.045 N/m under the 10 mm over the casting's top
    assertEquals(2 * 0.045 / (rho * Liquid.GRAVITY * 0.010) * 1000, a.detail().liquidMm(), 0.01);
    assertEquals(rho * Liquid.GRAVITY * 240_000e-9, a.pressure().heldN(), 1e-3);
    PourAdvice wax = advise("soy-wax", Vec3.Y);
    assertNull(wax.detail().liquidMm());
    assertEquals(List.of(), wax.detail().webs());
  }

  @Test
  void wallsAreMeasuredAsPlates() {
    PourAdvice.Walls w = advise("concrete", Vec3.Y).walls();
    assertEquals(8, w.panels().size());
    PourAdvice.Panel clamped = w.panels().get(0);
    PourAdvice.Panel simple = w.panels().get(1);
    assertEquals(60, clamped.shortMm(), 1e-6);
    assertEquals(100, clamped.longMm(), 1e-6);
    assertEquals(10, clamped.thicknessMm(), 1e-6);
    assertTrue(clamped.deflectionMm() < simple.deflectionMm());
    assertTrue(clamped.neededMm() < simple.neededMm());
    double most = w.panels().stream().mapToDouble(PourAdvice.Panel::neededMm).max().orElseThrow();
    assertEquals(most, w.neededMm(), 0.01);
    assertTrue(w.neededMm() < 10, "a table-top brick needs no more than it has");
  }

  @Test
  void anotherPositionMayTrapAirOrRunOut() {
    // upside down: the channels end below everything
    PourAdvice down = advise("resin-polyurethane", Vec3.Y.negate());
    assertFalse(down.fits());
    assertTrue(down.reasons().get(0).contains("Air stays"), down.reasons().toString());
    assertTrue(down.reasons().toString().contains("below"), down.reasons().toString());
    assertEquals("stands", down.flow().regime());
    assertTrue(down.notes().toString().contains("No tilt of up to 30°"), down.notes() + "");
    // tilted by 3:10 to lift the far end: the vent's near edge shuts in a wedge behind it
    PourAdvice tilted = advise("resin-polyurethane", new Vec3(0.3, 1, 0));
    assertEquals(1, tilted.fill().pockets().size());
    // 3 mm beyond the vent: a triangle 3 x 0.9 over 40 mm of depth
    assertEquals(3 * 0.9 / 2 * 40, tilted.fill().pockets().get(0).volumeMm3(), 0.1);
    // it was tilted by 16.7°: back by more than that the vent's corner is the highest place
    String help = String.join(" ", tilted.notes());
    assertTrue(help.contains("no air stays and nothing runs out"), help);
    String[] v = help.replaceAll(".*so that \\(([^)]*)\\).*", "$1").split(", ", -1);
    Vec3 way =
        new Vec3(Double.parseDouble(v[0]), Double.parseDouble(v[1]), Double.parseDouble(v[2]));
    assertEquals(List.of(), advise("resin-polyurethane", way).fill().pockets());
  }

  @Test
  void anotherMaterialMayNoLongerFit() {
    double scale = Materials.of("plaster-pottery").scaleFactor();
    PourJob wax = job("paraffin-wax", Vec3.Y, scale, PourJob.Order.ONE);
    PourAdvice a = Advisor.of(wax, Progress.NONE);
    assertFalse(a.fits());
    assertTrue(a.reasons().toString().contains("scaled for another shrink"), a.reasons() + "");
    assertEquals(100 * 0.98, a.size().expectedMm().get(0), 1e-3);
    assertEquals(100 / scale, a.size().wantedMm().get(0), 1e-3);
    PourAdvice metal = advise("tin-bismuth", Vec3.Y);
    assertTrue(metal.reasons().toString().contains("no printed plastic mold"));
  }

  @Test
  void theMixAddsUpAndPricesAreTheUsers() {
    double scale = Materials.of("plaster-pottery").scaleFactor();
    PourJob.Order order = new PourJob.Order(5, 2, 3, Double.NaN);
    PourAdvice a = Advisor.of(job("plaster-pottery", Vec3.Y, scale, order), Progress.NONE);
    double sum = a.bench().mix().stream().mapToDouble(PourAdvice.MixPart::massG).sum();
    assertEquals(1000 * a.bench().withLossKg(), sum, 0.2);
    assertEquals(0.7, a.bench().mix().get(0).massG() / a.bench().mix().get(1).massG(), 1e-3);
    assertEquals(1.1 * a.bench().massKg(), a.bench().withLossKg(), 1e-5);
    assertEquals(3, a.bench().batches().rounds());
    assertEquals(5 * 3 * a.bench().withLossKg(), a.bench().cost().total(), 0.01);
    assertEquals(List.of("printed plastic"), a.bench().cost().unpriced());
    assertNull(a.bench().cost().print());
    assertThrows(
        IllegalArgumentException.class, () -> new PourJob.Order(0, 1, Double.NaN, Double.NaN));
  }

  @Test
  void whatIsNotKnownIsNullAndNamed() {
    Material soap = Materials.of("plaster-pottery");
    Material mute =
        new Material(
            "mute",
            "Mute",
            soap.shrink(),
            soap.density(),
            null,
            10,
            2,
            30,
            soap.demoldStrain(),
            List.of(),
            null,
            List.of(),
            soap.cautions(),
            "",
            null,
            null,
            null,
            null,
            null);
    PourJob job = job("plaster-pottery", Vec3.Y, soap.scaleFactor(), PourJob.Order.ONE);
    PourJob quiet =
        new PourJob(
            job.casting(),
            job.channels(),
            job.block(),
            job.sideWallMm(),
            job.pieces(),
            job.bores(),
            job.holds(),
            job.sizes(),
            mute,
            job.up(),
            job.print(),
            job.order(),
            job.cooling());
    PourAdvice a = Advisor.of(quiet, Progress.NONE);
    assertNull(a.flow().fillS());
    assertEquals("unknown", a.flow().regime());
    assertNull(a.bench().batches());
    assertTrue(a.notes().toString().contains("no viscosity"), a.notes().toString());
    assertTrue(a.notes().toString().contains("no temperature"), a.notes().toString());
    assertNotNull(a.pressure());
  }

  @Test
  void chocolateHasItsYieldStressFlagged() {
    assertTrue(advise("chocolate-dark", Vec3.Y).notes().toString().contains("yield stress"));
  }
}
