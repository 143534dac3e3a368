package org.castwright.repair;

import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.TriMesh;

/** What keeps a mesh from being closed, in words for the person at the bench. */
final class Faults {

  static final String ADVICE =
      ": mend it in the modeling program, or use --heal remesh to rebuild the surface";

  private Faults() {}

  /** The faults of a mesh, with the width and place of the widest hole. */
  static String words(TriMesh mesh) {
    MeshCheck check = MeshCheck.of(mesh);
    StringBuilder out = new StringBuilder("the model has ").append(check.faults());
    if (check.openEdges() > 0) {
      hole(mesh, out);
    } else if (check.faultTriangle() >= 0) {
      int corner = mesh.tri()[3 * check.faultTriangle()];
      out.append(", one near ").append(Draft.place(mesh.vertex(corner)));
    }
    return out.toString();
  }

  private static void hole(TriMesh mesh, StringBuilder out) {
    Loops loops = new Loops(mesh, new EdgeTable(mesh.tri(), mesh.vertexCount()));
    int widest = -1;
    for (int i = 0; i < loops.count(); i++) {
      if (widest < 0 || loops.width(i) > loops.width(widest)) {
        widest = i;
      }
    }
    if (widest >= 0) {
      out.append(loops.count() == 1 ? " round a hole " : " round holes, the widest ")
          .append(Draft.number(loops.width(widest)))
          .append(" mm wide near ")
          .append(Draft.place(loops.center(widest)));
    }
  }
}
