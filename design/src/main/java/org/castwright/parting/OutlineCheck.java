package org.castwright.parting;

/**
 * Checks that a sheet ends at the outline: columns of the casting are not covered by it and all
 * others are. Looks at every node of the depth grid, and forgives nodes within the release
 * tolerance of the outline.
 */
final class OutlineCheck {

  private static final int PROBES = 8;

  /** Radius of the ring of probes over the tolerance: the ring's sides lie 8 % closer. */
  private static final double RING = 1.2;

  private OutlineCheck() {}

  static boolean agrees(Columns sheet, SheetJob job) {
    DepthGrid grid = job.grid();
    Column c = new Column();
    for (int j = 1; j < grid.ny - 1; j++) {
      for (int i = 1; i < grid.nx - 1; i++) {
        int o = j * grid.nx + i;
        boolean covered = sheet.at(grid.x(o), grid.y(o), c);
        if (covered == grid.in(o) && !near(job, grid.x(o), grid.y(o), covered)) {
          return false;
        }
      }
    }
    return true;
  }

  /**
   * Whether the outline is within the release tolerance of a point: a column close by lacks the
   * casting that this one has, or has what this one lacks.
   */
  static boolean near(SheetJob job, double x, double y, boolean inside) {
    Column c = new Column();
    double r = RING * job.options().releaseMm();
    for (int k = 0; k < PROBES; k++) {
      double a = 2 * Math.PI * k / PROBES;
      if (job.columns().at(x + r * StrictMath.cos(a), y + r * StrictMath.sin(a), c) != inside) {
        return true;
      }
    }
    return false;
  }
}
