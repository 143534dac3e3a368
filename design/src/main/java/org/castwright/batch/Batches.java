package org.castwright.batch;

/**
 * How a number of castings is made with a number of molds.
 *
 * @param castings wanted
 * @param molds at hand
 * @param perBatch castings that one mix fills
 * @param batches mixes to make
 * @param rounds times that all molds are filled
 * @param minutes until the last casting leaves its mold
 */
public record Batches(
    int castings, int molds, int perBatch, int batches, int rounds, double minutes) {

  /**
   * Divides the work. A mix must be poured within its pot life less a reserve, one casting after
   * the other; a mold is free again when its casting has come out.
   *
   * @param fillMin to fill one mold, minutes
   * @param potLifeMin minutes; infinite for a melt that is kept warm
   * @param demoldMin from the pour to the free mold, minutes
   * @throws IllegalArgumentException if one casting takes longer to fill than the pot life
   */
  public static Batches of(
      int castings, int molds, double fillMin, double potLifeMin, double demoldMin) {
    if (castings < 1 || molds < 1) {
      throw new IllegalArgumentException("at least one casting and one mold");
    }
    if (!(fillMin > 0) || !(demoldMin >= 0)) {
      throw new IllegalArgumentException("filling takes time, and so does setting");
    }
    if (fillMin > potLifeMin) {
      throw new IllegalArgumentException("one mold takes longer to fill than the mix stays liquid");
    }
    double fit = Math.floor(potLifeMin / fillMin);
    int perBatch = (int) Math.min(fit, Math.min(molds, castings));
    int rounds = (castings + molds - 1) / molds;
    int batches = 0;
    double minutes = 0;
    for (int left = castings; left > 0; left -= molds) {
      int now = Math.min(left, molds);
      batches += (now + perBatch - 1) / perBatch;
      minutes += now * fillMin + demoldMin;
    }
    return new Batches(castings, molds, perBatch, batches, rounds, minutes);
  }
}
