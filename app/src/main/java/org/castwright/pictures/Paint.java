package org.castwright.pictures;

/** What colors the facets of an item. */
public sealed interface Paint {

  /** The color of a facet as {@code 0xRRGGBB}. */
  int rgb(int facet);

  /** True if the colors carry numbers, so that light and shade must leave them readable. */
  boolean measured();

  /** True if it can color a mesh of that many facets. */
  boolean fits(int facets);

  /** One color all over. */
  record Plain(int color) implements Paint {
    @Override
    public int rgb(int facet) {
      return color;
    }

    @Override
    public boolean measured() {
      return false;
    }

    @Override
    public boolean fits(int facets) {
      return true;
    }
  }

  /** A number for each facet, mapped through a scale; the array is not copied. */
  @SuppressWarnings("ArrayRecordComponent") // paints are read, never compared
  record Mapped(double[] values, ColorScale scale) implements Paint {
    @Override
    public int rgb(int facet) {
      return scale.rgb(values[facet]);
    }

    @Override
    public boolean measured() {
      return true;
    }

    @Override
    public boolean fits(int facets) {
      return values.length == facets;
    }
  }

  /** A color for each facet; the array is not copied. */
  @SuppressWarnings("ArrayRecordComponent") // paints are read, never compared
  record ByFacet(int[] colors) implements Paint {
    @Override
    public int rgb(int facet) {
      return colors[facet];
    }

    @Override
    public boolean measured() {
      return false;
    }

    @Override
    public boolean fits(int facets) {
      return colors.length == facets;
    }
  }
}
