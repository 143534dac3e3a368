package org.castwright.heat;

import java.util.Arrays;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.survey.Raster;
import org.castwright.survey.Scanlines;
import org.castwright.survey.SpanSink;

/**
 * Where the lines through the middles of cells, along one axis, pass the surface of the casting:
 * for each pair of neighbors on such a line how far from the first the surface lies, as a share of
 * their distance, and how much the surface faces along the axis.
 */
final class Crossings implements SpanSink {

  /** No surface between a cell and the next. */
  static final float NONE = -1;

  private final Cells cells;
  private final TriMesh casting;
  private final int axis;
  private final int strideU;
  private final int strideV;
  private final int strideW;
  private final int last;
  private final float[] share;
  private final float[] facing;

  /** How much deeper inside the casting each cell is than the one before it. */
  private final byte[] enters;

  private int facet = -1;
  private float facetFacing;

  Crossings(TriMesh casting, Cells cells, int axis) {
    this.cells = cells;
    this.casting = casting;
    this.axis = axis;
    int u = (axis + 1) % 3;
    int v = (axis + 2) % 3;
    strideU = cells.stride(u);
    strideV = cells.stride(v);
    strideW = cells.stride(axis);
    last = cells.count(axis) - 1;
    share = new float[cells.size()];
    facing = new float[cells.size()];
    enters = new byte[cells.size()];
    Arrays.fill(share, NONE);
    double[] xyz = casting.xyz();
    double[] uvw = new double[xyz.length];
    for (int i = 0; i < xyz.length; i += 3) {
      uvw[i] = cells.inCells(u, xyz[i + u]);
      uvw[i + 1] = cells.inCells(v, xyz[i + v]);
      uvw[i + 2] = cells.inCells(axis, xyz[i + axis]);
    }
    Raster raster = new Raster(0, 0, 1, cells.count(u), cells.count(v));
    new Scanlines(uvw, casting.tri(), raster, this).all();
  }

  @Override
  public void span(int f, int row, int from, int to, double x, double w, double slope, boolean up) {
    if (f != facet) {
      facet = f;
      Vec3 n = casting.areaVector(f);
      double along = axis == 0 ? n.x() : axis == 1 ? n.y() : n.z();
      facetFacing = (float) Math.abs(along / n.length());
    }
    for (int k = from; k < to; k++) {
      double at = w + (k - x) * slope;
      int next = Math.max(0, (int) Math.ceil(at));
      if (next > last) {
        continue;
      }
      int cell = row * strideV + k * strideU + next * strideW;
      enters[cell] = (byte) (enters[cell] + (up ? -1 : 1));
      if (next > 0) {
        share[cell - strideW] = (float) (at - (next - 1));
        facing[cell - strideW] = facetFacing;
      }
    }
  }

  /** Share of the way from a cell to the next along the axis at which the surface lies. */
  float share(int cell) {
    return share[cell];
  }

  /** The part of the surface's unit normal along the axis there, 0 to 1. */
  float facing(int cell) {
    return facing[cell];
  }

  /** Marks the cells with their middle inside the casting. */
  void inside(byte[] kind, byte mark) {
    int u = (axis + 1) % 3;
    int v = (axis + 2) % 3;
    for (int j = 0; j < cells.count(v); j++) {
      for (int i = 0; i < cells.count(u); i++) {
        int depth = 0;
        int cell = j * strideV + i * strideU;
        for (int k = 0; k <= last; k++, cell += strideW) {
          depth += enters[cell];
          if (depth > 0) {
            kind[cell] = mark;
          }
        }
      }
    }
  }
}
