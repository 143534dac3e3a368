package org.castwright.plan;

import java.util.List;
import org.castwright.geom.Vec3;

/**
 * A gate or a vent: a passage from the cavity to the outside of the block.
 *
 * @param name for the report
 * @param kind gate or vent
 * @param course how it runs
 * @param stations from inside the cavity to past the outside of the block; at least two
 * @param inner a point of its axis inside the casting
 * @param outer the point of its axis on the outside of the block
 * @param boreMm least diameter
 * @param mouthMm diameter where it leaves the block
 */
public record Channel(
    String name,
    Kind kind,
    Course course,
    List<Station> stations,
    Vec3 inner,
    Vec3 outer,
    double boreMm,
    double mouthMm) {

  /**
   * A channel from its cross-sections: the last lies past the outside, the one before it on it.
   *
   * @param radius of the bore, mm
   * @param mouth radius at the outside, mm
   */
  static Channel of(
      String name,
      boolean gate,
      Course course,
      List<Station> stations,
      double radius,
      double mouth) {
    return new Channel(
        name,
        gate ? Kind.GATE : Kind.VENT,
        course,
        stations,
        stations.get(0).center(),
        stations.get(stations.size() - 2).center(),
        2 * radius,
        2 * mouth);
  }

  /** What it is for. */
  public enum Kind {
    GATE,
    VENT
  }

  /**
   * Along the seam, half in each piece; straight along the pull through piece 1; or straight up
   * (along y) between whichever pieces are there.
   */
  public enum Course {
    SEAM,
    PULL,
    UP
  }

  /**
   * One cross-section. Along the seam it is a circle cut at its widest place and drawn apart by
   * twice {@code rise}, so that both halves open along the pull though the sheet tilts across it.
   *
   * @param center on the axis, mold frame
   * @param radius mm
   * @param rise half the height of the straight flank, mm; 0 for a channel along the pull
   */
  public record Station(Vec3 center, double radius, double rise) {}
}
