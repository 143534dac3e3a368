package org.castwright.parting;

import java.util.List;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * A block parted in two around a casting: two closed halves that mate on one sheet, the upper one
 * pulled along +z. Immutable; safe for many threads. All lengths in millimeters, all positions in
 * the mold frame of the casting given.
 */
public final class Parting {

  private final PartingResult result;

  Parting(PartingResult result) {
    this.result = result;
  }

  /**
   * Parts a block.
   *
   * @param casting closed, oriented, manifold, in the mold frame, every coordinate a 32-bit float
   * @param box contains the casting with a margin
   * @param kernel makes the halves where they cannot be stitched; may be null if {@code options}
   *     ask for {@link Method#STITCH}
   * @throws MeshException if the casting is open, or cannot be parted the way the options ask for
   * @throws IllegalArgumentException if the block does not contain the casting or a coordinate is
   *     not a float
   * @throws Progress.CancelledException if the progress asks to stop
   */
  public static Parting of(
      TriMesh casting,
      BlockBox box,
      PartingOptions options,
      SolidKernel kernel,
      Progress progress) {
    return new Parting(new PartingRun(casting, box, options, kernel, progress).run());
  }

  /** The half that leaves along +z. */
  public Solid upper() {
    return result.upper();
  }

  /** The half that leaves along -z. */
  public Solid lower() {
    return result.lower();
  }

  /** The casting, with facets split along the seam where the halves have them so. */
  public TriMesh casting() {
    return result.casting();
  }

  public BlockBox box() {
    return result.job().box();
  }

  /** The seam as closed lines on the casting, packed xyz, the first point not repeated. */
  public List<double[]> seamLoops() {
    return result.loops();
  }

  /** Whether the sheet is a plane (its edge at the casting may be 0.02 mm off it). */
  public boolean flat() {
    return result.flat();
  }

  /** The height at which the sheet meets the block's walls. */
  public double wallHeight() {
    return result.job().wall();
  }

  /** {@link Method#STITCH} or {@link Method#BOOLEAN}. */
  public Method used() {
    return result.used();
  }

  public PartingStats stats() {
    return result.stats();
  }

  /** Height of the sheet; NaN inside the casting's shadow and outside the block. */
  public double heightAt(double x, double y) {
    Column c = result.sheetAt(x, y);
    return c == null ? Double.NaN : c.upper;
  }

  /** Slope of the sheet, degrees from level; NaN where {@link #heightAt} is. */
  public double slopeDegAt(double x, double y) {
    Column c = result.sheetAt(x, y);
    return c == null ? Double.NaN : SheetSlope.degrees(result.sheet(), c.upperFacet);
  }

  /**
   * Distance in plan from a point to the casting's shadow, 0 inside. Exact to the seam's image,
   * which follows the shadow's outline within the release tolerance.
   */
  public double shadowDistance(double x, double y) {
    return result.job().columns().at(x, y, new Column()) ? 0 : result.outline().distance(x, y);
  }

  /** The highest casting over a point of the plan; NaN outside the shadow. */
  public double upperAt(double x, double y) {
    Column c = new Column();
    return result.job().columns().at(x, y, c) ? c.upper : Double.NaN;
  }

  /** The lowest casting over a point of the plan; NaN outside the shadow. */
  public double lowerAt(double x, double y) {
    Column c = new Column();
    return result.job().columns().at(x, y, c) ? c.lower : Double.NaN;
  }
}
