package org.castwright.parting;

import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * The space above a casting that is wholly free along +z, as a slab: everything above a sheet that
 * keeps within the topmost run of solid of every column, meets the rims of overhangs exactly and
 * runs free beside the casting. A piece cut from the slab less the casting leaves along +z,
 * whatever the casting hides below.
 */
public final class TopSheet {

  /** How far outside a vertical wall its column is asked, mm. */
  private static final double NUDGE_MM = 0.01;

  private TopSheet() {}

  /** What must lie above the sheet: places beside the casting. */
  public interface Need {

    /** Everything from this height up must belong to the piece; infinite where nothing must. */
    double from(double x, double y);
  }

  /**
   * Makes the slab.
   *
   * @param casting closed, oriented, manifold, in a frame whose z is the pull, mm
   * @param box contains the casting with a margin of a millimeter at least; bounds the slab
   * @param wall height of the sheet at the box's walls, mm
   * @return closed, oriented, manifold
   */
  public static TriMesh slab(
      TriMesh casting, BlockBox box, double wall, Need need, PartingOptions options, Progress p) {
    p.at("side pieces: depths", 0);
    Columns columns = new Columns(casting, true);
    DepthGrid grid = new DepthGrid(casting, box);
    grid.keepTopRun(columns);
    for (int o = 0; o < grid.nx * grid.ny; o++) {
      grid.ceiling[o] = need.from(grid.x(o), grid.y(o));
    }
    p.at("side pieces: sheet", 0.3);
    double ring = Math.min(options.flatRingMm(), box.sideMargin(casting.bounds()) / 2);
    SheetJob job = new SheetJob(casting, box, options, columns, grid, (float) wall, ring);
    Seam seam = Seam.of(new Labeled(casting, sides(casting, columns)));
    GridSheet guide = new GridSheet(grid, job.wall(), ring, job.slope());
    SeamSearch.Found found =
        new SeamSearch.Found(seam, new Crossings(seam), guide, job.wall(), options.releaseMm());
    return SlabCut.slab(new ThroughSheet(found, job), box, true);
  }

  /** Upright walls belong to the piece unless something hangs over the place beside them. */
  private static byte[] sides(TriMesh mesh, Columns columns) {
    byte[] side = new byte[mesh.triangleCount()];
    IntStream.range(0, side.length).parallel().forEach(f -> side[f] = side(mesh, f, columns));
    return side;
  }

  private static byte side(TriMesh mesh, int f, Columns columns) {
    Vec3 n = mesh.areaVector(f);
    double length = n.length();
    if (length == 0 || n.z() > Sides.LEVEL_SINE * length) {
      return Sides.UPPER;
    }
    if (n.z() < -Sides.LEVEL_SINE * length) {
      return Sides.LOWER;
    }
    Vec3 c = mesh.center(f).plus(n.times(NUDGE_MM / length));
    Column column = new Column();
    return !columns.at(c.x(), c.y(), column) || column.upper <= c.z() ? Sides.UPPER : Sides.LOWER;
  }
}
