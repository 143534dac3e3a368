package org.castwright.stretch;

import org.castwright.geom.Vec3;

/** What has been measured of one place along one pull so far. */
final class Tally {

  private int cells;
  private double volume;
  private Vec3 sum = Vec3.ZERO;
  private double depth;
  private double width;
  private double lipWidth;
  private double throatWidth;
  private double widthStrain;
  private double girthStrain;

  void cell(Vec3 p, double cellVolume) {
    cells++;
    volume += cellVolume;
    sum = sum.plus(p.times(cellVolume));
  }

  void depth(double mm) {
    depth = Math.max(depth, mm);
  }

  /** The mold gives way by {@code mm}. */
  void width(double mm) {
    width = Math.max(width, mm);
  }

  void widths(double lip, double throat) {
    double strain = lip / throat - 1;
    if (strain > widthStrain) {
      widthStrain = strain;
      lipWidth = lip;
      throatWidth = throat;
    }
  }

  void girths(double lip, double throat) {
    girthStrain = Math.max(girthStrain, lip / throat - 1);
  }

  /** No stretching frees this place. */
  void fast(double lip) {
    widthStrain = Double.POSITIVE_INFINITY;
    lipWidth = Math.max(lipWidth, lip);
    throatWidth = 0;
  }

  int cells() {
    return cells;
  }

  double width() {
    return width;
  }

  double strain() {
    return Math.max(widthStrain, girthStrain);
  }

  StretchPlace place(Vec3 pull, double limit) {
    return new StretchPlace(
        sum.times(1 / volume),
        pull,
        volume,
        depth,
        width,
        lipWidth,
        throatWidth,
        widthStrain,
        girthStrain,
        limit);
  }
}
