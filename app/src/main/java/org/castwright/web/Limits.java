package org.castwright.web;

/**
 * What a request may bring.
 *
 * @param modelBytes longest model file
 * @param jsonBytes longest order
 * @param waiting most jobs that may wait in line
 */
public record Limits(long modelBytes, long jsonBytes, int waiting) {

  /**
   * A gigabyte is a scan of twenty million triangles as STL; a megabyte of order has room for
   * wishes that paint a hundred thousand facets.
   */
  public static final Limits DEFAULT = new Limits(1L << 30, 1 << 20, 20);
}
