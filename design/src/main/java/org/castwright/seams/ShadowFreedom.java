package org.castwright.seams;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.survey.DepthImage;
import org.castwright.survey.Raster;

/**
 * Freedom read off one depth image for each pull. A point is free if in its own column or one of
 * the eight round it nothing of the casting stands higher than it by more than {@link
 * #DEPTH_PIXELS} columns' distance. So a catch narrower than half a column counts as free, one
 * wider than {@link #WIDEST_PIXELS} columns does not, walls along the pull are free both ways, and
 * creases do not catch. Columns stand the release tolerance apart, or wider on models too large for
 * that.
 */
public final class ShadowFreedom implements Freedom {

  /** Height that may stand above a free point: what a 1:2 slope gains over the nearest column. */
  private static final double DEPTH_PIXELS = 2;

  /** From a point to the farthest of the nine columns: half a cell and a cell, along a diagonal. */
  static final double WIDEST_PIXELS = 1.5 * Math.sqrt(2);

  private static final int MARGIN = 3;

  // keeps columns off the round numbers models are drawn in
  private static final double OFF_X = 0.3137;
  private static final double OFF_Y = 0.3719;

  private final Frame[] frames;
  private final Raster[] rasters;

  /** For each column the lowest top of the nine round it. */
  private final float[][] tops;

  private ShadowFreedom(int pieces) {
    frames = new Frame[pieces];
    rasters = new Raster[pieces];
    tops = new float[pieces][];
  }

  /**
   * Draws the images.
   *
   * @param casting closed mesh, mm
   * @param pulls unit vectors, in the order the pieces leave
   * @param releaseMm width of catch that counts as free
   * @param mostPixels columns along the longer side of an image at most
   */
  public static ShadowFreedom of(
      TriMesh casting, List<Vec3> pulls, double releaseMm, int mostPixels) {
    if (pulls.isEmpty() || pulls.size() > MOST_PIECES) {
      throw new IllegalArgumentException("1 to " + MOST_PIECES + " pulls are needed");
    }
    ShadowFreedom f = new ShadowFreedom(pulls.size());
    IntStream.range(0, pulls.size())
        .parallel()
        .forEach(i -> f.draw(i, casting, pulls.get(i), releaseMm, mostPixels));
    return f;
  }

  private void draw(int i, TriMesh casting, Vec3 pull, double releaseMm, int mostPixels) {
    frames[i] = Frame.along(pull);
    TriMesh turned = casting.toLocal(frames[i]);
    Box3 box = turned.bounds();
    double side = Math.max(box.size().x(), box.size().y());
    double pixel = Math.max(releaseMm, side / mostPixels);
    Raster r =
        new Raster(
            box.min().x() - (MARGIN - OFF_X) * pixel,
            box.min().y() - (MARGIN - OFF_Y) * pixel,
            pixel,
            (int) Math.ceil(box.size().x() / pixel) + 2 * MARGIN,
            (int) Math.ceil(box.size().y() / pixel) + 2 * MARGIN);
    DepthImage image = new DepthImage();
    image.draw(turned, r);
    float[] top = new float[r.nx() * r.ny()];
    for (int c = 0; c < top.length; c++) {
      top[c] = (float) image.upper(c);
    }
    rasters[i] = r;
    tops[i] = lowest(lowest(top, 1), r.nx());
  }

  /** The lowest of each number and the two so far from it; past the ends nothing stands. */
  private static float[] lowest(float[] of, int apart) {
    float[] out = new float[of.length];
    Arrays.fill(out, Float.NEGATIVE_INFINITY);
    for (int c = apart; c + apart < of.length; c++) {
      out[c] = Math.min(of[c], Math.min(of[c - apart], of[c + apart]));
    }
    return out;
  }

  /** Distance of the columns for a piece, mm. */
  public double pixelMm(int piece) {
    return rasters[piece].pixel();
  }

  @Override
  public int pieces() {
    return frames.length;
  }

  @Override
  public int at(double x, double y, double z) {
    int mask = 0;
    for (int i = 0; i < frames.length; i++) {
      mask |= frees(i, x, y, z) ? 1 << i : 0;
    }
    return mask;
  }

  @Override
  public boolean frees(int piece, double x, double y, double z) {
    Frame f = frames[piece];
    Raster r = rasters[piece];
    double px = f.u().x() * x + f.u().y() * y + f.u().z() * z;
    double py = f.v().x() * x + f.v().y() * y + f.v().z() * z;
    double limit = f.w().x() * x + f.w().y() * y + f.w().z() * z + DEPTH_PIXELS * r.pixel();
    int col = (int) Math.round((px - r.x0()) / r.pixel());
    int row = (int) Math.round((py - r.y0()) / r.pixel());
    if (col < 1 || row < 1 || col >= r.nx() - 1 || row >= r.ny() - 1) {
      return true; // beside the casting
    }
    return tops[piece][row * r.nx() + col] <= limit;
  }
}
