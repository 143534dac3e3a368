package org.castwright.parting;

import java.util.List;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;

/** Everything a {@link Parting} answers from. */
record PartingResult(
    SheetJob job,
    Solid upper,
    Solid lower,
    TriMesh casting,
    TriMesh sheet,
    Columns sheetColumns,
    OutlineDistance outline,
    List<double[]> loops,
    boolean flat,
    Method used,
    PartingStats stats) {

  /** The sheet over a point of the plan, or null in the shadow and outside the block. */
  Column sheetAt(double x, double y) {
    BlockBox b = job.box();
    Column c = new Column();
    if (!(x >= b.x0() && x <= b.x1() && y >= b.y0() && y <= b.y1()) || job.columns().at(x, y, c)) {
      return null;
    }
    // columns are half-open, so the far walls are asked just inside
    double px = Math.min(x, Math.nextDown(b.x1()));
    double py = Math.min(y, Math.nextDown(b.y1()));
    return sheetColumns.at(px, py, c) ? c : null;
  }
}
