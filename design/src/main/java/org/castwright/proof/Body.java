package org.castwright.proof;

import org.castwright.mesh.TriMesh;
import org.castwright.mesh.Weld;

/** A body of the mold as read, its equal corners joined. */
record Body(String name, TriMesh mesh) {

  static Body read(String name, TriMesh soup) {
    return new Body(name, Weld.exact(soup));
  }
}
