package org.castwright.parting;

/** What a vertical line meets of a mesh; scratch space filled by {@link Columns#at}. */
final class Column {
  /** The lowest crossing, mm; meaningless without hits. */
  double lower;

  /** The highest crossing, mm; meaningless without hits. */
  double upper;

  /** How many facets the line crosses. */
  int hits;

  /** The facet of the highest crossing. */
  int upperFacet;

  /** Heights of all crossings, {@link #hits} of them, if the columns keep them. */
  double[] heights = new double[0];

  /** Whether each crossing is of a facet that looks up. */
  boolean[] up = new boolean[0];
}
