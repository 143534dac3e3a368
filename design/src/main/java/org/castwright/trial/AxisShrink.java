package org.castwright.trial;

import static org.castwright.trial.Reasoner.say;

import java.util.ArrayList;
import java.util.List;

/**
 * Shrink along the model's axes, from lengths that say along which they lie. Axes differ when the
 * 95 % intervals of their shrinks have no value in common.
 */
final class AxisShrink {

  private final LengthFit[] fits = new LengthFit[Note.AXES.size()];

  /**
   * @param lengths of a trial; those without an axis tell nothing here
   * @param readings that give each its length in the cavity
   */
  AxisShrink(List<Note.Length> lengths, Readings readings) {
    for (int k = 0; k < fits.length; k++) {
      String axis = Note.AXES.get(k);
      List<LengthFit.Pair> pairs =
          lengths.stream()
              .filter(l -> axis.equals(l.axis()))
              .map(l -> new LengthFit.Pair(readings.drawnMm(l), l.gotMm()))
              .toList();
      fits[k] = pairs.isEmpty() ? null : LengthFit.of(pairs);
    }
  }

  /** Whether two axes shrink differently, beyond their spreads. */
  boolean differ() {
    for (int i = 0; i < fits.length; i++) {
      for (int j = 0; j < i; j++) {
        if (spread(i)
            && spread(j)
            && Math.abs(fits[i].percent() - fits[j].percent())
                > fits[i].spreadPercent() + fits[j].spreadPercent()) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether an axis shrinks otherwise than was allowed for, beyond its spread. */
  boolean off(List<Double> allowed) {
    for (int k = 0; k < fits.length; k++) {
      if (spread(k) && Math.abs(fits[k].percent() - allowed.get(k)) > fits[k].spreadPercent()) {
        return true;
      }
    }
    return false;
  }

  private boolean spread(int k) {
    return fits[k] != null && fits[k].spreadPercent() != null;
  }

  /** Shrink along each axis, percent; where fewer than two lengths lie, that of all. */
  List<Double> percents(LengthFit all) {
    List<Double> out = new ArrayList<>();
    for (int k = 0; k < fits.length; k++) {
      out.add(Calibration.rounded(spread(k) ? fits[k].percent() : all.percent()));
    }
    return out;
  }

  /** What the axes tell, a sentence that begins with a space; empty when none was told. */
  String words() {
    List<String> each = new ArrayList<>();
    boolean single = false;
    for (int k = 0; k < fits.length; k++) {
      if (fits[k] != null) {
        single |= !spread(k);
        String spread = spread(k) ? say(" ± %.2f", fits[k].spreadPercent()) : "";
        each.add(say("%.2f%s %% along %s", fits[k].percent(), spread, Note.AXES.get(k)));
      }
    }
    if (each.isEmpty()) {
      return "";
    }
    String all = " By axes of the model: " + String.join(", ", each) + ".";
    if (differ()) {
      return all + " They differ by more than their spread.";
    }
    return all
        + (single
            ? " Two lengths along an axis would tell its spread."
            : each.size() > 1 ? " They do not differ beyond their spread." : "");
  }
}
