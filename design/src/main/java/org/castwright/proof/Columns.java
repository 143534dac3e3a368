package org.castwright.proof;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * One body seen along the w axis of a frame: the exact spans on a grid of columns, and columns
 * through any other point.
 */
final class Columns {

  private final String name;
  private final Frame frame;
  private final TriMesh local;
  private final Spans spans;
  private final int across;

  /** Made when first asked for: not every view is asked for other points. */
  private ColumnQuery query;

  Columns(Body body, Frame frame, ColumnGrid grid) {
    this.name = body.name();
    this.frame = frame;
    this.local = body.mesh().toLocal(frame);
    this.spans = sweep(grid);
    this.across = Math.max(grid.across(), grid.along());
  }

  String name() {
    return name;
  }

  Frame frame() {
    return frame;
  }

  /** The mesh in the frame. */
  TriMesh local() {
    return local;
  }

  /** Column {@code j * across + i} of the grid. */
  Spans spans() {
    return spans;
  }

  synchronized ColumnQuery.Probe probe() {
    query = query == null ? new ColumnQuery(local.xyz(), local.tri(), across) : query;
    return query.new Probe();
  }

  /** Whether a point, in world coordinates, lies inside the body. */
  boolean holds(Vec3 world) {
    Vec3 p = frame.toLocal(world);
    return probe().at(p.x(), p.y()).holds(0, p.z());
  }

  private Spans sweep(ColumnGrid grid) {
    double[] uvw = local.xyz();
    int[] tri = local.tri();
    Slice slice = new Slice(uvw);
    Crossings crossings = new Crossings();
    for (int f = 0; f < tri.length; f += 3) {
      double va = uvw[3 * tri[f] + 1];
      double vb = uvw[3 * tri[f + 1] + 1];
      double vc = uvw[3 * tri[f + 2] + 1];
      double last = Math.max(va, Math.max(vb, vc));
      int j = grid.firstAlong(Math.min(va, Math.min(vb, vc)));
      for (; j < grid.along() && grid.v(j) < last; j++) {
        if (!slice.cut(tri[f], tri[f + 1], tri[f + 2], grid.v(j))) {
          continue;
        }
        int i = grid.firstAcross(slice.lowU);
        for (; i < grid.across() && grid.u(i) < slice.highU; i++) {
          crossings.add(j * grid.across() + i, slice.heightAt(grid.u(i)), slice.entering);
        }
      }
    }
    return crossings.spans(grid.cells());
  }
}
