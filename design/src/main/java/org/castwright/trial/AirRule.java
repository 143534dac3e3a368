package org.castwright.trial;

import static org.castwright.trial.Reasoner.distance;
import static org.castwright.trial.Reasoner.say;

import java.util.ArrayList;
import java.util.List;

/**
 * What to do about trapped air: air rises along the cavity to a top, and needs a way out there that
 * the material does not take.
 */
final class AirRule {

  private static final String UPWARD =
      "air leaves a filling cavity only upward: Bose and Toussaint, CAD 27(6), 1995";

  /** A vent this near to trapped air is the one that should have let it out, mm. */
  private static final double NEAR = 6;

  /** A vent this near to the gate is the one beside it, mm. */
  private static final double BESIDE_GATE = 25;

  /** A surface that looks up more than this is a floor, from which air rises, degrees. */
  private static final double FLOOR_DEG = -5;

  private final Facts facts;

  AirRule(Facts facts) {
    this.facts = facts;
  }

  Answer answer(int i, Note n) {
    Facts.AirAt way = facts.air().stream().filter(a -> a.note() == i).findFirst().orElse(null);
    List<String> advice = new ArrayList<>();
    advice.add("Tap and tilt the mold while filling; pour in a thin stream, slowly at the end.");
    if (way != null && way.roofDeg() < FLOOR_DEG) {
      advice.add("Let the material stand or draw its air out before the pour, as its maker says.");
      return new Answer(
          i,
          List.of(),
          "The cavity looks up there, so air leaves it through the material: what stayed came in"
              + " with the pour, and no vent helps.",
          advice,
          UPWARD);
    }
    List<Double> to = way == null ? n.at() : way.peak();
    boolean foreseen = facts.pockets().stream().anyMatch(p -> distance(p, to) <= NEAR);
    String rises =
        (distance(to, n.at()) > NEAR
                ? say("Air there rises to (%.1f, %.1f, %.1f). ", to.get(0), to.get(1), to.get(2))
                : "")
            + (foreseen ? "The filling, worked out, shuts air in there, too. " : "");
    return wayOut(i, to, rises, advice);
  }

  private Answer wayOut(int i, List<Double> to, String rises, List<String> advice) {
    int nearest = nearest(0, to);
    int vent = nearest(1, to);
    boolean atGate = nearest == 0 && distance(facts.channels().get(0), to) <= NEAR;
    double toVent = vent < 0 ? Double.POSITIVE_INFINITY : distance(facts.channels().get(vent), to);
    if (toVent <= (atGate ? BESIDE_GATE : NEAR)) {
      advice.add("Look whether that vent was blocked: a print can close a thin bore.");
      String few = say("A vent begins %.1f mm from there but did not pass enough air.", toVent);
      return new Answer(i, List.of(wider()), rises + few, advice, Reasoner.ROUND_PIPE);
    }
    String out =
        atGate
            ? "The gate is next to it, and full of material while the air should leave."
            : nearest < 0
                ? "The mold has no way out."
                : say(
                    "The nearest way out is %.0f mm away.",
                    distance(facts.channels().get(nearest), to));
    advice.add(
        (facts.divided()
                ? "The vent is made at the nearest place from which it can run straight up;"
                : "The vent is made where the seam comes nearest;")
            + " the sheet says if that is far.");
    return new Answer(
        i,
        List.of(Change.place(Change.Option.VENT_AT, "none there", to)),
        rises + out + " A vent there lets the air out.",
        advice,
        UPWARD);
  }

  /** Index of the channel nearest to a place, from the one given on; -1 if there is none. */
  private int nearest(int from, List<Double> to) {
    int best = -1;
    for (int k = from; k < facts.channels().size(); k++) {
      if (best < 0
          || distance(facts.channels().get(k), to) < distance(facts.channels().get(best), to)) {
        best = k;
      }
    }
    return best;
  }

  private Change wider() {
    double to = Calibration.rounded(Math.min(20, facts.ventMm() * Reasoner.TWICE_FLOW));
    return Change.number(Change.Option.VENT_MM, facts.ventMm(), to, "%.2f mm");
  }
}
