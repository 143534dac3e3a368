package org.castwright.plan;

/** The position in which the closed mold is filled. */
public enum Pour {
  /** The seam stands upright; gate and vents run along the seam. */
  SEAM,
  /** The seam lies flat; gate and vents run up through piece 1 along its pull. */
  PULL
}
