package org.castwright.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Answers notes. Each rule names its ground: a law of flow or bending where there is one, else the
 * trade's habit.
 */
public final class Reasoner {

  private static final String HABIT = "common practice, no source";
  static final String ROUND_PIPE =
      "Hagen-Poiseuille: flow through a round bore grows with its fourth power";
  static final String PLATE = "plate stiffness grows with the third power of its thickness";

  private static final String STUDENT = "least squares through the origin; spread by Student's t";

  /** More is a slip, percent. */
  private static final double MOST_SHRINK = 20;

  private static final String FINAL_SIZE =
      "Measure when the casting has its final size: days after, for what dries or cures.";

  /** A catch this near to the place that stuck is its cause, mm, or as a share of the casting. */
  private static final double CATCH_NEAR = 5;

  private static final double CATCH_SHARE = 0.08;

  /** Below this draft faces scrape along the whole draw, degrees; common practice, no source. */
  private static final double LITTLE_DRAFT = 2;

  /** Another pull must give so much more draft to be worth a new seam, degrees. */
  private static final double WORTH = 2;

  /** Twice the flow by a bore so much wider: 2^(1/4). */
  static final double TWICE_FLOW = 1.19;

  /** Twice the stiffness by a wall so much thicker: 2^(1/3). */
  static final double TWICE_STIFF = 1.26;

  private static final double LEAST_RELEASE = 0.02;
  private static final int MOST_PIECES = 8;

  private final List<Note> notes;
  private final Facts facts;
  private final Calibration own;

  private Reasoner(List<Note> notes, Facts facts, Calibration own) {
    this.notes = notes;
    this.facts = facts;
    this.own = own;
  }

  /**
   * One answer to each note.
   *
   * @param own readings before this trial
   */
  public static List<Answer> answer(List<Note> notes, Facts facts, Calibration own) {
    Reasoner r = new Reasoner(notes, facts, own);
    List<Answer> out = new ArrayList<>();
    for (int i = 0; i < notes.size(); i++) {
      out.add(r.answer(i));
    }
    return out;
  }

  private Answer answer(int i) {
    Note n = notes.get(i);
    return switch (n.kind()) {
      case AIR -> new AirRule(facts).answer(i, n);
      case SHORT -> shortFill(i);
      case FLASH -> flash(i);
      case STUCK -> stuck(i, n);
      case SIZE -> size(i, n);
      case KEYS_TIGHT -> keys(i, Reading.Fit.TIGHT);
      case KEYS_LOOSE -> keys(i, Reading.Fit.LOOSE);
      case SOFT -> new SoftRule(facts).answer(i);
      case GOOD ->
          new Answer(
              i,
              List.of(),
              "It went well: shrink and gap are kept as good for this material and printer.",
              List.of(),
              HABIT);
    };
  }

  private Answer shortFill(int i) {
    double to = Calibration.rounded(Math.min(50, facts.gateMm() * TWICE_FLOW));
    List<String> advice = new ArrayList<>();
    if (!facts.pourC().isEmpty()) {
      advice.add(
          say(
              "Pour at the upper end of %.0f to %.0f °C, and keep the gate full to its mouth.",
              facts.pourC().get(0), facts.pourC().get(facts.pourC().size() - 1)));
    } else {
      advice.add("Keep the gate full to its mouth until the vents show material.");
    }
    return new Answer(
        i,
        List.of(Change.number(Change.Option.GATE_MM, facts.gateMm(), to, "%.2f mm")),
        "The material set before the cavity was full. A gate a fifth wider lets twice as much"
            + " through.",
        advice,
        ROUND_PIPE);
  }

