package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.Channel.Station;
import org.castwright.seams.ShadowFreedom;
import org.castwright.survey.Raster;
import org.castwright.survey.SolidCells;

/**
 * Whether pieces along any pulls still open a mold when channels straight up are part of its
 * casting. They do exactly when every point of the mold's space sees one of the pulls past casting
 * and channels (the cover theorem, see the room {@code cover}). Looked at are the points of a grid
 * through the block and points round the channel itself.
 */
final class Releases {

  /** Cells of the grid along the block's longest side. */
  private static final int CELLS = 64;

  /** Columns of the images of the casting, along their longer side. */
  private static final int PIXELS = 1000;

  /** Sides of a channel that are looked at, and how far apart its rings lie, mm. */
  private static final int SIDES = 24;

  private static final double RING = 1.5;

  /** How far off the channel those points lie, mm. */
  private static final double OFF = 0.2;

  /** A way that grazes a channel by less is not barred, mm. */
  private static final double GRAZE = 0.1;

  /** A side of a channel that leans under by more (sine) holds a piece. */
  private static final double LEANS = 0.002;

  /** Places along a way at which a channel's width is looked at. */
  private static final int LOOKS = 9;

  /** Keeps divisions off zero. */
  private static final double LEVEL = 1e-9;

  private final List<Vec3> pulls;
  private final ShadowFreedom casting;
  private final Roof roof;
  private final double top;
  private final double[] points;
  private final int[] masks;
  private final List<Channel> taken = new ArrayList<>();

  /**
   * @param casting closed, mold frame, mm
   * @param block the box of the block
   * @param pulls unit vectors in the mold frame
   * @param releaseMm width of catch that counts as free
   */
  Releases(TriMesh casting, Box3 block, List<Vec3> pulls, double releaseMm) {
    this.pulls = pulls;
    this.casting = ShadowFreedom.of(casting, pulls, releaseMm, PIXELS);
    roof = new Roof(casting);
    top = block.max().y();
    points = space(casting, block);
    masks = new int[points.length / 3];
    IntStream.range(0, masks.length)
        .parallel()
        .forEach(
            i -> masks[i] = this.casting.at(points[3 * i], points[3 * i + 1], points[3 * i + 2]));
  }

  private Releases(Releases o) {
    pulls = o.pulls;
    casting = o.casting;
    roof = o.roof;
    top = o.top;
    points = o.points;
    masks = o.masks.clone();
    taken.addAll(o.taken);
  }

  /** The same, to go on from by itself. */
  Releases copy() {
    return new Releases(this);
  }

  /** Centers of the cells of the block that are not the casting's. */
  private static double[] space(TriMesh casting, Box3 block) {
    double cell = block.longestSide() / CELLS;
    Vec3 low = block.min().plus(new Vec3(cell, cell, cell).times(0.5));
    int nx = (int) Math.ceil(block.size().x() / cell);
    int ny = (int) Math.ceil(block.size().y() / cell);
    int nz = (int) Math.ceil(block.size().z() / cell);
    boolean[] solid =
        SolidCells.of(casting, new Raster(low.x(), low.y(), cell, nx, ny), low.z(), nz);
    double[] out =
        new double[3 * (int) IntStream.range(0, solid.length).filter(c -> !solid[c]).count()];
    int n = 0;
    for (int c = 0; c < solid.length; c++) {
      if (!solid[c]) {
        int row = c / nx;
        out[n++] = low.x() + cell * (c % nx);
        out[n++] = low.y() + cell * (row % ny);
        out[n++] = low.z() + cell * Math.floorDiv(row, ny);
      }
    }
    return out;
  }

  /** Makes a channel part of what pieces must get past. */
  void take(Channel c) {
    for (int i = 0; i < masks.length; i++) {
      masks[i] = within(c, point(i)) ? 0 : past(c, point(i), masks[i]);
    }
    taken.add(c);
  }

