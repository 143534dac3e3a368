package org.castwright.trial;

import static org.castwright.trial.Reasoner.say;

import java.util.ArrayList;
import java.util.List;

/**
 * What to do about a print that softened, by how warm the report reckons its inner wall: the face
 * between two bodies takes a fixed share of the fall from one to the other (Carslaw and Jaeger,
 * Conduction of Heat in Solids, 2nd ed., 2.15), so a cooler pour warms it less in proportion.
 */
final class SoftRule {

  private static final String FACE =
      "a wall's face takes a share of the fall from pour to mold: Carslaw and Jaeger 2.15";

  private final Facts facts;
  private final Facts.Wall wall;

  SoftRule(Facts facts) {
    this.facts = facts;
    this.wall = facts.wall();
  }

  Answer answer(int i) {
    List<String> advice = new ArrayList<>();
    if (!facts.pourC().isEmpty()) {
      advice.add(say("Pour at the lower end of what is usual, %.0f °C.", facts.pourC().get(0)));
    }
    advice.add("Fill in two or three pours, or cool the mold from outside; open it cold.");
    if (wall == null || wall.peakC() > wall.limitC()) {
      advice.add(firmer());
    }
    double to = Math.min(100, Math.ceil(2 * facts.wallMm() * Reasoner.TWICE_STIFF) / 2);
    Change thicker = Change.number(Change.Option.WALL_MM, facts.wallMm(), to, "%.1f mm");
    if (wall == null) {
      return new Answer(
          i,
          List.of(thicker),
          "The report does not know how warm the wall gets. " + stiffer(),
          advice,
          Reasoner.PLATE);
    }
    if (wall.peakC() <= wall.limitC()) {
      return new Answer(
          i,
          List.of(thicker),
          say(
                  "By the report the mold's inner wall comes to %.0f °C, %.0f °C below where %s begins"
                      + " to soften (%s, %.0f °C): measure the pour, and look whether the mold stood"
                      + " warm. ",
                  wall.peakC(),
                  wall.limitC() - wall.peakC(),
                  wall.of(),
                  wall.limit(),
                  wall.limitC())
              + stiffer(),
          advice,
          Reasoner.PLATE);
    }
    String over =
        say(
            "By the report the mold's inner wall comes to %.0f °C, %.0f °C above where %s begins to"
                + " soften (%s, %.0f to %.0f °C). ",
            wall.peakC(),
            wall.peakC() - wall.limitC(),
            wall.of(),
            wall.limit(),
            wall.limitC(),
            wall.limitToC());
    Double cooler = coolerC();
    String least =
        cooler == null
            ? ""
            : say(
                "Poured at %.0f °C it would come to about %.0f °C, %s. ",
                facts.pourC().get(0),
                cooler,
                cooler <= wall.limitC() ? "which it stands" : "still too warm");
    boolean stands = cooler != null && cooler <= wall.limitC();
    if (wall.peakC() > wall.limitToC() && !stands) {
      return new Answer(
          i,
          List.of(),
          over
              + least
              + "A thicker wall does not stay cooler at its face: another plastic does it.",
          advice,
          FACE);
    }
    return new Answer(i, List.of(thicker), over + least + stiffer(), advice, Reasoner.PLATE);
  }

  /** The wall's peak with the coolest usual pour, °C; null when that is not known or no cooler. */
  private Double coolerC() {
    if (wall.pourC() == null || facts.pourC().isEmpty() || facts.pourC().get(0) >= wall.pourC()) {
      return null;
    }
    double share = (wall.peakC() - wall.airC()) / (wall.pourC() - wall.airC());
    return wall.airC() + share * (facts.pourC().get(0) - wall.airC());
  }

  private String firmer() {
    if (wall == null) {
      return "Print it of a plastic that stays hard at the pour's heat, as its maker states.";
    }
    return wall.firmer().isEmpty()
        ? "No printed plastic of the table stands that: cast a silicone or plaster mold from a print."
        : "Firm at that heat by the table: " + String.join(", ", wall.firmer()) + ".";
  }

  private static String stiffer() {
    return "A softened wall bends: one a quarter thicker is twice as stiff and takes longer to warm"
        + " through. It does not stay cooler at its face.";
  }
}
