package org.castwright.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.trial.Change.Option;
import org.castwright.trial.Note.Kind;
import org.junit.jupiter.api.Test;

/** Each kind of note gets the answer its facts call for. */
class ReasonerTest {

  private static final List<Double> PLACE = List.of(10.0, 20.0, 3.0);

  private static Facts facts(
      String closing,
      double wall,
      Double needed,
      List<List<Double>> channels,
      List<Facts.CaughtSpot> caught,
      List<Facts.DraftAt> drafts) {
    return new Facts(
        "beeswax",
        "mine",
        "fdm",
        2.0,
        List.of(2.0, 2.0, 2.0),
        0.3,
        closing,
        wall,
        needed,
        12.0,
        8,
        1.5,
        channels,
        List.of(),
        80,
        false,
        0.05,
        2,
        false,
        caught,
        drafts,
        List.of(new Facts.AirAt(0, 70, PLACE)),
        List.of(68.0, 71.0),
        "silicone spray",
        null);
  }

  private static final Facts PLAIN =
      facts("bands", 5, 3.0, List.of(List.of(0.0, 60.0, 0.0)), List.of(), List.of());

  private static Answer only(Note n, Facts f) {
    return only(n, f, Calibration.NONE);
  }

  private static Answer only(Note n, Facts f, Calibration own) {
    List<Answer> a = Reasoner.answer(List.of(n), f, own);
    assertEquals(1, a.size());
    assertFalse(a.get(0).because().isBlank() || a.get(0).source().isBlank());
    return a.get(0);
  }

  private static Change change(Answer a, Option o) {
    return a.changes().stream().filter(c -> c.option() == o).findFirst().orElseThrow();
  }

  @Test
  void trappedAirFarFromAVentGetsOneThere() {
    Change c = change(only(Note.of(Kind.AIR, PLACE), PLAIN), Option.VENT_AT);
    assertEquals(PLACE, c.place());
  }

  @Test
  void trappedAirAtAVentGetsAWiderOne() {
    Facts f =
        facts(
            "bands",
            5,
            3.0,
            List.of(List.of(0.0, 60.0, 0.0), List.of(11.0, 21.0, 3.0)),
            List.of(),
            List.of());
    Change c = change(only(Note.of(Kind.AIR, PLACE), f), Option.VENT_MM);
    // twice the flow by the fourth power of the bore
    assertEquals(2, Math.pow(c.number() / 1.5, 4), 0.02);
  }

  @Test
  void airOnAFloorIsNoMatterOfVents() {
    Answer a = only(Note.of(Kind.AIR, PLACE), with(new Facts.AirAt(0, -80, PLACE)));
    assertTrue(a.changes().isEmpty() && a.advice().size() == 2, a.toString());
  }

  @Test
  void theVentGoesWhereTheAirRisesTo() {
    List<Double> peak = List.of(-30.0, 44.0, 1.0);
    Answer a = only(Note.of(Kind.AIR, PLACE), with(new Facts.AirAt(0, 3, peak)));
    assertEquals(peak, change(a, Option.VENT_AT).place());
    assertTrue(a.because().contains("rises to (-30.0, 44.0, 1.0)"), a.because());
  }

  /** Where pieces leave along any pulls a vent can be had as well, if not along a seam. */
  @Test
  void trappedAirInADividedMoldGetsAVentThere() {
    Answer a = only(Note.of(Kind.AIR, PLACE), with(true, new Facts.AirAt(0, 3, PLACE)));
    assertEquals(PLACE, change(a, Option.VENT_AT).place());
    assertTrue(a.advice().stream().anyMatch(w -> w.contains("straight up")), a.toString());
  }

  private static Facts with(Facts.AirAt air) {
    return with(PLAIN.divided(), air, null, PLAIN.shrinkByAxis());
  }

  private static Facts uneven() {
    Facts.AirAt air = new Facts.AirAt(0, 70, PLACE);
    return with(PLAIN.divided(), air, null, List.of(1.0, 2.0, 3.0));
  }

  private static Facts with(Facts.AirAt air, Facts.Wall wall) {
    return with(PLAIN.divided(), air, wall, PLAIN.shrinkByAxis());
  }

