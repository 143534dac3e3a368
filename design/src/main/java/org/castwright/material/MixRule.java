package org.castwright.material;

import java.util.List;

/**
 * How a material is mixed.
 *
 * @param words for people
 * @param source where it comes from
 * @param parts by weight, empty when suppliers differ: then only the user's own ratio will do
 */
public record MixRule(String words, String source, List<Part> parts) {

  /**
   * A component.
   *
   * @param share parts by weight
   * @param kgPerM3 density
   */
  public record Part(String name, double share, double kgPerM3) {}
}
