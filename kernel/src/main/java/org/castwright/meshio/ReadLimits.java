package org.castwright.meshio;

/**
 * How much a file may ask for before it is refused.
 *
 * @param maxBytes most bytes of a file, counted after unpacking gzip or zip
 * @param maxTriangles most triangles, counted after every copy a 3MF file asks for is placed
 */
public record ReadLimits(long maxBytes, int maxTriangles) {

  /**
   * One gibibyte and twenty million triangles: a binary STL at the one limit is at the other too,
   * and it is some ten times the largest scans that people print.
   */
  public static final ReadLimits DEFAULT = new ReadLimits(1L << 30, 20_000_000);

  /** A Java array holds no more bytes than this on common machines. */
  private static final long LARGEST_ARRAY = Integer.MAX_VALUE - 8;

  public ReadLimits {
    if (maxBytes < 1 || maxBytes > LARGEST_ARRAY || maxTriangles < 1) {
      throw new IllegalArgumentException("limits must be above zero, bytes under 2 GiB");
    }
  }
}
