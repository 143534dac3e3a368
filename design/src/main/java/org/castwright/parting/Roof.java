package org.castwright.parting;

import org.castwright.mesh.TriMesh;

/** The highest surface of a mesh over any point of the plan, exactly. Safe for many threads. */
public final class Roof {

  private final Columns columns;

  public Roof(TriMesh mesh) {
    columns = new Columns(mesh);
  }

  /** Height of the highest surface over a point, mm; minus infinity beside the mesh. */
  public double at(double x, double y) {
    Column c = new Column();
    return columns.at(x, y, c) ? c.upper : Double.NEGATIVE_INFINITY;
  }
}
