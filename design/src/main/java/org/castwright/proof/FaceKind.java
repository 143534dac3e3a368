package org.castwright.proof;

/** What a facet of a piece faces in the closed mold. */
enum FaceKind {
  /** The casting. */
  CAVITY,
  /** Another piece, touching it. */
  SHUT_OFF,
  /** Cast material in a gate or vent. */
  CHANNEL,
  /** The outside, on the block's own surface. */
  OUTSIDE,
  /** Room that was cut from the outside. */
  CUT,
  /** Room that the pieces shut in: gaps round keys, empty hollows. */
  GAP
}
