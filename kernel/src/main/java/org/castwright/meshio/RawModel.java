package org.castwright.meshio;

import java.util.List;
import org.castwright.geom.LengthUnit;
import org.castwright.mesh.TriMesh;

/**
 * A model as its file states it: not repaired, not scaled.
 *
 * @param mesh the triangles, in the file's own unit. STL names no shared corners, so there corners
 *     of exactly equal coordinates are one vertex, numbered by first appearance; all other formats
 *     keep the vertices of the file, used or not, in the file's order
 * @param format the kind of file
 * @param statedUnit the unit the file states, null if it states none (only 3MF does)
 * @param notes sentences on what was left out or bent in reading, in the order found
 * @param source the file's name without its folder
 */
public record RawModel(
    TriMesh mesh, Format format, LengthUnit statedUnit, List<String> notes, String source) {

  public RawModel {
    notes = List.copyOf(notes);
  }
}
