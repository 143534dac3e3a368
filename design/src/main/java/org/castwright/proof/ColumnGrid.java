package org.castwright.proof;

import org.castwright.geom.Box3;

/** A square grid of columns along the w axis of a frame, each standing for one cell of area. */
record ColumnGrid(double u0, double v0, double step, int across, int along) {

  /** A grid over the footprint of a box given in the frame. */
  static ColumnGrid over(Box3 local, int cellsOnLongestSide) {
    double du = local.size().x();
    double dv = local.size().y();
    double step = Math.max(du, dv) / cellsOnLongestSide;
    return new ColumnGrid(
        local.min().x(),
        local.min().y(),
        step,
        Math.max(1, (int) Math.ceil(du / step)),
        Math.max(1, (int) Math.ceil(dv / step)));
  }

  double u(int i) {
    return u0 + (i + 0.5) * step;
  }

  double v(int j) {
    return v0 + (j + 0.5) * step;
  }

  int cells() {
    return across * along;
  }

  double cellArea() {
    return step * step;
  }

  /** The first column at or after {@code u}, as {@link #u(int)} computes it. */
  int firstAcross(double u) {
    int i = (int) Math.max(0, Math.min(across, Math.ceil((u - u0) / step - 0.5)));
    while (i > 0 && u(i - 1) >= u) {
      i--;
    }
    while (i < across && u(i) < u) {
      i++;
    }
    return i;
  }

  /** The first row at or after {@code v}. */
  int firstAlong(double v) {
    int j = (int) Math.max(0, Math.min(along, Math.ceil((v - v0) / step - 0.5)));
    while (j > 0 && v(j - 1) >= v) {
      j--;
    }
    while (j < along && v(j) < v) {
      j++;
    }
    return j;
  }
}
