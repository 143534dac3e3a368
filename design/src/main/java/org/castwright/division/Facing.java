package org.castwright.division;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** Which way a casting's surface faces about a point: its facets' normals, gathered in cells. */
final class Facing {

  /** Places on a facet lie so far apart at most, cells. */
  private static final double SPACING = 0.5;

  private final Cells cells;
  private final float[] sum;

  Facing(TriMesh casting, Cells cells) {
    this.cells = cells;
    sum = new float[3 * cells.size()];
    Spots.visit(casting, SPACING * cells.cell, (f, p, area) -> put(p, area));
  }

  private void put(Vec3 p, Vec3 normal) {
    int i = (int) Math.rint((p.x() - cells.x0) / cells.cell);
    int j = (int) Math.rint((p.y() - cells.y0) / cells.cell);
    int k = (int) Math.rint((p.z() - cells.z0) / cells.cell);
    if (i >= 0 && j >= 0 && k >= 0 && i < cells.nx && j < cells.ny && k < cells.nz) {
      int c = 3 * ((k * cells.ny + j) * cells.nx + i);
      sum[c] += (float) normal.x();
      sum[c + 1] += (float) normal.y();
      sum[c + 2] += (float) normal.z();
    }
  }

  /** Out of the casting about a point, not of unit length; zero far from its surface. */
  Vec3 at(Vec3 p) {
    double fx = cells.alongX(p.x());
    double fy = cells.alongY(p.y());
    double fz = cells.alongZ(p.z());
    int c = (((int) fz) * cells.ny + ((int) fy)) * cells.nx + (int) fx;
    double x = 0;
    double y = 0;
    double z = 0;
    for (int k = 0; k < 8; k++) {
      double a = (k & 1) == 0 ? 1 - fx % 1 : fx % 1;
      double b = (k & 2) == 0 ? 1 - fy % 1 : fy % 1;
      double d = (k & 4) == 0 ? 1 - fz % 1 : fz % 1;
      int at = c + (k & 1) + ((k & 2) == 0 ? 0 : cells.nx);
      at = 3 * (at + ((k & 4) == 0 ? 0 : cells.nx * cells.ny));
      double w = a * b * d;
      x += w * sum[at];
      y += w * sum[at + 1];
      z += w * sum[at + 2];
    }
    return new Vec3(x, y, z);
  }
}
