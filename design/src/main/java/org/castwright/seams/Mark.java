package org.castwright.seams;

/** What the user wishes for a region of the surface. */
public enum Mark {
  /** No seam may run here. */
  NO_SEAM,
  /** A seam does no harm here: the side nobody sees. */
  HIDE,
  /** A seam is dear here: the side people look at. */
  SHOW,
  /** One piece should form the whole region. */
  PIECE
}