  private static Facts with(boolean divided, Facts.AirAt air) {
    return with(divided, air, null, PLAIN.shrinkByAxis());
  }

  private static Facts with(
      boolean divided, Facts.AirAt air, Facts.Wall wall, List<Double> shrinkByAxis) {
    Facts f = PLAIN;
    return new Facts(
        f.material(),
        f.printer(),
        f.process(),
        f.shrinkPercent(),
        shrinkByAxis,
        f.clearanceMm(),
        f.closing(),
        f.wallMm(),
        f.wallNeededMm(),
        f.closingN(),
        f.gateMm(),
        f.ventMm(),
        f.channels(),
        f.pockets(),
        f.longestMm(),
        divided,
        f.releaseMm(),
        f.pieces(),
        f.allowedCaught(),
        f.caught(),
        f.pulls(),
        List.of(air),
        f.pourC(),
        f.releaseAgent(),
        wall);
  }

  @Test
  void trappedAirAtTheGateGetsAVent() {
    Facts f = facts("bands", 5, 3.0, List.of(List.of(11.0, 21.0, 3.0)), List.of(), List.of());
    Answer a = only(Note.of(Kind.AIR, PLACE), f);
    change(a, Option.VENT_AT);
    assertTrue(a.because().contains("gate"), a.because());
  }

  @Test
  void flashIsSettledByTheFirstCauseThatIsThere() {
    Note flash = Note.of(Kind.FLASH, PLACE);
    assertEquals("bolts", change(only(flash, PLAIN), Option.CLOSING).words());
    Facts weak = facts("bands", 5, 6.3, List.of(), List.of(), List.of());
    assertEquals(6.5, change(only(flash, weak), Option.WALL_MM).number());
    Facts bolted = facts("bolts", 5, 3.0, List.of(), List.of(), List.of());
    assertEquals(2, Math.pow(change(only(flash, bolted), Option.WALL_MM).number() / 5, 3), 0.3);
    List<Answer> both =
        Reasoner.answer(List.of(flash, Note.of(Kind.KEYS_TIGHT, null)), PLAIN, Calibration.NONE);
    assertTrue(both.get(0).changes().isEmpty(), "tight keys come first");
    assertEquals(0.35, change(both.get(1), Option.CLEARANCE_MM).number(), 1e-9);
  }

  @Test
  void whatStuckAtACatchGetsAFurtherPiece() {
    Facts f =
        facts(
            "bands",
            5,
            3.0,
            List.of(),
            List.of(new Facts.CaughtSpot(List.of(12.0, 20.0, 3.0), 0.4, 0.9)),
            List.of(new Facts.DraftAt(0, 0.5, null, 0)));
    Answer a = only(Note.of(Kind.STUCK, PLACE), f);
    assertEquals(3, change(a, Option.PIECES).number());
    assertTrue(a.advice().get(0).contains("silicone spray"), a.advice().toString());
  }

  @Test
  void whatStuckWithoutDraftGetsABetterPullIfThereIsOne() {
    Note stuck = Note.of(Kind.STUCK, PLACE);
    List<Double> other = List.of(0.0, 1.0, 0.0);
    Facts better =
        facts("bands", 5, 3.0, List.of(), List.of(), List.of(new Facts.DraftAt(0, 0.5, other, 14)));
    assertEquals(other, change(only(stuck, better), Option.PULL).place());
    Facts none =
        facts("bands", 5, 3.0, List.of(), List.of(), List.of(new Facts.DraftAt(0, 0.5, null, 0)));
    Answer a = only(stuck, none);
    assertTrue(a.changes().isEmpty());
    assertTrue(a.advice().stream().anyMatch(w -> w.contains("2° of draft")), a.toString());
  }

  @Test
  void whatStuckWithDraftIsLookedAtMoreStrictly() {
    Facts f =
        facts("bands", 5, 3.0, List.of(), List.of(), List.of(new Facts.DraftAt(0, 8, null, 0)));
    assertEquals(
        0.025, change(only(Note.of(Kind.STUCK, PLACE), f), Option.RELEASE_MM).number(), 1e-9);
  }

