package org.castwright.trial;

/**
 * One thing measured or tried by the maker.
 *
 * @param kind what
 * @param material id that was cast; empty where only the print counts
 * @param printer name of the maker's own
 * @param process fdm or resin
 * @param drawnMm length, gap or bore as drawn
 * @param gotMm length as measured, or null where there is none
 * @param fit how keys went in, or whether a bore let through; null for lengths
 * @param from job or coupon it was read from
 * @param date ISO 8601, as the maker gives it
 */
public record Reading(
    Kind kind,
    String material,
    String printer,
    String process,
    double drawnMm,
    Double gotMm,
    Fit fit,
    String from,
    String date) {

  /** What a reading is of. */
  public enum Kind {
    /** A length of a casting, against the cavity as drawn: print and casting together. */
    CAST_LENGTH(true, true),
    /** A length of a print, against the drawing. */
    PRINT_LENGTH(false, true),
    /** A key in its socket, by the gap. */
    KEY_FIT(false, false),
    /** Whether air came through a bore. */
    VENT_BORE(true, false),
    /** Whether the material ran through a bore. */
    GATE_BORE(true, false);

    private final boolean cast;
    private final boolean length;

    Kind(boolean cast, boolean length) {
      this.cast = cast;
      this.length = length;
    }

    /** Whether it depends on what was cast. */
    public boolean ofCasting() {
      return cast;
    }

    public boolean isLength() {
      return length;
    }
  }

  /** How it went. */
  public enum Fit {
    /** It does not go in, or nothing comes through. */
    NO,
    TIGHT,
    GOOD,
    LOOSE
  }

  /**
   * @throws IllegalArgumentException if something is missing or out of range
   */
  public Reading {
    if (kind == null || blank(printer) || blank(process) || (kind.ofCasting() && blank(material))) {
      throw new IllegalArgumentException(
          "a reading names its kind, its printer, the process and, if something was cast, the"
              + " material");
    }
    boolean length = kind.isLength();
    if (length ? gotMm == null || !(gotMm > 0) : fit == null) {
      throw new IllegalArgumentException(
          length ? "a length has what was measured, in mm" : "a try says how it went");
    }
    if (!(drawnMm > 0 && drawnMm <= 5000)) {
      throw new IllegalArgumentException("a reading is of something from 0 to 5000 mm");
    }
    if (length && !(Math.abs(gotMm / drawnMm - 1) <= 0.2)) {
      throw new IllegalArgumentException(
          gotMm + " mm for " + drawnMm + " mm drawn is a slip, not a shrink; measure again");
    }
    material = kind.ofCasting() ? material : "";
    from = from == null ? "" : from;
    date = date == null ? "" : date;
  }

  private static boolean blank(String s) {
    return s == null || s.isBlank();
  }
}
