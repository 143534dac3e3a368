package org.castwright.plan;

/** The form of the keys that bring the pieces into register. */
public enum KeyShape {
  /** A cone frustum, 15° a side. */
  CONE,
  /** A dome: a cap of a sphere a little less than half. */
  DOME
}
