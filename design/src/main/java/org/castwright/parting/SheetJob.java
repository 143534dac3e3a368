package org.castwright.parting;

import org.castwright.mesh.TriMesh;

/**
 * What both ways of making halves need to know.
 *
 * @param casting the casting as given
 * @param wall height of the sheet at the block's wall, mm
 * @param ringMm width of the flat ring along the wall, mm
 */
record SheetJob(
    TriMesh casting,
    BlockBox box,
    PartingOptions options,
    Columns columns,
    DepthGrid grid,
    double wall,
    double ringMm) {

  /** The tangent of the steepest slope wanted. */
  double slope() {
    return StrictMath.tan(Math.toRadians(options.maxSlopeDeg()));
  }
}
