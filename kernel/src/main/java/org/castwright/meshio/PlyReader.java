package org.castwright.meshio;

import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.PlyHeader.Element;
import org.castwright.meshio.PlyHeader.Encoding;
import org.castwright.meshio.PlyHeader.Property;

/**
 * PLY, the polygon file format of G. Turk: text or binary of either byte order, elements and
 * properties in any order and of any type. Wanted are {@code x y z} of {@code vertex} and the list
 * {@code vertex_indices} or {@code vertex_index} of {@code face}; the rest is stepped over.
 */
final class PlyReader {

  private static final String VERTEX = "vertex";
  private static final String FACE = "face";

  private final Source source;
  private PlyBody body;
  private double[] xyz;
  private int vertices;

  PlyReader(Source source) {
    this.source = source;
  }

  TriMesh read() {
    TextCursor in = new TextCursor(source, FormatGuess.textStart(source), 0);
    PlyHeader header = PlyHeader.read(source, in);
    vertices = only(header, VERTEX).rows();
    only(header, FACE);
    body = body(header, in);
    FaceList faces = new FaceList(source, body::where);
    for (Element e : header.elements()) {
      if (e.name().equals(VERTEX)) {
        vertices(e);
      } else if (e.name().equals(FACE)) {
        faces(e, faces);
      } else {
        skip(e);
      }
    }
    body.end();
    return faces.cut(xyz);
  }

  private Element only(PlyHeader header, String name) {
    Element found = null;
    for (Element e : header.elements()) {
      if (e.name().equals(name)) {
        if (found != null) {
          throw source.fault("header", "it names '" + name + "' twice", "save it as plain PLY");
        }
        found = e;
      }
    }
    if (found == null) {
      throw source.fault(
          "header",
          "it promises no '" + name + "' element, so there are no triangles",
          "export the model as a mesh of triangles");
    }
    return found;
  }

  private PlyBody body(PlyHeader header, TextCursor in) {
    if (header.encoding() == Encoding.ASCII) {
      return new PlyText(in);
    }
    boolean little = header.encoding() == Encoding.LITTLE_ENDIAN;
    return new PlyBinary(
        source, afterLine(in.position()), little ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
  }

  /** The byte after the line that holds the given byte. */
  private int afterLine(int at) {
    byte[] b = source.bytes();
    int i = at;
    while (i < b.length && b[i] != '\n' && b[i] != '\r') {
      i++;
    }
    boolean two = i + 1 < b.length && b[i] == '\r' && b[i + 1] == '\n';
    return Math.min(b.length, i + (two ? 2 : 1));
  }

  private void vertices(Element e) {
    List<Property> properties = e.properties();
    int[] axis = new int[properties.size()];
    Arrays.fill(axis, -1);
    String[] names = {"x", "y", "z"};
    for (int k = 0; k < 3; k++) {
      int at = e.indexOf(names[k]);
      if (at < 0 || properties.get(at).isList()) {
        throw source.fault("header", "vertices have no '" + names[k] + "'", Source.EXPORT_AGAIN);
      }
      axis[at] = k;
    }
    xyz = new double[Math.multiplyExact(3, vertices)];
    for (int i = 0; i < vertices; i++) {
      body.beginRow(e.name(), i);
      for (int p = 0; p < axis.length; p++) {
        if (axis[p] < 0) {
          skip(properties.get(p));
        } else {
          xyz[3 * i + axis[p]] = body.number(properties.get(p).type(), true);
        }
      }
      body.endRow();
    }
  }

  private void faces(Element e, FaceList faces) {
    int list = Math.max(e.indexOf("vertex_indices"), e.indexOf("vertex_index"));
    if (list < 0
        || !e.properties().get(list).isList()
        || !e.properties().get(list).type().isWhole()) {
      throw source.fault(
          "header", "faces have no list 'vertex_indices' of whole numbers", Source.EXPORT_AGAIN);
    }
    for (int i = 0; i < e.rows(); i++) {
      body.beginRow(e.name(), i);
      for (int p = 0; p < e.properties().size(); p++) {
        if (p == list) {
          face(e.properties().get(p), faces);
        } else {
          skip(e.properties().get(p));
        }
      }
      body.endRow();
    }
  }

  private void face(Property p, FaceList faces) {
    long n = body.integer(p.count());
    faces.begin();
    for (long k = 0; k < n; k++) {
      long v = body.integer(p.type());
      if (v < 0 || v >= vertices) {
        throw source.fault(
            body.where(),
            "a face names vertex " + v + " but vertices run from 0 to " + (vertices - 1),
            Source.EXPORT_AGAIN);
      }
      faces.corner((int) v);
    }
    faces.end();
  }

  private void skip(Element e) {
    for (int i = 0; i < e.rows(); i++) {
      body.beginRow(e.name(), i);
      for (Property p : e.properties()) {
        skip(p);
      }
      body.endRow();
    }
  }

  private void skip(Property p) {
    long n = p.isList() ? body.integer(p.count()) : 1;
    for (long k = 0; k < n; k++) {
      body.number(p.type(), false);
    }
  }
}