  @Test
  void lengthsGiveTheShrinkThatWouldHaveBeenRight() {
    // the cavity was 100/0.98 and 50/0.98; the casting came out 1 % smaller than wanted
    Note n = Note.ofSize(List.of(new Note.Length(100, 99), new Note.Length(50, 49.5)));
    Change c = change(only(n, PLAIN), Option.SHRINK_PERCENT);
    assertEquals(100 * (1 - 0.99 * 0.98), c.number(), 0.001);
    Note right = Note.ofSize(List.of(new Note.Length(100, 100.02), new Note.Length(50, 49.97)));
    assertTrue(only(right, PLAIN).changes().isEmpty(), "within the spread nothing is changed");
  }

  @Test
  void earlierLengthsOfTheSamePrinterCount() {
    Reading before =
        new Reading(Reading.Kind.CAST_LENGTH, "beeswax", "mine", "fdm", 100, 97.0, null, "", "");
    Note n = Note.ofSize(List.of(new Note.Length(98, 97)));
    Answer a = only(n, PLAIN, new Calibration(List.of(before)));
    assertTrue(a.because().contains("2 length(s), 1 of them of earlier casts"), a.because());
  }

  @Test
  void keysFollowTheMakersOwnLadder() {
    Reading good =
        new Reading(Reading.Kind.KEY_FIT, "", "mine", "fdm", 0.45, null, Reading.Fit.GOOD, "", "");
    Answer a = only(Note.of(Kind.KEYS_TIGHT, null), PLAIN, new Calibration(List.of(good)));
    assertEquals(0.45, change(a, Option.CLEARANCE_MM).number(), 1e-9);
    assertEquals(
        0.25,
        change(only(Note.of(Kind.KEYS_LOOSE, null), PLAIN), Option.CLEARANCE_MM).number(),
        1e-9);
  }

  @Test
  void aShortFillGetsTwiceTheFlowAndASoftPrintTwiceTheStiffness() {
    double gate = change(only(Note.of(Kind.SHORT, null), PLAIN), Option.GATE_MM).number();
    assertEquals(2, Math.pow(gate / 8, 4), 0.02);
    Answer soft = only(Note.of(Kind.SOFT, null), PLAIN);
    assertEquals(2, Math.pow(change(soft, Option.WALL_MM).number() / 5, 3), 0.3);
    assertTrue(soft.advice().get(0).contains("68 °C"), soft.advice().toString());
  }

  private static Answer soft(double peakC, Double pourC, String... firmer) {
    Facts.Wall wall =
        new Facts.Wall(peakC, "PLA print", 55, 65, "glass transition", 20, pourC, List.of(firmer));
    return only(Note.of(Kind.SOFT, null), with(new Facts.AirAt(0, 70, PLACE), wall));
  }

  @Test
  void aSoftPrintIsAnsweredByItsHeat() {
    // 62 °C lie within 55 to 65; 68 instead of 88 °C brings 20 + 42 (68 − 20)/(88 − 20) = 49.6
    Answer may = soft(62, 88.0, "PETG print");
    assertTrue(may.because().contains("7 °C above"), may.because());
    assertTrue(may.because().contains("about 50 °C, which it stands"), may.because());
    change(may, Option.WALL_MM);
    assertTrue(may.advice().toString().contains("PETG print"), may.advice() + "");
    Answer hot = soft(150, 170.0);
    assertTrue(hot.because().contains("95 °C above"), hot.because());
    // 20 + 130 (68 − 20)/150 = 61.6
    assertTrue(hot.because().contains("about 62 °C, still too warm"), hot.because());
    assertTrue(hot.changes().isEmpty(), "no wall stays cooler at its face");
    assertTrue(hot.advice().toString().contains("No printed plastic"), hot.advice() + "");
    Answer cold = soft(41, 70.0, "PETG print");
    assertTrue(cold.because().contains("14 °C below"), cold.because());
    change(cold, Option.WALL_MM);
    assertFalse(cold.advice().toString().contains("PETG print"), cold.advice() + "");
    Answer resin = soft(80, null, "ABS or ASA print");
    assertFalse(resin.because().contains("Poured at"), resin.because());
    assertTrue(resin.changes().isEmpty());
  }

