package org.castwright.plan;

import java.util.List;
import org.castwright.mesh.TriMesh;

/**
 * Something cut from the outside of the mold: grooves, bolt holes, clamp seats, pry slots, marks,
 * the corners round an outline.
 *
 * @param name for the report
 * @param kind what it is
 * @param piece 1 or 2, or 0 for both
 * @param tools closed meshes to take away, mold frame
 */
public record Feature(String name, Kind kind, int piece, List<TriMesh> tools) {

  /** What a feature is for. */
  public enum Kind {
    BAND_GROOVE,
    BOLT_HOLE,
    CLAMP_SEAT,
    PRY_SLOT,
    MARK,
    OUTLINE
  }
}
