package org.castwright.seams;

import java.util.Arrays;
import java.util.function.UnaryOperator;
import org.castwright.geom.Vec3;

/** A part of the casting's surface; boxes and balls in the casting's own frame, mm. */
public sealed interface Region {

  /** Whether a point of the surface, lying on the casting's facet given, belongs to the region. */
  boolean holds(int facet, double x, double y, double z);

  /** All of the surface inside an axis-aligned box, its faces included. */
  record Box(Vec3 min, Vec3 max) implements Region {

    /** Checks the order of the corners. */
    public Box {
      if (!(min.x() <= max.x() && min.y() <= max.y() && min.z() <= max.z())) {
        throw new IllegalArgumentException("a box needs min no larger than max on each axis");
      }
    }

    @Override
    public boolean holds(int facet, double x, double y, double z) {
      return x >= min.x()
          && x <= max.x()
          && y >= min.y()
          && y <= max.y()
          && z >= min.z()
          && z <= max.z();
    }
  }

  /** All of the surface within a distance of a point. */
  record Ball(Vec3 center, double radius) implements Region {

    /** Checks the radius. */
    public Ball {
      if (!(radius > 0) || Double.isInfinite(radius)) {
        throw new IllegalArgumentException("a sphere needs a radius above zero");
      }
    }

    @Override
    public boolean holds(int facet, double x, double y, double z) {
      double dx = x - center.x();
      double dy = y - center.y();
      double dz = z - center.z();
      return dx * dx + dy * dy + dz * dz <= radius * radius;
    }
  }

  /** Painted facets, by their numbers in the casting, from 0. */
  final class Painted implements Region {

    private final int[] sorted;

    public Painted(int... facets) {
      sorted = facets.clone();
      Arrays.sort(sorted);
    }

    @Override
    public boolean holds(int facet, double x, double y, double z) {
      return Arrays.binarySearch(sorted, facet) >= 0;
    }

    /** The facets' numbers, ascending. */
    public int[] facets() {
      return sorted.clone();
    }

    @Override
    public boolean equals(Object o) {
      return o instanceof Painted p && Arrays.equals(sorted, p.sorted);
    }

    @Override
    public int hashCode() {
      return Arrays.hashCode(sorted);
    }

    /** The largest facet number, or -1 for an empty region. */
    public int largest() {
      return sorted.length == 0 ? -1 : sorted[sorted.length - 1];
    }
  }

  /**
   * A region described in another frame than the casting's.
   *
   * @param toRegion carries a point from the casting's frame to the region's
   */
  record Placed(Region region, UnaryOperator<Vec3> toRegion) implements Region {

    @Override
    public boolean holds(int facet, double x, double y, double z) {
      Vec3 p = toRegion.apply(new Vec3(x, y, z));
      return region.holds(facet, p.x(), p.y(), p.z());
    }
  }
}
