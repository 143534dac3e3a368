package org.castwright.meshio;

import java.util.Arrays;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.PointTable;
import org.castwright.mesh.TriMesh;

/** Text STL: any number of solids, each a list of facets. Normals are stepped over unread. */
final class StlTextReader {

  private final Source source;
  private final TextCursor in;
  private final PointTable points = new PointTable(0);
  private int[] tri = new int[192];
  private int corners;
  private int solids;

  StlTextReader(Source source) {
    this.source = source;
    this.in = new TextCursor(source, FormatGuess.textStart(source), 0);
  }

  TriMesh read() {
    boolean open = false;
    while (in.hasWordAhead()) {
      if (!open) {
        // the first line is the header, whatever is in it
        if (!in.take("solid") && solids > 0) {
          throw unexpected("'solid'");
        }
        solids++;
        open = true;
        if (!in.nextLine()) {
          throw cutShort();
        }
      } else if (in.take("facet")) {
        facet();
      } else if (in.take("endsolid") || takeEndSolid()) {
        open = false;
        skipLine();
      } else {
        throw unexpected("'facet' or 'endsolid'");
      }
    }
    if (open) {
      throw cutShort();
    }
    if (solids > 1) {
      source.note(solids + " solids in one file were joined.");
    }
    return new TriMesh(points.toArray(), Arrays.copyOf(tri, corners));
  }

  private void facet() {
    while (!in.take("outer")) {
      if (!in.hasWordAhead()) {
        throw cutShort();
      }
      if (in.take("outer")) {
        break;
      }
      // the normal, which some programs write as nan
      in.skipWord();
    }
    expect("loop");
    if (corners + 3 > tri.length) {
      tri = Arrays.copyOf(tri, 2 * tri.length);
    }
    for (int k = 0; k < 3; k++) {
      expect("vertex");
      double x = in.number("x");
      double y = in.number("y");
      double z = in.number("z");
      tri[corners++] = points.indexOf(x, y, z);
    }
    expect("endloop");
    expect("endfacet");
    if (corners / 3 > source.limits().maxTriangles()) {
      source.allowed(corners / 3, "line " + in.line());
    }
  }

  private boolean takeEndSolid() {
    if (in.take("end")) {
      expect("solid");
      return true;
    }
    return false;
  }

  private void skipLine() {
    while (in.hasWord()) {
      in.skipWord();
    }
  }

  private void expect(String word) {
    if (!in.hasWordAhead()) {
      throw cutShort();
    }
    if (!in.take(word)) {
      throw unexpected("'" + word + "'");
    }
  }

  private MeshException unexpected(String word) {
    return in.fault(word + " was expected, not " + in.quote(), Source.EXPORT_AGAIN);
  }

  private MeshException cutShort() {
    return in.fault(
        "the file ends before 'endsolid', after " + corners / 3 + " triangles",
        "it was cut short, " + Source.EXPORT_AGAIN);
  }
}
