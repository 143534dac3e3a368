package org.castwright.trial;

import java.util.List;

/**
 * One thing that was seen on a casting or its mold.
 *
 * @param kind what it is
 * @param at where, mold frame, mm; null where the kind has no place
 * @param lengths measured, for {@link Kind#SIZE}; empty for all others
 * @param words of the maker's own, may be empty
 */
public record Note(Kind kind, List<Double> at, List<Length> lengths, String words) {

  /** The model's axes. */
  static final List<String> AXES = List.of("x", "y", "z");

  /** What can happen. */
  public enum Kind {
    /** Air stayed in the casting. */
    AIR("trapped air"),
    /** The casting is not complete though no air was shut in. */
    SHORT("did not fill"),
    /** A fin of casting material along the seam. */
    FLASH("flash at the seam"),
    /** The casting held fast when the mold was opened. */
    STUCK("stuck"),
    /** Measured lengths differ from those wanted. */
    SIZE("wrong size"),
    /** Keys do not go in, or only with force. */
    KEYS_TIGHT("keys too tight"),
    /** Pieces shift against each other. */
    KEYS_LOOSE("keys too loose"),
    /** The print softened or bent while it was hot. */
    SOFT("soft print"),
    /** All as it should be. */
    GOOD("good");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    /** For people. */
    public String words() {
      return words;
    }

    /** Whether the note means nothing without a place. */
    public boolean needsPlace() {
      return this == AIR || this == STUCK;
    }
  }

  /**
   * A length on the casting.
   *
   * @param wantedMm as the model has it
   * @param gotMm as measured on the casting
   * @param axis of the model along which it lies, {@code x}, {@code y} or {@code z}; null when not
   *     told
   */
  public record Length(double wantedMm, double gotMm, String axis) {

    /** A length along no axis that was told. */
    public Length(double wantedMm, double gotMm) {
      this(wantedMm, gotMm, null);
    }

    /**
     * @throws IllegalArgumentException unless both are lengths and within a fifth of each other
     */
    public Length {
      if (!(wantedMm >= 1 && wantedMm <= 5000 && gotMm > 0)) {
        throw new IllegalArgumentException("a measured length goes from 1 to 5000 mm");
      }
      if (!(Math.abs(gotMm / wantedMm - 1) <= 0.2)) {
        throw new IllegalArgumentException(
            "a length of "
                + gotMm
                + " mm where "
                + wantedMm
                + " mm were wanted is no shrink but a slip; measure again");
      }
      if (axis != null && !AXES.contains(axis)) {
        throw new IllegalArgumentException("a length lies along x, y or z, not '" + axis + "'");
      }
    }
  }

  /**
   * @throws IllegalArgumentException if a place or lengths are missing or damaged
   */
  public Note {
    if (kind == null) {
      throw new IllegalArgumentException("a note says what happened");
    }
    at = at == null ? null : List.copyOf(at);
    lengths = lengths == null ? List.of() : List.copyOf(lengths);
    words = words == null ? "" : words;
    if (at != null && (at.size() != 3 || at.stream().anyMatch(v -> !Double.isFinite(v)))) {
      throw new IllegalArgumentException("a place is three numbers in mm");
    }
    if (at == null && kind.needsPlace()) {
      throw new IllegalArgumentException("'" + kind.words() + "' needs the place where");
    }
    if ((kind == Kind.SIZE) == lengths.isEmpty()) {
      throw new IllegalArgumentException(
          kind == Kind.SIZE
              ? "a wrong size needs a measured length"
              : "only a wrong size has measured lengths");
    }
  }

  /** A note without lengths. */
  public static Note of(Kind kind, List<Double> at) {
    return new Note(kind, at, List.of(), "");
  }

  /** A note of measured lengths. */
  public static Note ofSize(List<Length> lengths) {
    return new Note(Kind.SIZE, null, lengths, "");
  }
}