  private Answer flash(int i) {
    List<String> advice =
        List.of("Flatten the shut-off faces on a plate with fine paper, and clean them of drops.");
    if (notes.stream().anyMatch(o -> o.kind() == Note.Kind.KEYS_TIGHT)) {
      return new Answer(
          i,
          List.of(),
          "Keys that are too tight hold the seam open: settle that first and look again.",
          advice,
          HABIT);
    }
    if (facts.wallNeededMm() != null && facts.wallNeededMm() > facts.wallMm()) {
      double to = Math.ceil(2 * facts.wallNeededMm()) / 2;
      return new Answer(
          i,
          List.of(wall(Math.min(100, to))),
          say(
              "The wall gives way under the pressure of the pour: %.1f mm would do, it is %.1f mm.",
              facts.wallNeededMm(), facts.wallMm()),
          advice,
          PLATE);
    }
    String force =
        facts.closingN() == null
            ? ""
            : say(" The pour asks for %.1f N to hold the pieces together.", facts.closingN());
    if (facts.closing().equals("none") || facts.closing().equals("bands")) {
      String to = facts.closing().equals("none") ? "bands" : "bolts";
      return new Answer(
          i,
          List.of(Change.choice(Change.Option.CLOSING, facts.closing(), to)),
          (to.equals("bolts") ? "Bands stretch where bolts do not." : "Nothing holds it together.")
              + force,
          advice,
          HABIT);
    }
    return new Answer(
        i,
        List.of(wall(Math.min(100, Math.ceil(2 * facts.wallMm() * TWICE_STIFF) / 2))),
        "Held well, it still opens along the seam: a wall a quarter thicker bends half as much."
            + force,
        advice,
        PLATE);
  }

  private Change wall(double to) {
    return Change.number(Change.Option.WALL_MM, facts.wallMm(), to, "%.1f mm");
  }

  private Answer stuck(int i, Note n) {
    List<String> advice = new ArrayList<>();
    if (facts.releaseAgent() != null) {
      advice.add("Release: " + facts.releaseAgent());
    }
    advice.add("Smooth or coat the cavity there: layer lines grip like an undercut.");
    double reach = Math.max(CATCH_NEAR, CATCH_SHARE * facts.longestMm());
    for (Facts.CaughtSpot c : facts.caught()) {
      if (distance(c.center(), n.at()) <= reach) {
        return caught(i, c, advice);
      }
    }
    for (Facts.DraftAt d : facts.pulls()) {
      if (d.note() == i && d.draftDeg() < LITTLE_DRAFT) {
        return littleDraft(i, d, advice);
      }
    }
    List<Change> changes = new ArrayList<>();
    if (facts.releaseMm() > LEAST_RELEASE) {
      changes.add(stricter());
    }
    return new Answer(
        i,
        changes,
        changes.isEmpty()
            ? "There is draft, and nothing is caught there: it is the surface that holds."
            : say(
                "There is draft, and no catch wider than the %.2f mm that count as free; a stricter"
                    + " look finds a smaller one, if there is any.",
                facts.releaseMm()),
        advice,
        HABIT);
  }

  private Change stricter() {
    double to = Calibration.rounded(Math.max(LEAST_RELEASE, facts.releaseMm() / 2));
    return Change.number(Change.Option.RELEASE_MM, facts.releaseMm(), to, "%.3f mm");
  }

  private Answer caught(int i, Facts.CaughtSpot c, List<String> advice) {
    List<Change> changes = new ArrayList<>();
    if (facts.pieces() < MOST_PIECES) {
      changes.add(
          Change.number(Change.Option.PIECES, facts.pieces(), facts.pieces() + 1.0, "%.0f"));
    }
    if (facts.allowedCaught()) {
      changes.add(Change.choice(Change.Option.ALLOW_CAUGHT, "yes", "no"));
    }
    return new Answer(
        i,
        changes,
        say(
            "The casting is caught there, %.2f mm deep and %.2f mm wide: a further piece takes what"
                + " two hold.",
            c.depthMm(), c.widthMm()),
        advice,
        HABIT);
  }

  private Answer littleDraft(int i, Facts.DraftAt d, List<String> advice) {
    String has = say("The faces there have %.1f° of draft along the pull", d.draftDeg());
    if (d.better() != null && d.betterDeg() >= d.draftDeg() + WORTH) {
      return new Answer(
          i,
          List.of(Change.place(Change.Option.PULL, "the present one", d.better())),
          has + say("; another pull opens the model as well and gives %.1f°.", d.betterDeg()),
          advice,
          HABIT);
    }
    advice.add(0, say("Give the model %.0f° of draft there, if it may have it.", LITTLE_DRAFT));
    return new Answer(
        i,
        List.of(),
        has + ", and no other pull that opens the model gives much more: only the model can.",
        advice,
        HABIT);
  }