  /** Whether the mold still opens with one more channel. */
  boolean with(Channel c) {
    for (int i = 0; i < masks.length; i++) {
      if (masks[i] != 0 && past(c, point(i), masks[i]) == 0 && !within(c, point(i))) {
        return false;
      }
    }
    return sidesLeft(c);
  }

  private Vec3 point(int i) {
    return new Vec3(points[3 * i], points[3 * i + 1], points[3 * i + 2]);
  }

  /** Whether all round the channel some piece leaves it, past the casting and the others. */
  private boolean sidesLeft(Channel c) {
    List<Station> s = c.stations();
    for (int k = 1; k + 2 < s.size(); k++) {
      double y0 = s.get(k).center().y();
      double length = s.get(k + 1).center().y() - y0;
      double slope = length > 0 ? (s.get(k + 1).radius() - s.get(k).radius()) / length : 0;
      for (double y = Math.max(y0, c.inner().y()); y < Math.min(top, y0 + length); y += RING) {
        if (!ringLeft(c, y, s.get(k).radius() + slope * (y - y0), slope)) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean ringLeft(Channel c, double y, double radius, double slope) {
    for (int k = 0; k < SIDES; k++) {
      double a = 2 * Math.PI * k / SIDES;
      Vec3 out = new Vec3(StrictMath.cos(a), -slope, StrictMath.sin(a)).unit();
      Vec3 p =
          new Vec3(
              c.inner().x() + (radius + OFF) * StrictMath.cos(a),
              y,
              c.inner().z() + (radius + OFF) * StrictMath.sin(a));
      Vec3 under = roof.at(p);
      if (under != null && under.y() > p.y() - OFF) {
        continue; // inside the casting, on the side where its roof rises
      }
      int free = casting.at(p.x(), p.y(), p.z());
      for (Channel other : taken) {
        free = within(other, p) ? 0 : past(other, p, free);
      }
      boolean left = false;
      for (int i = 0; i < pulls.size() && !left; i++) {
        left = (free & 1 << i) != 0 && out.dot(pulls.get(i)) >= -LEANS;
      }
      if (!left) {
        return false;
      }
    }
    return true;
  }

  /** Those of the pulls in a mask along which a point gets past a channel. */
  private int past(Channel c, Vec3 p, int mask) {
    int out = mask;
    for (int i = 0; i < pulls.size(); i++) {
      if ((mask & 1 << i) != 0 && bars(c, p, pulls.get(i))) {
        out &= ~(1 << i);
      }
    }
    return out;
  }

  /** Whether a way along a pull runs through a channel. */
  private static boolean bars(Channel c, Vec3 p, Vec3 pull) {
    List<Station> s = c.stations();
    double foot = s.get(0).center().y();
    double head = s.get(s.size() - 1).center().y();
    double dx = p.x() - c.inner().x();
    double dz = p.z() - c.inner().z();
    double flat = Math.max(LEVEL, pull.x() * pull.x() + pull.z() * pull.z());
    double widest = s.stream().mapToDouble(Station::radius).max().orElse(0);
    double nearest = -(dx * pull.x() + dz * pull.z()) / flat;
    double off2 = dx * dx + dz * dz - nearest * nearest * flat;
    if (off2 >= widest * widest) {
      return false;
    }
    double half = Math.sqrt((widest * widest - off2) / flat);
    double steep = Math.max(LEVEL, Math.abs(pull.y()));
    double toFoot = (pull.y() < 0 ? p.y() - head : foot - p.y()) / steep;
    double toHead = (pull.y() < 0 ? p.y() - foot : head - p.y()) / steep;
    double from = Math.max(Math.max(0, nearest - half), toFoot);
    double to = Math.min(nearest + half, toHead);
    for (int k = 0; k <= LOOKS && to > from; k++) {
      if (within(c, p.plus(pull.times(from + (to - from) * k / LOOKS)))) {
        return true;
      }
    }
    return false;
  }

  private static boolean within(Channel c, Vec3 p) {
    double off = Math.hypot(p.x() - c.inner().x(), p.z() - c.inner().z());
    return off < UprightCover.radiusAt(c.stations(), p.y()) - GRAZE;
  }
}
