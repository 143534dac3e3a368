package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.division.Division;
import org.castwright.division.Sheet;
import org.castwright.geom.Vec3;
import org.castwright.parting.BlockBox;
import org.castwright.survey.Raster;

/**
 * Keys between pieces that leave along any pulls. Each stands on the piece that leaves first,
 * points back along its pull into a later piece, and has the sheet leveled round its foot.
 */
final class SheetKeys {

  /** Keys on a sheet at most. */
  private static final int MOST = 4;

  /** Places are tried so far apart, mm. */
  private static final double STEP = 2.5;

  /** Rise of the sheet across a foot that can be leveled, as a share of the foot's radius. */
  private static final double MOST_RISE = 0.7;

  /** How far the sheet is leveled past the socket, and takes to be itself again, mm. */
  private static final double PAST = 1;

  private static final double BLEND = 2;
  private static final double LEAST_DIAMETER = 4;
  private static final int ROUND = 8;

  /** Least material round a socket, mm. */
  private static final double ROOF = 2;

  private final Division division;
  private final BlockBox box;
  private final Sizes sizes;
  private final MoldOptions options;
  private final List<Key> keys = new ArrayList<>();

  SheetKeys(Division division, BlockBox box, Sizes sizes, MoldOptions options) {
    this.division = division;
    this.box = box;
    this.sizes = sizes;
    this.options = options;
  }

  /** Places keys and levels the sheets under them. */
  List<Key> place() {
    int n = division.sheets().size();
    int most = options.keyCount() > 0 ? Math.max(2, options.keyCount() / n) : MOST;
    for (int i = 0; i < n; i++) {
      for (double d = sizes.keyDiameter(); d >= LEAST_DIAMETER; d--) {
        List<double[]> places = places(i, d / 2);
        List<double[]> picked = Spread.pick(places, most, 3 * d);
        if (picked.size() >= 2 || (d - 1 < LEAST_DIAMETER && !picked.isEmpty())) {
          add(i, d / 2, picked);
          break;
        }
      }
    }
    return List.copyOf(keys);
  }

  private void add(int piece, double radius, List<double[]> picked) {
    Sheet sheet = division.sheets().get(piece);
    for (double[] p : picked) {
      sheet.level(p[0], p[1], radius + options.clearance() + PAST, BLEND);
      Vec3 foot = sheet.frame().toWorld(new Vec3(p[0], p[1], sheet.heightAt(p[0], p[1])));
      keys.add(
          new Key(
              "key-" + (keys.size() + 1),
              options.keyShape(),
              foot,
              sheet.frame().w().negate(),
              radius,
              height(radius),
              options.clearance(),
              piece + 1,
              (int) p[2] + 1));
    }
  }

  private double height(double radius) {
    return (options.keyShape() == KeyShape.DOME ? 0.9 : 1) * radius;
  }

  /** Free places on a sheet: x and y across its pull, and the piece below. */
  private List<double[]> places(int piece, double radius) {
    Sheet sheet = division.sheets().get(piece);
    Raster r = sheet.raster();
    List<double[]> out = new ArrayList<>();
    for (double y = r.y0(); y < r.y0() + r.ny() * r.pixel(); y += STEP) {
      for (double x = r.x0(); x < r.x0() + r.nx() * r.pixel(); x += STEP) {
        int below = below(sheet, piece, x, y, radius);
        if (below > piece) {
          out.add(new double[] {x, y, below});
        }
      }
    }
    return out;
  }

  /** The piece that a key would stand in, or -1 where it may not stand. */
  private int below(Sheet sheet, int piece, double x, double y, double radius) {
    double z = sheet.heightAt(x, y);
    Vec3 foot = sheet.frame().toWorld(new Vec3(x, y, z));
    double reach = radius + options.clearance() + PAST;
    double room = reach + sizes.keyGap();
    if (inBox(foot) < room + 1 || division.toCasting(foot) < room + BLEND) {
      return -1;
    }
    int other = -1;
    for (int k = 0; k <= ROUND; k++) {
      double a = 2 * Math.PI * k / ROUND;
      double at = k == ROUND ? 0 : reach + BLEND;
      double u = x + at * StrictMath.cos(a);
      double v = y + at * StrictMath.sin(a);
      double h = sheet.heightAt(u, v);
      if (Math.abs(h - z) > MOST_RISE * (reach + BLEND)) {
        return -1;
      }
      double up = Math.max(h, z) + ROOF;
      double down = Math.min(h, z) - height(radius) - options.clearance() - ROOF;
      Vec3 high = sheet.frame().toWorld(new Vec3(u, v, up));
      Vec3 low = sheet.frame().toWorld(new Vec3(u, v, down));
      Vec3 under = sheet.frame().toWorld(new Vec3(u, v, Math.min(h, z) - ROOF / 2));
      int p = division.pieceAt(low);
      boolean clear =
          division.toCasting(low) > sizes.keyGap()
              && inBox(low) > ROOF
              && division.pieceAt(high) == piece
              && division.pieceAt(under) == p
              && (other < 0 || other == p);
      if (!clear || p <= piece) {
        return -1;
      }
      other = p;
    }
    return far(foot, radius) ? other : -1;
  }

  private boolean far(Vec3 foot, double radius) {
    for (Key k : keys) {
      if (k.center().minus(foot).length() < k.height() + k.radius() + 2 * radius + sizes.keyGap()) {
        return false;
      }
    }
    return true;
  }

  /** Distance to the nearest wall of the block, below zero outside, mm. */
  private double inBox(Vec3 p) {
    double x = Math.min(p.x() - box.x0(), box.x1() - p.x());
    double y = Math.min(p.y() - box.y0(), box.y1() - p.y());
    double z = Math.min(p.z() - box.z0(), box.z1() - p.z());
    return Math.min(x, Math.min(y, z));
  }
}