  @Test
  void axesThatShrinkDifferentlyGetTheirOwn() {
    List<Note.Length> lengths =
        List.of(
            new Note.Length(100, 99.0, "x"),
            new Note.Length(50, 49.51, "x"),
            new Note.Length(30, 29.7, "x"),
            new Note.Length(80, 80.01, "z"),
            new Note.Length(40, 40.0, "z"),
            new Note.Length(20, 20.01, "z"),
            new Note.Length(60, 59.7));
    Answer a = only(Note.ofSize(lengths), PLAIN);
    List<Double> to = change(a, Option.SHRINK_PERCENT).place();
    assertEquals(100 * (1 - 0.99 * 0.98), to.get(0), 0.02);
    assertEquals(2, to.get(2), 0.02);
    assertTrue(to.get(1) > to.get(2) && to.get(1) < to.get(0), "that of all: " + to);
    assertTrue(a.because().contains("differ by more than their spread"), a.because());
    // a mold that was already drawn so is right
    List<Note.Length> right =
        List.of(
            new Note.Length(100, 100.01, "x"),
            new Note.Length(50, 49.99, "x"),
            new Note.Length(100, 99.99, "z"),
            new Note.Length(50, 50.01, "z"));
    Answer same = only(Note.ofSize(right), uneven());
    assertTrue(same.because().contains("what was allowed for"), same.because());
    assertEquals(List.of(), same.changes());
    // with scatter as large as the difference there is one shrink
    List<Note.Length> rough =
        List.of(
            new Note.Length(100, 98.4, "x"),
            new Note.Length(50, 50.0, "x"),
            new Note.Length(80, 80.6, "z"),
            new Note.Length(40, 39.5, "z"));
    Answer b = only(Note.ofSize(rough), PLAIN);
    assertTrue(b.because().contains("do not differ beyond their spread"), b.because());
    assertTrue(b.changes().stream().allMatch(c -> c.place() == null), b + "");
    Answer one = only(Note.ofSize(List.of(new Note.Length(100, 99, "y"))), PLAIN);
    assertTrue(one.because().contains("Two lengths along an axis"), one.because());
    assertThrows(IllegalArgumentException.class, () -> new Note.Length(100, 99, "w"));
  }

  /** A cavity that was drawn for another shrink along each axis. */
  @Test
  void lengthsAreReadWithTheShrinkOfTheirAxis() {
    Readings r = new Readings(PLAIN, "", "");
    assertEquals(100 / 0.98, r.drawnMm(new Note.Length(100, 99, "z")), 1e-9);
    Readings u = new Readings(uneven(), "", "");
    assertEquals(100 / 0.99, u.drawnMm(new Note.Length(100, 99, "x")), 1e-9);
    assertEquals(100 / 0.97, u.drawnMm(new Note.Length(100, 99, "z")), 1e-9);
    assertEquals(100 / 0.98, u.drawnMm(new Note.Length(100, 99)), 1e-9);
  }

  @Test
  void notesWithoutWhatTheyNeedAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> Note.of(Kind.AIR, null));
    assertThrows(IllegalArgumentException.class, () -> Note.of(Kind.SIZE, null));
    assertThrows(IllegalArgumentException.class, () -> new Note.Length(100, 10));
    assertThrows(
        IllegalArgumentException.class, () -> Note.of(Kind.AIR, List.of(1.0, Double.NaN, 2.0)));
  }

  @Test
  void readingsOfATrialGoToMaterialAndPrinter() {
    Note n = Note.ofSize(List.of(new Note.Length(98, 97)));
    List<Reading> r =
        new Readings(PLAIN, "job-1", "2026-01-02").of(List.of(n, Note.of(Kind.KEYS_TIGHT, null)));
    assertEquals(2, r.size());
    assertEquals(100, r.get(0).drawnMm(), 1e-9);
    assertEquals("mine", r.get(0).printer());
    assertEquals(Reading.Fit.TIGHT, r.get(1).fit());
    assertEquals(0.3, r.get(1).drawnMm());
  }
}
