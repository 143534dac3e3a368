package org.castwright.repair;

/**
 * How a model is healed. Lengths given as a share are of the diagonal of the model's box.
 *
 * @param mode how far to go
 * @param fillVoids whether enclosed voids are filled; otherwise they are an error
 * @param nearWeldShare open edges whose ends are no farther apart than this share are joined. The
 *     distance is also held to a quarter of the model's short healthy edges (the length that one in
 *     a hundred of the edges with two triangles stays under), so it never eats detail
 * @param maxHoleEdges a hole with more edges round it is not closed
 * @param maxHoleShare a hole wider than this share is closed only if it is flat
 * @param flatHoleShare a hole is flat if its edge keeps to a plane within this share of the hole's
 *     own width; the patch is then certain whatever its size
 * @param speckShare a shell that floats free with less than this share of the volume of the largest
 *     shell is dropped
 * @param remeshCell the cell of the grid a surface is rebuilt on, mm; zero for the longest side of
 *     the model divided by {@value #REMESH_CELLS}. A rebuilt surface stays within √3 cells of the
 *     old one
 */
public record RepairOptions(
    HealMode mode,
    boolean fillVoids,
    double nearWeldShare,
    int maxHoleEdges,
    double maxHoleShare,
    double flatHoleShare,
    double speckShare,
    double remeshCell) {

  /** Cells along the longest side: 0.8 mm on a 100 mm model, about 200,000 triangles. */
  static final int REMESH_CELLS = 128;

  /**
   * Near weld at 1e-4 of the diagonal: 0.02 mm on a 200 mm model, under what a printer shows. Holes
   * of up to 1000 edges (a patch takes about a second there) and 5 % of the diagonal: a missing
   * facet or a scanner's blind spot, not a missing side. Flat within 1 %. Specks below one
   * millionth of the largest shell: 1 mm³ on a 100 mm cube.
   */
  public static final RepairOptions DEFAULT =
      new RepairOptions(HealMode.STANDARD, false, 1e-4, 1000, 0.05, 0.01, 1e-6, 0);

  public RepairOptions {
    if (!(nearWeldShare >= 0 && maxHoleShare >= 0 && flatHoleShare >= 0)
        || !(speckShare >= 0 && remeshCell >= 0)
        || maxHoleEdges < 0) {
      throw new IllegalArgumentException("limits of healing are zero or above");
    }
  }

  public RepairOptions withMode(HealMode other) {
    return new RepairOptions(
        other,
        fillVoids,
        nearWeldShare,
        maxHoleEdges,
        maxHoleShare,
        flatHoleShare,
        speckShare,
        remeshCell);
  }

  public RepairOptions withFillVoids(boolean fill) {
    return new RepairOptions(
        mode,
        fill,
        nearWeldShare,
        maxHoleEdges,
        maxHoleShare,
        flatHoleShare,
        speckShare,
        remeshCell);
  }

  RepairOptions withMaxHoleShare(double share) {
    return new RepairOptions(
        mode, fillVoids, nearWeldShare, maxHoleEdges, share, flatHoleShare, speckShare, remeshCell);
  }

  public RepairOptions withRemeshCell(double cell) {
    return new RepairOptions(
        mode,
        fillVoids,
        nearWeldShare,
        maxHoleEdges,
        maxHoleShare,
        flatHoleShare,
        speckShare,
        cell);
  }
}
