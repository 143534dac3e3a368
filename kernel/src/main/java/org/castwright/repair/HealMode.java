package org.castwright.repair;

/** How far a model may be changed to make it a closed body. */
public enum HealMode {
  /** Change nothing: a model that is not a closed body as it stands is refused. */
  NONE,
  /** Mend the triangles that are there; most of the surface keeps its own vertices. */
  STANDARD,
  /**
   * As {@link #STANDARD}; where that leaves a fault, including a surface that passes through
   * itself, rebuild the whole surface on a grid.
   */
  REMESH
}
