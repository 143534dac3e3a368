package org.castwright.plan;

import java.util.List;
import org.castwright.mesh.TriMesh;

/**
 * Something cut from the outside of the mold: grooves, bolt holes, clamp seats, pry slots, grips,
 * marks, the corners round an outline.
 *
 * @param name for the report
 * @param kind what it is
 * @param piece order of the piece it is cut from, or 0 for all
 * @param tools closed meshes to take away, mold frame
 */
public record Feature(String name, Kind kind, int piece, List<TriMesh> tools) {

  /** What a feature is for. */
  public enum Kind {
    BAND_GROOVE,
    BOLT_HOLE,
    CLAMP_SEAT,
    PRY_SLOT,
    GRIP,
    MARK,
    OUTLINE
  }
}
