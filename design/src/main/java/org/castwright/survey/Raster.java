package org.castwright.survey;

/**
 * A grid of sample columns over the plane across the pull: column {@code (i, j)} stands at {@code
 * x0 + i * pixel, y0 + j * pixel}, millimeters.
 *
 * @param x0 x of the first column, mm
 * @param y0 y of the first column, mm
 * @param pixel distance between columns, mm
 * @param nx columns along x
 * @param ny columns along y
 */
public record Raster(double x0, double y0, double pixel, int nx, int ny) {

  // Columns standing exactly on vertices or walls of a model in round numbers would be decided by
  // rounding alone; these shares of a pixel keep the grid off them.
  private static final double OFF_X = 0.3137;
  private static final double OFF_Y = 0.3719;
  private static final int MARGIN = 2;

  /** Checks that the grid has columns and a positive distance between them. */
  public Raster {
    if (nx < 1 || ny < 1 || !(pixel > 0)) {
      throw new IllegalArgumentException("a raster needs columns and a pixel above zero");
    }
  }

  /**
   * The grid over a rectangle with columns {@code pixel} apart and at least one empty column all
   * round.
   */
  static Raster over(double minX, double minY, double maxX, double maxY, double pixel) {
    int nx = (int) Math.ceil((maxX - minX) / pixel) + 2 * MARGIN;
    int ny = (int) Math.ceil((maxY - minY) / pixel) + 2 * MARGIN;
    return new Raster(
        minX - (MARGIN - OFF_X) * pixel, minY - (MARGIN - OFF_Y) * pixel, pixel, nx, ny);
  }

  /**
   * The grid over a box as {@link Projection} gives it.
   *
   * @param pixels columns along its longer side
   * @param smallest columns never stand closer than this, mm
   */
  static Raster over(double[] box, int pixels, double smallest) {
    double side = Math.max(box[Projection.MAX_X] - box[0], box[Projection.MAX_Y] - box[1]);
    return over(box, Math.max(side / pixels, smallest));
  }

  static Raster over(double[] box, double pixel) {
    return over(box[0], box[1], box[Projection.MAX_X], box[Projection.MAX_Y], pixel);
  }

  int columns() {
    return nx * ny;
  }

  /** The index of the column nearest to a point, or -1 when the point lies outside the grid. */
  public int nearest(double x, double y) {
    long i = Math.round((x - x0) / pixel);
    long j = Math.round((y - y0) / pixel);
    return i < 0 || j < 0 || i >= nx || j >= ny ? -1 : (int) (j * nx + i);
  }
}
