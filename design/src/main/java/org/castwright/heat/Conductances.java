package org.castwright.heat;

/**
 * How much heat passes each face of the grid for one kelvin, divided by the volume of a cell, W/(m³
 * K). Between cells of one substance half cells stand in series; at the casting's surface the two
 * parts of the way have their true lengths, and contact or air stands in between on the true area
 * (after Gibou, Fedkiw, Cheng, Kang, J. Comput. Phys. 176, 2002, for the lengths).
 */
final class Conductances {

  private static final double M_PER_MM = 1e-3;

  /** A surface no nearer to a middle than this share of a cell, so that steps stay long. */
  private static final double LEAST_SHARE = 0.05;

  private final Voxels voxels;
  private final Substance[] substances;
  private final Surfaces surfaces;
  private final float[][] through;

  /**
   * @param substances by kind; that of air is not used
   */
  Conductances(Voxels voxels, Substance[] substances, Surfaces surfaces) {
    this.voxels = voxels;
    this.substances = substances;
    this.surfaces = surfaces;
    this.through = new float[3][voxels.cells.size()];
  }

  /** Through the face between a cell and the next along an axis. */
  float[] through(int axis) {
    return through[axis];
  }

  /** Computes all faces anew for these heat contents, J/m³. */
  void update(double[] heat, Crew crew) {
    Cells cells = voxels.cells;
    crew.each(0, cells.nz(), k -> layer(heat, k));
    for (int q = 0; q < voxels.faceCell.length; q++) {
      int c = voxels.faceCell[q];
      int axis = voxels.faceAxis[q];
      if (!boundary(c, axis)) {
        double d = cells.edge(axis) * M_PER_MM;
        through[axis][c] = (float) (1 / (resistance(heat, q) * d));
      }
    }
  }

  private void layer(double[] heat, int k) {
    Cells cells = voxels.cells;
    byte[] kind = voxels.kind;
    int plane = cells.nx() * cells.ny();
    for (int axis = 0; axis < 3; axis++) {
      int stride = cells.stride(axis);
      double d = cells.edge(axis) * M_PER_MM;
      int end = Math.min((k + 1) * plane, kind.length - stride);
      for (int c = k * plane; c < end; c++) {
        int a = kind[c];
        int b = kind[c + stride];
        if (a == Voxels.AIR || b == Voxels.AIR) {
          through[axis][c] = a == b ? 0 : outer(heat, c, axis, d);
        } else {
          double ka = substances[a].kToward(heat[c], a == b, heat[c + stride]);
          double kb = substances[b].kToward(heat[c + stride], a == b, heat[c]);
          through[axis][c] = (float) (2 * ka * kb / ((ka + kb) * d * d));
        }
      }
    }
  }

  /** From the middle of a cell beside the air to the air. */
  private float outer(double[] heat, int c, int axis, double d) {
    boolean low = voxels.kind[c] == Voxels.AIR;
    int cell = low ? c + voxels.cells.stride(axis) : c;
    double k = substances[voxels.kind[cell]].kToSurface(heat[cell]);
    double film = surfaces.outside(axis, low);
    return (float) (1 / ((d / 2 / k + 1 / film) * d));
  }

  /** Whether a face is one of the box's own. */
  private boolean boundary(int c, int axis) {
    int at = axis == 0 ? c % voxels.cells.nx() : c / voxels.cells.stride(axis);
    at = axis == 1 ? at % voxels.cells.ny() : at;
    return at == 0 || at == voxels.cells.count(axis) - 2;
  }

  /** From middle to middle over the casting's surface, m² K/W on the face's own area. */
  double resistance(double[] heat, int q) {
    int c = voxels.faceCell[q];
    int n = c + voxels.cells.stride(voxels.faceAxis[q]);
    boolean air = voxels.kind[c] == Voxels.AIR || voxels.kind[n] == Voxels.AIR;
    double film = air ? surfaces.bare() : surfaces.contact();
    double layer = film == Double.POSITIVE_INFINITY ? 0 : 1 / (film * voxels.faceFacing[q]);
    return part(heat, q, c) + layer + part(heat, q, n);
  }

  /** The part of that resistance between the surface and the middle of one of the two cells. */
  double part(double[] heat, int q, int cell) {
    byte kind = voxels.kind[cell];
    if (kind == Voxels.AIR) {
      return 0;
    }
    double share = voxels.faceShare[q];
    double way = cell == voxels.faceCell[q] ? share : 1 - share;
    double d = voxels.cells.edge(voxels.faceAxis[q]) * M_PER_MM;
    return Math.max(way, LEAST_SHARE) * d / substances[kind].kToSurface(heat[cell]);
  }

  /** The longest stable explicit step, s: least of heat capacity over what the faces pass. */
  double stableStepS() {
    Cells cells = voxels.cells;
    double least = Double.POSITIVE_INFINITY;
    for (int c = 0; c < voxels.kind.length; c++) {
      if (voxels.kind[c] == Voxels.AIR) {
        continue;
      }
      double sum = 0;
      for (int axis = 0; axis < 3; axis++) {
        sum += through[axis][c] + through[axis][c - cells.stride(axis)];
      }
      least = Math.min(least, substances[voxels.kind[c]].leastHeat() / sum);
    }
    return least;
  }
}
