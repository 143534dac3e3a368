package org.castwright.heat;

/**
 * Which end of their ranges the figures take. Melts and gels are slow when they hold much heat and
 * everything round them conducts badly. Mixes are slow when the product is slow, holds its heat
 * badly and gives off little: the corner that cools them; their fast corner is also the hottest.
 */
enum Corner {
  SLOW(0),
  MIDDLE(0.5),
  FAST(1);

  private final double fast;

  Corner(double fast) {
    this.fast = fast;
  }

  /** A figure that hastens setting where it is large. */
  double hastening(Figure f) {
    return f.at(fast);
  }

  /** A figure that slows setting where it is large. */
  double slowing(Figure f) {
    return f.at(1 - fast);
  }

  /** A figure that lets heat out: hastens melts and gels, slows and cools mixes. */
  double draining(Figure f, Setting setting) {
    return setting == Setting.REACTION ? slowing(f) : hastening(f);
  }
}
