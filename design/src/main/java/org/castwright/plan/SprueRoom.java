package org.castwright.plan;

import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * What a block needs beside and under the casting for a gate at the bottom: the sprue down one side
 * and the runner from its foot.
 *
 * @param left toward −x from the casting's box to the outside, mm; 0 when the sprue is not there
 * @param right the same toward +x, mm
 * @param below under the casting's box, mm
 */
record SprueRoom(double left, double right, double below) {

  /** Nothing beyond the usual. */
  static final SprueRoom NONE = new SprueRoom(0, 0, 0);

  /** Ground between casting and sprue or runner, mm; common practice, no source. */
  static final double APART = 2;

  /** Ground between sprue or runner and the outside, mm; common practice, no source. */
  static final double WALL = 4;

  /** Ground round a funnel's mouth, mm; common practice, no source. */
  private static final double RIM = 3;

  /** For a gate of these sizes. */
  static SprueRoom of(TriMesh casting, Sizes sizes) {
    double r = sizes.gate() / 2;
    double beside = r + APART + Math.max(r + WALL, sizes.mouth() / 2 + RIM);
    boolean left = left(casting);
    return new SprueRoom(left ? beside : 0, left ? 0 : beside, 2 * r + APART + WALL);
  }

  /** The sprue stands on the side that the casting's top is farther from: there the riser goes. */
  static boolean left(TriMesh casting) {
    Box3 box = casting.bounds();
    double sum = 0;
    int tops = 0;
    for (int v = 0; v < casting.vertexCount(); v++) {
      Vec3 p = casting.vertex(v);
      if (p.y() >= box.max().y()) {
        sum += p.x();
        tops++;
      }
    }
    return sum / tops > box.center().x();
  }

  boolean any() {
    return below > 0;
  }
}
