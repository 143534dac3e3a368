package org.castwright.material;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonProperty;

/**
 * A value with its range and where it comes from.
 *
 * @param low least
 * @param high most
 * @param usual to compute with: as stated, else the middle of the range
 * @param source never blank
 */
public record Figure(double low, double high, double usual, String source) {

  /**
   * @throws IllegalArgumentException if the usual value is outside the range or there is no source
   */
  public Figure {
    if (!(low <= usual && usual <= high)) {
      throw new IllegalArgumentException("a usual value lies between low and high");
    }
    if (source == null || source.isBlank()) {
      throw new IllegalArgumentException("a value needs a source, or the words that it has none");
    }
  }

  /** As tables state it. */
  @JsonCreator
  static Figure read(
      @JsonProperty(value = "low", required = true) double low,
      @JsonProperty(value = "high", required = true) double high,
      @JsonProperty("usual") Double usual,
      @JsonProperty("source") String source) {
    return new Figure(low, high, usual == null ? (low + high) / 2 : usual, source);
  }
}
