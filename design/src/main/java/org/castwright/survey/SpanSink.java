package org.castwright.survey;

/** Takes the runs of columns that a triangle covers in one row of a raster. */
public interface SpanSink {

  /**
   * Columns {@code from} to {@code to - 1} of row {@code row} pass through triangle {@code facet}.
   * The height in column {@code k} is {@code z + (k - x) * slope}.
   *
   * @param up true when the triangle faces up in this row
   */
  void span(int facet, int row, int from, int to, double x, double z, double slope, boolean up);
}
