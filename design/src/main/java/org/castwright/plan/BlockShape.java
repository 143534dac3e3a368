package org.castwright.plan;

/** The outside of the mold, seen along the pull. */
public enum BlockShape {
  /** A rectangle. */
  BOX,
  /** A rectangle with rounded corners. */
  ROUNDED,
  /** The outline of the casting at wall distance, with a straight foot to stand on. */
  CONTOUR
}
