package org.castwright.stretch;

/**
 * How to measure.
 *
 * @param across columns along the longer side of the casting, seen along a pull
 * @param layers cross-sections along a pull
 * @param releaseMm places that must give way by less than this, mm, count as free
 * @param safetyFactor the material's demold strain is divided by it
 */
public record StretchOptions(int across, int layers, double releaseMm, double safetyFactor) {

  /**
   * A 300th of the casting's size resolves a bead of a tenth of it to some percent of strain; 64
   * layers do the same along the pull; 0.05 mm is the usual release tolerance; a factor of two on
   * strains that are themselves for repeated demolding is common practice, no source.
   */
  public static final StretchOptions DEFAULT = new StretchOptions(300, 64, 0.05, 2);

  /** Checks ranges; the message says what is allowed. */
  public StretchOptions {
    if (across < 8 || layers < 2) {
      throw new IllegalArgumentException("measuring needs at least 8 columns and 2 layers");
    }
    if (!(releaseMm >= 0 && safetyFactor >= 1)) {
      throw new IllegalArgumentException(
          "the release must not be below 0 mm nor the safety factor below 1");
    }
  }
}
