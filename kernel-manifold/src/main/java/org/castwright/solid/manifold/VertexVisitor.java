package org.castwright.solid.manifold;

/** Sees and may change vertices in place. */
interface VertexVisitor {

  /**
   * Called once with all vertices of a body.
   *
   * @param address of the first coordinate; vertices are three doubles each, one after the other
   * @param count of vertices
   */
  void visit(int address, int count);
}