  private Answer size(int i, Note n) {
    Readings readings = new Readings(facts, "", "");
    List<Reading> now = readings.ofLengths(n.lengths());
    LengthFit fit = own.with(now).of(facts.material(), printer(), facts.process()).cast();
    String spread =
        fit.spreadPercent() == null
            ? "one length tells no spread: measure more"
            : say("± %.2f with 95 %% certainty", fit.spreadPercent());
    int earlier = fit.lengths() - now.size();
    String because =
        say(
            "Least squares over %d length(s)%s: the casting ends %.2f %% smaller than the cavity"
                + " (%s); %.2f %% were allowed for. The worst length is off by %.2f mm.",
            fit.lengths(),
            earlier > 0 ? say(", %d of them of earlier casts", earlier) : "",
            fit.percent(),
            spread,
            facts.shrinkPercent(),
            fit.worstMm());
    boolean sure =
        fit.spreadPercent() == null
            || Math.abs(fit.percent() - facts.shrinkPercent()) > fit.spreadPercent();
    AxisShrink axes = new AxisShrink(n.lengths(), readings);
    if (axes.differ()) {
      List<Double> each = axes.percents(fit);
      boolean off = axes.off(facts.shrinkByAxis());
      boolean useful = off && each.stream().allMatch(p -> Math.abs(p) <= MOST_SHRINK);
      return new Answer(
          i,
          useful ? List.of(Change.shrinks(facts.shrinkByAxis(), each)) : List.of(),
          because
              + axes.words()
              + (useful ? " Each gets its own." : off ? "" : " That is what was allowed for."),
          List.of(FINAL_SIZE),
          STUDENT);
    }
    because += axes.words();
    List<Change> changes =
        Math.abs(fit.percent()) > MOST_SHRINK
            ? List.of()
            : List.of(
                Change.number(
                    Change.Option.SHRINK_PERCENT,
                    facts.shrinkPercent(),
                    Calibration.rounded(fit.percent()),
                    "%.3f %%"));
    return new Answer(
        i,
        sure ? changes : List.of(),
        sure ? because : because + " The difference is within the spread: nothing to change.",
        List.of(FINAL_SIZE),
        STUDENT);
  }

  private Answer keys(int i, Reading.Fit fit) {
    double c = facts.clearanceMm();
    List<Reading> now = List.of(new Readings(facts, "", "").ofKeys(fit));
    Double known = own.with(now).of(facts.material(), printer(), facts.process()).clearanceMm();
    boolean tight = fit == Reading.Fit.TIGHT;
    double step = tight ? c + Calibration.STEP_MM : c - Calibration.STEP_MM;
    boolean useful = known != null && (tight ? known > c : known < c);
    double to = Calibration.rounded(Math.min(2, Math.max(0.05, useful ? known : step)));
    List<Change> changes =
        to == c ? List.of() : List.of(Change.number(Change.Option.CLEARANCE_MM, c, to, "%.2f mm"));
    boolean ladder = useful && Math.abs(known - step) > 1e-9;
    return new Answer(
        i,
        changes,
        ladder
            ? "Your own readings of this printer say which gap fits."
            : say(
                "A step of %.2f mm is about what a printer repeats; a fit coupon finds the gap at"
                    + " once.",
                Calibration.STEP_MM),
        List.of(
            tight
                ? "Look for strings and a thick first layer at the keys before printing again."
                : "Hold the pieces by their outside meanwhile."),
        HABIT);
  }

  private String printer() {
    return facts.printer().isEmpty() ? Readings.NO_PRINTER : facts.printer();
  }

  static double distance(List<Double> a, List<Double> b) {
    return Math.hypot(Math.hypot(a.get(0) - b.get(0), a.get(1) - b.get(1)), a.get(2) - b.get(2));
  }

  static String say(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
