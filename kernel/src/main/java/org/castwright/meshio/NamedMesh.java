package org.castwright.meshio;

import org.castwright.mesh.TriMesh;

/**
 * A mesh to be written as one object of a file.
 *
 * @param name what a person reads in the list of objects; not blank, no control characters
 * @param mesh millimeters, at least one triangle of three different vertices
 * @param color {@code #RRGGBB}, or null for none
 */
public record NamedMesh(String name, TriMesh mesh, String color) {

  public NamedMesh {
    if (name.isBlank() || name.codePoints().anyMatch(NamedMesh::unfit)) {
      throw new IllegalArgumentException("a mesh needs a name of printable characters");
    }
    if (color != null && !color.matches("#[0-9A-Fa-f]{6}")) {
      throw new IllegalArgumentException("a color is written #RRGGBB, not " + color);
    }
  }

  public NamedMesh(String name, TriMesh mesh) {
    this(name, mesh, null);
  }

  /** Control characters, halves of pairs and non-characters cannot stand in XML. */
  private static boolean unfit(int c) {
    return Character.isISOControl(c) || (c >= 0xd800 && c < 0xe000) || (c & 0xfffe) == 0xfffe;
  }
}
