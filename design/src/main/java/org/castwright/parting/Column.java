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
}
