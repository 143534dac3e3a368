package org.castwright.meshio;

import org.castwright.mesh.TriMesh;

/**
 * OFF text files, with or without colors, normals and texture coordinates (COFF, NOFF, STOFF),
 * which are stepped over. One vertex or face stands on a line; counts may share the first.
 */
final class OffReader {

  /** A vertex line holds three digits, two gaps and a line end at least. */
  private static final int SHORTEST_VERTEX = 6;

  /** A face line holds four digits, three gaps and a line end at least. */
  private static final int SHORTEST_FACE = 8;

  private final Source source;
  private final TextCursor in;

  OffReader(Source source) {
    this.source = source;
    this.in = new TextCursor(source, FormatGuess.textStart(source), '#');
  }

  TriMesh read() {
    header();
    if (!in.hasWordAhead()) {
      throw in.fault("the file ends before the counts", Source.EXPORT_AGAIN);
    }
    int vertices = count("the number of vertices", SHORTEST_VERTEX);
    int faces = count("the number of faces", SHORTEST_FACE);
    double[] xyz = new double[3 * vertices];
    for (int i = 0; i < vertices; i++) {
      nextRow("vertex", i, vertices);
      xyz[3 * i] = in.number("x");
      xyz[3 * i + 1] = in.number("y");
      xyz[3 * i + 2] = in.number("z");
    }
    FaceList list = new FaceList(source, () -> "line " + in.line());
    for (int i = 0; i < faces; i++) {
      nextRow("face", i, faces);
      face(list, vertices);
    }
    if (in.nextLine()) {
      throw in.fault(
          "more lines follow than the " + vertices + " vertices and " + faces + " faces promised",
          "the counts are wrong, " + Source.EXPORT_AGAIN);
    }
    return list.cut(xyz);
  }

  private void header() {
    in.nextLine();
    String first = in.quote();
    if (in.take("off")
        || in.take("coff")
        || in.take("noff")
        || in.take("cnoff")
        || in.take("stoff")
        || in.take("stcoff")
        || in.take("stnoff")
        || in.take("stcnoff")) {
      if (in.take("binary")) {
        throw in.fault("this is a binary OFF file, which is not read", "save it as text OFF");
      }
    } else if (!first.matches("'\\d+'")) {
      throw in.fault("'OFF' was expected, not " + first, "save it as plain OFF");
    }
  }

  private int count(String what, int shortestRow) {
    long n = in.integer(what);
    if (n < 0 || n * shortestRow > source.length() + 1L) {
      throw in.fault(
          what
              + " is "
              + n
              + ", which does not fit in the "
              + source.length()
              + " bytes of the file",
          "the count is wrong or the file was cut short, " + Source.EXPORT_AGAIN);
    }
    return (int) n;
  }

  private void nextRow(String kind, int i, int all) {
    if (!in.nextLine()) {
      throw in.fault(
          "the file ends after "
              + i
              + " of "
              + all
              + (kind.equals("face") ? " faces" : " vertices"),
          "it was cut short, " + Source.EXPORT_AGAIN);
    }
  }

  private void face(FaceList list, int vertices) {
    long n = in.integer("the number of corners");
    list.begin();
    for (long k = 0; k < n; k++) {
      long v = in.integer("a corner");
      if (v < 0 || v >= vertices) {
        throw in.fault(
            "a face names vertex " + v + " but vertices run from 0 to " + (vertices - 1),
            Source.EXPORT_AGAIN);
      }
      list.corner((int) v);
    }
    list.end();
  }
}
