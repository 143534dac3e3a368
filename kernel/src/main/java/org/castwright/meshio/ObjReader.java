package org.castwright.meshio;

import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;

/**
 * Wavefront OBJ: vertices and faces. Faces may name vertices from the front (1 on) or back from the
 * last (-1 on), in {@code v}, {@code v/vt}, {@code v//vn} or {@code v/vt/vn} form. Groups,
 * materials, normals, texture coordinates, points and lines are stepped over.
 */
final class ObjReader {

  private static final String[] SILENT = {
    "vn", "vt", "vp", "g", "o", "s", "usemtl", "mtllib", "l", "p", "mg", "usemap", "maplib"
  };

  private final Source source;
  private final TextCursor in;
  private final MeshBuilder vertices = new MeshBuilder();
  private final FaceList faces;
  private long highest;
  private int highestLine;
  private int unknown;
  private int unknownLine;

  ObjReader(Source source) {
    this.source = source;
    this.in = new TextCursor(source, FormatGuess.textStart(source), '#');
    this.faces = new FaceList(source, () -> "line " + in.line());
  }

  TriMesh read() {
    while (in.nextLine()) {
      if (in.take("v")) {
        vertices.vertex(in.number("x"), in.number("y"), in.number("z"));
      } else if (in.take("f") || in.take("fo")) {
        face();
      } else if (!isSilent()) {
        unknown++;
        unknownLine = unknown == 1 ? in.line() : unknownLine;
      }
    }
    if (highest > vertices.vertexCount()) {
      throw source.fault(
          "line " + highestLine,
          "a face names vertex " + highest + " but the file has " + vertices.vertexCount(),
          "the file was cut short or damaged, " + Source.EXPORT_AGAIN);
    }
    if (unknown > 0) {
      source.note(
          unknown + " lines of an unknown kind were left out, the first is " + unknownLine + ".");
    }
    return faces.cut(vertices.build().xyz());
  }

  private boolean isSilent() {
    for (String word : SILENT) {
      if (in.take(word)) {
        return true;
      }
    }
    return false;
  }

  private void face() {
    faces.begin();
    while (in.hasWord()) {
      long v = in.integer("a corner");
      long index = v < 0 ? vertices.vertexCount() + v : v - 1;
      if (v == 0 || index < 0 || index >= Integer.MAX_VALUE) {
        throw in.fault(
            "a face names vertex " + v + " where " + vertices.vertexCount() + " are known so far",
            Source.EXPORT_AGAIN);
      }
      if (index + 1 > highest) {
        highest = index + 1;
        highestLine = in.line();
      }
      faces.corner((int) index);
    }
    faces.end();
  }
}
