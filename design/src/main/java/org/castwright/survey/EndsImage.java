package org.castwright.survey;

import java.util.Arrays;
import org.castwright.geom.Frame;
import org.castwright.mesh.TriMesh;

/**
 * The two ends of a mesh along an axis: for each column of a {@link Raster} the highest and the
 * lowest surface. The mesh must be closed and outward-oriented, so that the highest surface faces
 * up and the lowest down. Where that is all that is asked it takes a third of the memory of a
 * {@link DepthImage}, and half the time. The arrays are kept from one picture to the next; it must
 * stay with one thread.
 */
public final class EndsImage implements SpanSink {

  private Raster raster = new Raster(0, 0, 1, 1, 1);
  private double[] points = new double[0];
  private float[] high = new float[0];
  private float[] low = new float[0];

  /**
   * Turns a mesh into a frame and draws it along the frame's third axis.
   *
   * @param pixel distance between columns, mm
   */
  public void look(TriMesh mesh, Frame frame, double pixel) {
    draw(mesh, Raster.over(turned(mesh, frame), pixel));
  }

  /**
   * Turns a mesh into a frame and draws it along the frame's third axis.
   *
   * @param pixels columns along the longer side of the shadow
   * @param smallest columns never stand closer than this, mm
   */
  public void look(TriMesh mesh, Frame frame, int pixels, double smallest) {
    draw(mesh, Raster.over(turned(mesh, frame), pixels, smallest));
  }

  private double[] turned(TriMesh mesh, Frame frame) {
    int n = mesh.xyz().length;
    if (points.length < n) {
      points = new double[n];
    }
    return Projection.into(mesh.xyz(), frame, points);
  }

  private void draw(TriMesh mesh, Raster over) {
    raster = over;
    int columns = raster.columns();
    if (high.length < columns) {
      high = new float[columns];
      low = new float[columns];
    }
    Arrays.fill(high, 0, columns, Float.NEGATIVE_INFINITY);
    Arrays.fill(low, 0, columns, Float.POSITIVE_INFINITY);
    new Scanlines(points, mesh.tri(), raster, this).all();
  }

  @Override
  public void span(
      int facet, int row, int from, int to, double x, double z, double slope, boolean up) {
    int o = row * raster.nx();
    if (up) {
      for (int k = from; k < to; k++) {
        float h = (float) (z + (k - x) * slope);
        if (h > high[o + k]) {
          high[o + k] = h;
        }
      }
    } else {
      for (int k = from; k < to; k++) {
        float h = (float) (z + (k - x) * slope);
        if (h < low[o + k]) {
          low[o + k] = h;
        }
      }
    }
  }

  public Raster raster() {
    return raster;
  }

  /**
   * The highest surface of each column, mm, minus infinity where it misses the mesh; longer than
   * needed. The caller may write into it until the next look.
   */
  public float[] high() {
    return high;
  }

  /** The lowest surface of each column, as {@link #high}; infinity where it misses the mesh. */
  public float[] low() {
    return low;
  }
}
