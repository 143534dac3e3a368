package org.castwright.plan;

/** How the closed mold is held together. */
public enum Closing {
  /** Grooves round the block for rubber bands or straps. */
  BANDS,
  /** Clear holes along the pull for bolts. */
  BOLTS,
  /** Shallow seats on the outer faces for clamp pads. */
  CLAMPS,
  /** Nothing. */
  NONE
}
