package org.castwright.trial;

import java.util.ArrayList;
import java.util.List;

/**
 * What a trial adds to the calibration.
 *
 * @param facts of the mold that was cast
 * @param from its name
 * @param date of the trial
 */
public record Readings(Facts facts, String from, String date) {

  /** Stands for a printer without a name. */
  public static final String NO_PRINTER = "unnamed";

  /** All readings that the notes of a trial hold. */
  public List<Reading> of(List<Note> notes) {
    List<Reading> out = new ArrayList<>();
    for (Note n : notes) {
      switch (n.kind()) {
        case SIZE -> out.addAll(ofLengths(n.lengths()));
        case KEYS_TIGHT -> out.add(ofKeys(Reading.Fit.TIGHT));
        case KEYS_LOOSE -> out.add(ofKeys(Reading.Fit.LOOSE));
        case GOOD -> out.add(ofKeys(Reading.Fit.GOOD));
        default -> {
          // tells of this mold's shape, not of material or printer
        }
      }
    }
    return out;
  }

  /** The cavity was drawn larger than wanted by the shrink in force. */
  List<Reading> ofLengths(List<Note.Length> lengths) {
    return lengths.stream()
        .map(
            l ->
                reading(Reading.Kind.CAST_LENGTH, Calibration.rounded(drawnMm(l)), l.gotMm(), null))
        .toList();
  }

  /** The length as the cavity has it, mm. */
  double drawnMm(Note.Length l) {
    double shrink =
        l.axis() == null
            ? facts.shrinkPercent()
            : facts.shrinkByAxis().get(Note.AXES.indexOf(l.axis()));
    return l.wantedMm() / (1 - shrink / 100);
  }

  Reading ofKeys(Reading.Fit fit) {
    return reading(Reading.Kind.KEY_FIT, facts.clearanceMm(), null, fit);
  }

  private Reading reading(Reading.Kind kind, double drawn, Double got, Reading.Fit fit) {
    String printer = facts.printer().isBlank() ? NO_PRINTER : facts.printer();
    return new Reading(
        kind, facts.material(), printer, facts.process(), drawn, got, fit, from, date);
  }
}
