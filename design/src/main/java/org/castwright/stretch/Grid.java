package org.castwright.stretch;

import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Square cells across a pull and layers along it, over the box of the casting with room round it.
 *
 * @param frame third axis along the pull
 */
record Grid(
    Frame frame,
    double u0,
    double v0,
    double step,
    int across,
    int along,
    double w0,
    double rise,
    int layers) {

  /** Cells left free round the casting, so that the outside is one. */
  private static final int MARGIN = 2;

  /** Turned about the pull, degrees, so that walls along the axes do not line up with cells. */
  private static final double TURN = 17.3;

  static Grid along(Vec3 pull, TriMesh casting, StretchOptions options) {
    Frame frame = Frame.along(pull).turned(TURN);
    Box3 box = casting.toLocal(frame).bounds();
    double step = Math.max(box.size().x(), box.size().y()) / options.across();
    return new Grid(
        frame,
        box.min().x() - MARGIN * step,
        box.min().y() - MARGIN * step,
        step,
        (int) Math.ceil(box.size().x() / step) + 2 * MARGIN,
        (int) Math.ceil(box.size().y() / step) + 2 * MARGIN,
        box.min().z(),
        box.size().z() / options.layers(),
        options.layers());
  }

  int cells() {
    return across * along;
  }

  double u(int i) {
    return u0 + (i + 0.5) * step;
  }

  double v(int j) {
    return v0 + (j + 0.5) * step;
  }

  double w(int layer) {
    return w0 + (layer + 0.5) * rise;
  }

  /** The middle of a cell in a layer, world. */
  Vec3 point(int layer, int cell) {
    return frame.toWorld(new Vec3(u(cell % across), v(cell / across), w(layer)));
  }

  /** The cell over a place of the frame, or −1 outside. */
  int cellAt(double u, double v) {
    int i = (int) Math.floor((u - u0) / step);
    int j = (int) Math.floor((v - v0) / step);
    return i < 0 || j < 0 || i >= across || j >= along ? -1 : j * across + i;
  }

  /** The layer at a height of the frame, or −1 outside. */
  int layerAt(double w) {
    int k = (int) Math.floor((w - w0) / rise);
    return k < 0 || k >= layers ? -1 : k;
  }
}
