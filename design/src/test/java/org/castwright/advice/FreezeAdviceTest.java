package org.castwright.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.heat.FreezeShut;
import org.castwright.heat.ThermalTable;
import org.castwright.material.Materials;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;

/** A block of 60 x 40 x 30 mm in 8 mm of wall, with a gate in the middle of its top. */
class FreezeAdviceTest {

  private static final TriMesh CASTING = box(-30, 0, -15, 30, 40, 15);
  private static final double WALL = 8;

  private static TriMesh box(double x0, double y0, double z0, double x1, double y1, double z1) {
    return Primitives.box(new Vec3(x0, y0, z0), new Vec3(x1, y1, z1));
  }

  private static PourAdvice advise(
      TriMesh casting, String material, double bore, Double airC, PourJob.Print print) {
    double s = Materials.of(material).scaleFactor();
    double r = bore / 2;
    Vec3 low = casting.bounds().min();
    Vec3 high = casting.bounds().max();
    PourJob job =
        new PourJob(
            casting,
            box(-r, 40, -r, r, 58, r),
            box(
                low.x() - WALL,
                low.y() - WALL,
                low.z() - WALL,
                high.x() + WALL,
                58,
                high.z() + WALL),
            Double.POSITIVE_INFINITY,
            List.of(),
            List.of(
                new PourJob.Bore(
                    "gate", true, List.of(new Vec3(0, 40, 0), new Vec3(0, 58, 0)), bore, bore)),
            new PourJob.Holds("none", 0),
            new PourJob.Sizes(new Vec3(60 / s, 40 / s, 30 / s), new Vec3(s, s, s), false),
            Materials.of(material),
            Vec3.Y,
            print,
            PourJob.Order.ONE,
            new PourJob.Cooling(PourJob.Fineness.OFF, airC, null, 1));
    return Advisor.of(job, Progress.NONE);
  }

  private static PourAdvice advise(String material, double bore, Double airC) {
    return advise(CASTING, material, bore, airC, PourJob.Print.FDM);
  }

  @Test
  void thinWaxIsInBeforeItFreezes() {
    PourAdvice a = advise("beeswax", 10, null);
    PourAdvice.Freezing f = a.freezing();
    FreezeShut.Chill chill =
        FreezeShut.Chill.of(ThermalTable.casting("beeswax"), ThermalTable.mold("pla"), 20, WALL);
    FreezeShut shut = FreezeShut.of(FreezeShut.Shape.BORE, 10, chill);
    assertEquals("open", f.gate());
    assertEquals(20, f.moldC());
    assertEquals(shut.shutS(), f.closedS(), 1e-2 * shut.shutS());
    assertEquals(shut.passesS(false), f.passesS(), 1e-2 * f.passesS());
    assertEquals(a.flow().fillHighS(), f.fillS(), 0.01);
    assertTrue(f.fillS() < f.passesS());
    assertNull(f.neededMm());
    assertNull(f.neededMoldC());
    assertFalse(a.reasons().toString().contains("freeze"), a.reasons() + "");
  }

  /** What is said to help does, and half a millimeter or a degree less does not. */
  @Test
  void aWiderGateOrAWarmerMoldStaysOpen() {
    PourAdvice choc = advise("chocolate-dark", 10, null);
    assertEquals("shuts", choc.freezing().gate());
    assertFalse(choc.fits());
    assertTrue(choc.reasons().toString().contains("gate may freeze shut"), choc.reasons() + "");
    double bore = choc.freezing().neededMm();
    assertTrue(bore > 10 && bore < 30, bore + " mm");
    assertEquals("open", advise("chocolate-dark", bore, null).freezing().gate());
    assertFalse(advise("chocolate-dark", bore - 0.6, null).freezing().gate().equals("open"));
    PourAdvice wax = advise("beeswax", 6, null);
    assertEquals("narrows", wax.freezing().gate(), wax.freezing() + "");
    assertTrue(wax.notes().toString().contains("freeze too narrow"), wax.notes() + "");
    assertFalse(wax.reasons().toString().contains("freeze"), wax.reasons() + "");
    double warm = wax.freezing().neededMoldC();
    assertTrue(warm > 20 && warm < 55, warm + " °C");
    assertEquals("open", advise("beeswax", 6, warm).freezing().gate());
    assertEquals("narrows", advise("beeswax", 6, warm - 0.6).freezing().gate());
  }

  @Test
  void aMoldAsWarmAsTheMeltKeepsItOpen() {
    PourAdvice.Freezing f = advise("ice", 4, 5.0).freezing();
    assertEquals("open", f.gate());
    assertNull(f.closedS());
    assertNotNull(advise("ice", 4, -18.0).freezing().closedS());
  }

  @Test
  void whatIsMissingIsSaidAndMixesDoNotFreeze() {
    PourAdvice alloy = advise("tin-alloy", 10, null);
    assertNull(alloy.freezing());
    assertNull(alloy.detail().webs());
    assertTrue(alloy.notes().toString().contains("stays open while it fills is not worked out"));
    PourAdvice resin = advise(CASTING, "beeswax", 10, null, PourJob.Print.RESIN);
    assertNull(resin.freezing());
    assertTrue(
        resin.notes().toString().contains("does not know the conductivity of Standard photo"),
        resin.notes() + "");
    for (String id : List.of("resin-polyurethane", "plaster-pottery", "silicone-tin")) {
      PourAdvice mix = advise(id, 10, null);
      assertNull(mix.freezing());
      assertFalse(mix.notes().toString().contains("stays open"), mix.notes() + "");
    }
  }

  @Test
  void aThinFinMayFreeze() {
    PourAdvice thin = advise(withFin(1.2), "soap-melt-and-pour", 14, null, PourJob.Print.FDM);
    PourAdvice.WebInfo web = thin.detail().webs().get(0);
    assertEquals(1.2, web.thicknessMm(), 0.05);
    assertTrue(thin.reasons().toString().contains("may freeze before it is full"));
    assertTrue(web.neededMm() > 1.3 && web.neededMm() < 5, web + "");
    PourAdvice thick =
        advise(withFin(web.neededMm() + 0.2), "soap-melt-and-pour", 14, null, PourJob.Print.FDM);
    assertEquals(List.of(), thick.detail().webs());
    // an alloy runs into it
    assertEquals(
        List.of(),
        advise(withFin(1.2), "tin-bismuth", 14, null, PourJob.Print.FDM).detail().webs());
  }

  /** A fin that reaches 25 mm to the side. */
  private static TriMesh withFin(double thick) {
    try (SolidKernel kernel = new ManifoldKernel()) {
      TriMesh fin = box(29, 5, -thick / 2, 55, 35, thick / 2);
      return kernel
          .union("both", List.of(kernel.solid("c", CASTING), kernel.solid("f", fin)))
          .mesh();
    }
  }
}
