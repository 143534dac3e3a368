package org.castwright.plan;

/** Which end of the casting the gate joins. */
public enum GateEnd {
  /** The highest place: a short gate, and the liquid falls through the cavity. */
  TOP,
  /** The lowest: a sprue goes down beside the casting, and the level rises quietly to a riser. */
  BOTTOM,
  /** As the material table advises. */
  AUTO
}
