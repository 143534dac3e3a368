package org.castwright.side;

/** Counts of points that pulls free. */
final class Freed {

  private Freed() {}

  /** How many of the points not done are freed. */
  static int count(boolean[] freed, boolean[] done) {
    int n = 0;
    for (int i = 0; i < freed.length; i++) {
      n += freed[i] && !done[i] ? 1 : 0;
    }
    return n;
  }

  /** Of the first pulls the one that frees most of the points not done; -1 when none frees any. */
  static int best(boolean[][] freed, boolean[] done, int among) {
    int best = -1;
    int most = 0;
    for (int k = 0; k < among; k++) {
      int n = count(freed[k], done);
      if (n > most) {
        most = n;
        best = k;
      }
    }
    return best;
  }
}
