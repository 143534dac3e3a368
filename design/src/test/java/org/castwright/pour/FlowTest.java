package org.castwright.pour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FlowTest {

  @Test
  void glycerineThroughATube() {
    // NCERT Physics XI, worked problem: 4.0 g/s of glycerine, 1.5 m, radius 1.0 cm, 0.83 Pa·s,
    // 1300 kg/m³; printed 9.8e2 Pa and Re 0.3
    double mlPerS = 4.0 / 1.3;
    double pa = GateFlow.poiseuillePa(0.83, 20, 1500, mlPerS);
    assertEquals(975.5, pa, 0.05);
    GateFlow.Throat tube = new GateFlow.Throat(20, 1500, Liquid.headMm(1300, pa));
    GateFlow flow = GateFlow.of(new Fluid(1300, 0.83), tube, 0);
    assertEquals(0.307, flow.reynolds(), 5e-4);
    assertEquals(mlPerS, flow.mlPerS(), 1e-3);
    assertEquals(GateFlow.Regime.LAMINAR, flow.regime());
  }

  @Test
  void coneDraining() {
    // funnel problem of a fluid mechanics text: half angle 30°, hole 0.25 in, 12 in deep
    double inch = 25.4;
    assertEquals(153.2, Drain.coneS(30, 0.25 * inch, 12 * inch, 0), 0.1);
    assertEquals(126.1, Drain.coneS(30, 0.25 * inch, 12 * inch, 6 * inch), 0.1);
    assertEquals(27.1, Drain.coneS(30, 0.25 * inch, 6 * inch, 0), 0.05);
  }

  @Test
  void cylinderThroughAHole() {
    // Torricelli with discharge factors; D 80, hole 10, head 100 mm
    assertEquals(14.74, Drain.cylinderS(80, 10, 100, 0.62), 5e-3);
    assertEquals(9.14, Drain.cylinderS(80, 10, 100, 1), 5e-3);
  }

  @Test
  void funnelThroughAHole() {
    assertEquals(3.56, Drain.frustumS(80, 10, 100, 0.62), 5e-3);
    assertEquals(2.28, Drain.frustumS(80, 10, 100, 0.97), 5e-3);
  }

  @Test
  void viscousDrain() {
    // D 80 cup through d 10, L 30, head 130 to 30 mm, 1 Pa·s, 1100 kg/m³
    double t = Drain.viscousS(80, new GateFlow.Throat(10, 30, 130), 30, new Fluid(1100, 1));
    assertEquals(83.5, t, 0.05);
  }

  @ParameterizedTest
  @CsvSource({
    "4, 0.113, 885",
    "6, 0.572, 175",
    "8, 1.808, 55.3",
    "10, 4.414, 22.7",
    "12, 9.153, 10.9"
  })
  void gateFlows(double bore, double mlPerS, double secondsFor100) {
    // Hagen-Poiseuille, 1 Pa·s, 1100 kg/m³, 50 mm head, 30 mm long
    GateFlow.Throat throat = new GateFlow.Throat(bore, 30, 50);
    double q = GateFlow.poiseuilleMlPerS(new Fluid(1100, 1), throat);
    assertEquals(mlPerS, q, 5e-4);
    assertEquals(secondsFor100, 100 / q, bore < 8 ? 0.5 : 0.05);
  }

  @Test
  void thinnerLiquidAndItsReynoldsNumber() {
    // 0.1 Pa·s, 1050 kg/m³, bore 6, length 20, head 50: 8.19 ml/s
    double q = GateFlow.poiseuilleMlPerS(new Fluid(1050, 0.1), new GateFlow.Throat(6, 20, 50));
    assertEquals(8.19, q, 5e-3);
    double v = q * 1e-6 / (Math.PI * 0.003 * 0.003);
    assertEquals(18.3, 1050 * v * 0.006 / 0.1, 0.05);
  }

  @Test
  void twiceTheBoreIsSixteenTimesTheFlow() {
    Fluid f = new Fluid(1100, 1);
    double thin = GateFlow.poiseuilleMlPerS(f, new GateFlow.Throat(4, 30, 50));
    double wide = GateFlow.poiseuilleMlPerS(f, new GateFlow.Throat(8, 30, 50));
    assertEquals(16, wide / thin, 1e-9);
  }

  @ParameterizedTest
  @CsvSource({
    "0.2, 4, 355",
    "0.2, 8, 23",
    "0.2, 12, 5",
    "1, 4, 1770",
    "1, 8, 111",
    "1, 12, 22",
    "5, 12, 109"
  })
  void bothResistancesTogether(double viscosity, double bore, double seconds) {
    // computed from ρgH = (ρ/2)(1+K)v² + 8µLv/r²: 200 ml, head 50, length 30 mm, K 0.5, 1100 kg/m³
    Fluid f = new Fluid(1100, viscosity);
    GateFlow flow = GateFlow.of(f, new GateFlow.Throat(bore, 30, 50));
    assertEquals(seconds, flow.secondsFor(200_000), Math.max(0.5, 0.012 * seconds));
  }

  @Test
  void limitsAreTheOrificeAndThePipe() {
    // without friction: v = √(2gh/(1+K)); with K 0 that is Torricelli
    GateFlow hole = GateFlow.of(new Fluid(1000, 1e-9), new GateFlow.Throat(10, 0, 100), 0);
    assertEquals(Math.sqrt(2 * 9.81 * 0.1), hole.mPerS(), 1e-9);
    assertEquals(GateFlow.Regime.ORIFICE, hole.regime());
    Fluid thick = new Fluid(1100, 100);
    GateFlow.Throat pipe = new GateFlow.Throat(10, 30, 50);
    double q = GateFlow.of(thick, pipe).mlPerS();
    assertEquals(GateFlow.poiseuilleMlPerS(thick, pipe), q, 1e-6 * q);
  }

  @Test
  void aYieldStressHoldsAThinThroatAndSlowsAWideOne() {
    // 2τL/r = 2·20·0.03/0.001 = 1200 Pa against 1200·9.81·0.03 = 353 Pa of head
    Fluid chocolate = new Fluid(1200, 3, 20);
    GateFlow thin = GateFlow.of(chocolate, new GateFlow.Throat(2, 30, 30));
    assertEquals(GateFlow.Regime.STANDS, thin.regime());
    assertTrue(Double.isInfinite(thin.secondsFor(1)));
    GateFlow wide = GateFlow.of(chocolate, new GateFlow.Throat(12, 30, 30));
    GateFlow free = GateFlow.of(new Fluid(1200, 3), new GateFlow.Throat(12, 30, 30));
    assertTrue(wide.mlPerS() > 0 && wide.mlPerS() < free.mlPerS());
  }

  @ParameterizedTest
  @CsvSource({"0.5, 109", "1, 6.8", "2, 0.4"})
  void airThroughAVent(double bore, double headMm) {
    // 20 mm long, 5 ml/s, as head of a liquid of 1100 kg/m³
    double pa = AirVent.backPressurePa(bore, 20, 5);
    assertEquals(headMm, Liquid.headMm(1100, pa), 0.06 * Math.max(headMm, 1));
  }

  @Test
  void skinAndSqueeze() {
    // 0.04 N/m over a bore of 2 mm: 80 Pa, 7.4 mm head
    assertEquals(80, AirVent.skinPa(0.04, 2), 1e-9);
    assertEquals(7.4, Liquid.headMm(1100, 80), 0.05);
    // plaster of 1600 kg/m³: 100 mm head 1.5 %, 300 mm 4.4 %
    assertEquals(0.015, AirVent.squeezedShare(1600, 100), 5e-4);
    assertEquals(0.044, AirVent.squeezedShare(1600, 300), 5e-4);
    // Boyle, 29.92 inHg: 27 gives 10.2, 29 gives 32.5
    assertEquals(10.2, AirVent.growth(29.92, 27), 0.05);
    assertEquals(32.5, AirVent.growth(29.92, 29), 0.05);
  }

  @Test
  void stokesBubbles() {
    // rigid sphere, after Vogel, Life in Moving Fluids, equation 15.8; r 0.5 mm in 20 Pa·s
    double mmPerMin = 60 * AirVent.bubbleMmPerS(0.5, new Fluid(1100, 20));
    assertEquals(1.80, mmPerMin, 5e-3);
    assertEquals(28, 50 / mmPerMin, 0.5);
    assertEquals(0.45, 60 * AirVent.bubbleMmPerS(0.25, new Fluid(1100, 20)), 5e-3);
    assertEquals(7.2, 60 * AirVent.bubbleMmPerS(0.5, new Fluid(1100, 5)), 0.05);
    assertEquals(36, 60 * AirVent.bubbleMmPerS(0.5, new Fluid(1100, 1)), 0.5);
    // exam question: r 0.1 mm at 0.35 cm/s in 1000 kg/m³ means 6.22e-3 Pa·s
    assertEquals(3.5, AirVent.bubbleMmPerS(0.1, new Fluid(1000, 6.22e-3)), 0.01);
  }

  @ParameterizedTest
  @CsvSource({"0.2, 28", "1, 139", "5, 695"})
  void headForASlit(double viscosity, double headMm) {
    // 2 mm, 50 mm long, 10 mm/s, 1100 kg/m³
    double head = ThinPlaces.headForSlitMm(2, 50, 10, new Fluid(1100, viscosity));
    assertEquals(headMm, head, 0.5);
  }

  @Test
  void creepingIntoASlitTakesTheTimeOfItsOwnLaw() {
    // dt = 12 µ L dL/(p h²), summed over the way, must take the time given
    Fluid f = new Fluid(1100, 2);
    double head = 50;
    double reach = ThinPlaces.reachMm(1, head, 60, f);
    double pa = Liquid.pressurePa(1100, head);
    int steps = 1000;
    double seconds = 0;
    for (int i = 0; i < steps; i++) {
      double at = (i + 0.5) * reach / steps / 1000;
      seconds += 12 * 2 * at / (pa * 1e-6) * reach / steps / 1000;
    }
    assertEquals(60, seconds, 1e-6);
    // with a yield stress it stops where 2τL/h has eaten the head: 540·0.001/100 m
    assertEquals(5.4, ThinPlaces.reachMm(1, head, 1e6, new Fluid(1100, 2, 50)), 0.01);
  }

  @Test
  void finestDetail() {
    // 2γ/(ρgH) at 50 mm head: about 0.13 mm for 0.035 N/m
    assertEquals(0.13, ThinPlaces.finestMm(0.035, 1, 1100, 50), 5e-3);
  }
}
