package org.castwright.proof;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;

/**
 * All bodies seen along one pull axis, in columns of one grid. The grid is turned about the pull by
 * an odd angle, so that walls along x or y do not line up with its rows.
 */
final class PullView {

  /** Columns along the longer side of the block for the checks that count. */
  static final int FINE = 480;

  private static final double TURN_DEGREES = 17.3;

  /** Pulls that differ from an axis by less than rounding share its view. */
  private static final double SAME = 1e-12;

  private final Frame frame;
  private final ColumnGrid grid;
  private final double depth;
  private final List<Columns> columns;

  /** A view of all the bodies. */
  PullView(Vec3 pull, Body block, List<Body> bodies) {
    this(pull, block, bodies, IntStream.range(0, bodies.size()).toArray(), FINE);
  }

  /**
   * A view of some bodies.
   *
   * @param seen numbers of the bodies that will be asked for
   * @param across columns along the longer side of the block
   */
  PullView(Vec3 pull, Body block, List<Body> bodies, int[] seen, int across) {
    frame = Frame.along(pull).turned(TURN_DEGREES);
    Box3 box = block.mesh().toLocal(frame).bounds();
    grid = ColumnGrid.over(box, across);
    depth = box.size().z();
    Columns[] made = new Columns[bodies.size()];
    Arrays.stream(seen).parallel().forEach(i -> made[i] = new Columns(bodies.get(i), frame, grid));
    columns = Arrays.asList(made);
  }

  /** 1 if the pull runs along the axis of this view, −1 if against it, 0 if neither. */
  double sign(Vec3 pull) {
    double c = pull.dot(frame.w());
    return c > 1 - SAME ? 1 : c < SAME - 1 ? -1 : 0;
  }

  ColumnGrid grid() {
    return grid;
  }

  /** In the order of the bodies given; null for a body that is not seen. */
  Columns columns(int body) {
    return columns.get(body);
  }

  int size() {
    return columns.size();
  }

  /** Distances 0.02, 0.05, 0.1, 0.2, 0.5 … mm until a piece is clear of the block. */
  double[] steps() {
    double[] out = new double[64];
    int n = 0;
    double decade = 0.01;
    do {
      for (int k : new int[] {2, 5, 10}) {
        if (n == 0 || out[n - 1] < depth) {
          out[n++] = k * decade;
        }
      }
      decade *= 10;
    } while (out[n - 1] < depth);
    return Arrays.copyOf(out, n);
  }
}
