package org.castwright.trial;

import java.util.List;

/**
 * A change of one option.
 *
 * @param option which
 * @param from value in force, for people
 * @param to value to take, for people
 * @param number the new value where it is one, else null
 * @param words the new value where it is a choice, else null
 * @param place the new value where it is a place (mold frame), a direction or one number for each
 *     axis (model's frame)
 */
public record Change(
    Option option, String from, String to, Double number, String words, List<Double> place) {

  /** Options that an answer may change. */
  public enum Option {
    VENT_AT("a vent"),
    VENT_MM("bore of vents"),
    GATE_MM("bore of the gate"),
    CLEARANCE_MM("gap of the keys"),
    SHRINK_PERCENT("shrink"),
    CLOSING("held together by"),
    WALL_MM("wall"),
    PIECES("pieces, at most"),
    RELEASE_MM("catch that counts as free"),
    PULL("pull of piece 1"),
    ALLOW_CAUGHT("allow caught places");

    private final String words;

    Option(String words) {
      this.words = words;
    }

    /** For people. */
    public String words() {
      return words;
    }
  }

  static Change number(Option o, double from, double to, String format) {
    return new Change(o, say(format, from), say(format, to), to, null, null);
  }

  /** Shrink along the model's axes, percent. */
  static Change shrinks(List<Double> from, List<Double> to) {
    String format = "%.3f, %.3f, %.3f %%";
    return new Change(
        Option.SHRINK_PERCENT,
        say(format, from.toArray(Object[]::new)),
        say(format, to.toArray(Object[]::new)),
        null,
        null,
        to);
  }

  static Change choice(Option o, String from, String to) {
    return new Change(o, from, to, null, to, null);
  }

  static Change place(Option o, String from, List<Double> to) {
    return new Change(
        o, from, say("(%.1f, %.1f, %.1f)", to.toArray(Object[]::new)), null, null, to);
  }

  private static String say(String format, Object... values) {
    return String.format(java.util.Locale.ROOT, format, values);
  }
}
