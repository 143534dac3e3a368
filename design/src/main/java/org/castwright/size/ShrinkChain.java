package org.castwright.size;

import java.util.List;

/**
 * Shrinks one after the other along one axis: the print of the mold, the mold itself if it is cast,
 * the casting. A length {@code x} ends as {@code x·Π(1−s)}; to end right it starts {@code 1/Π(1−s)}
 * times as long.
 */
public record ShrinkChain(List<Shrink> steps) {

  public ShrinkChain {
    steps = List.copyOf(steps);
  }

  public static ShrinkChain of(Shrink... steps) {
    return new ShrinkChain(List.of(steps));
  }

  /** What to multiply the wanted size by. */
  public double scale() {
    return 1 / share(Which.USUAL);
  }

  /** The shrink of the whole chain, percent. */
  public double percent() {
    return 100 * (1 - share(Which.USUAL));
  }

  /** What a length in the first step ends as. */
  public Band ends(double startMm) {
    return new Band(
        startMm * share(Which.USUAL), startMm * share(Which.HIGH), startMm * share(Which.LOW));
  }

  /**
   * A size with its bounds, mm.
   *
   * @param mm expected
   * @param lowMm every step shrinks most
   * @param highMm every step shrinks least
   */
  public record Band(double mm, double lowMm, double highMm) {}

  private enum Which {
    USUAL,
    LOW,
    HIGH
  }

  private double share(Which which) {
    double share = 1;
    for (Shrink s : steps) {
      double percent =
          which == Which.USUAL
              ? s.percent()
              : which == Which.LOW ? s.lowPercent() : s.highPercent();
      share *= 1 - percent / 100;
    }
    return share;
  }
}
