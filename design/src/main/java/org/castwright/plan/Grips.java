package org.castwright.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Point;

/**
 * Grips for pieces that are hard to hold: a blind hole in the outside that a wood screw of 4 mm
 * bites in, to pull by. The hole stands on the side of the block that the piece's pull comes out of
 * most squarely where it has room, beside the grooves for bands or else in one, and leaves material
 * all round. Sizes are common practice, no source.
 */
final class Grips {

  /** Hole for a screw of 4 mm, mm. */
  static final double RADIUS = 1.6;

  private static final double[] DEPTHS = {8, 6};

  /** Material round a hole and behind it, mm. */
  private static final double AROUND = 2.5;

  private static final double BEHIND = 3;

  /** Places are tried so far apart, mm; off the round numbers pieces are drawn in. */
  private static final double STEP = 2;

  private static final double OFF = 0.0137;

  /** A facet this near the outside, mm, lies on it. */
  private static final double ON = 0.01;

  private static final int ROUND = 8;
  private static final int SIDES = 32;

  /** Places tried on a side at most. */
  private static final int MOST = 400;

  private final BlockPlan block;
  private final List<Channel> channels;
  private final List<Key> keys;
  private final List<Box3> taken = new ArrayList<>();
  private final List<Box3> grooves = new ArrayList<>();
  private final List<Feature> grips = new ArrayList<>();

  /**
   * @param features that are there already
   */
  Grips(BlockPlan block, List<Channel> channels, List<Key> keys, List<Feature> features) {
    this.block = block;
    this.channels = channels;
    this.keys = keys;
    for (Feature f : features) {
      if (f.kind() != Feature.Kind.OUTLINE) {
        List<Box3> to = f.kind() == Feature.Kind.BAND_GROOVE ? grooves : taken;
        f.tools().forEach(t -> to.add(t.bounds()));
      }
    }
  }

  /** Adds a grip to a piece if there is room for one; returns whether there is. */
  boolean add(int piece, Vec3 pull, TriMesh body) {
    for (boolean grooved : new boolean[] {false, true}) {
      for (double depth : DEPTHS) {
        for (Frame side : sides(pull)) {
          double[] at = place(side, depth, grooved, body);
          if (at != null) {
            put(piece, side, at, depth);
            return true;
          }
        }
      }
    }
    return false;
  }

  /** What is said of a piece that has no room for one. */
  static String none(int piece) {
    return "Piece "
        + piece
        + " has no room for a grip: loosen it with a thin tool along its edge, or glue a tab on it.";
  }

  /** The grips added. */
  List<Feature> features() {
    return List.copyOf(grips);
  }

  /** The six sides of the block with their normals as third axis, most along the pull first. */
  private static List<Frame> sides(Vec3 pull) {
    List<Frame> out = new ArrayList<>();
    for (Vec3 axis : List.of(Vec3.X, Vec3.Y, Vec3.Z)) {
      out.add(Frame.along(axis));
      out.add(Frame.along(axis.negate()));
    }
    out.sort(Comparator.comparingDouble(f -> -f.w().dot(pull)));
    return out;
  }

  private double height(Frame side) {
    BlockBox b = block.box();
    Vec3 n = side.w();
    return Math.max(n.x() * b.x0(), n.x() * b.x1())
        + Math.max(n.y() * b.y0(), n.y() * b.y1())
        + Math.max(n.z() * b.z0(), n.z() * b.z1());
  }

  /** A place on a side, nearest the middle of what the piece has of it, or null. */
  private double[] place(Frame side, double depth, boolean grooved, TriMesh body) {
    TriMesh local = body.toLocal(side);
    double top = height(side);
    double[] box = outside(local, top);
    if (box == null) {
      return null;
    }
    List<double[]> tries = new ArrayList<>();
    double reach = RADIUS + AROUND;
    for (double v = box[1] + reach; v <= box[3] - reach; v += STEP) {
      for (double u = box[0] + reach; u <= box[2] - reach; u += STEP) {
        tries.add(new double[] {u + OFF, v + OFF});
      }
    }
    double mu = (box[0] + box[2]) / 2;
    double mv = (box[1] + box[3]) / 2;
    tries.sort(Comparator.comparingDouble(p -> Math.hypot(p[0] - mu, p[1] - mv)));
    for (double[] p : tries.subList(0, Math.min(MOST, tries.size()))) {
      boolean alone = grooved || !meets(grooves, side, p, top, depth);
      if (alone && clear(side, p, top, depth) && solid(local, p, top, depth)) {
        return p;
      }
    }
    return null;
  }

  /** What a body has of the outside: least u, v, most u, v; null if it has nothing there. */
  private static double[] outside(TriMesh local, double top) {
    double[] out = null;
    for (int f = 0; f < local.triangleCount(); f++) {
      Vec3 c = local.center(f);
      if (Math.abs(c.z() - top) < ON && local.areaVector(f).z() > 0) {
        for (int k = 0; k < 3; k++) {
          Vec3 p = local.vertex(local.tri()[3 * f + k]);
          out = out == null ? new double[] {p.x(), p.y(), p.x(), p.y()} : out;
          out[0] = Math.min(out[0], p.x());
          out[1] = Math.min(out[1], p.y());
          out[2] = Math.max(out[2], p.x());
          out[3] = Math.max(out[3], p.y());
        }
      }
    }
    return out;
  }

  private static boolean meets(
      List<Box3> boxes, Frame side, double[] at, double top, double depth) {
    Vec3 mouth = side.toWorld(new Vec3(at[0], at[1], top));
    Vec3 foot = side.toWorld(new Vec3(at[0], at[1], top - depth));
    double reach = RADIUS + AROUND;
    for (Box3 b : boxes) {
      if (Math.min(mouth.x(), foot.x()) - reach < b.max().x()
          && Math.max(mouth.x(), foot.x()) + reach > b.min().x()
          && Math.min(mouth.y(), foot.y()) - reach < b.max().y()
          && Math.max(mouth.y(), foot.y()) + reach > b.min().y()
          && Math.min(mouth.z(), foot.z()) - reach < b.max().z()
          && Math.max(mouth.z(), foot.z()) + reach > b.min().z()) {
        return true;
      }
    }
    return false;
  }

  /** Whether a hole meets no feature, channel or key, and starts on what is left of the outside. */
  private boolean clear(Frame side, double[] at, double top, double depth) {
    Vec3 mouth = side.toWorld(new Vec3(at[0], at[1], top));
    Vec3 foot = side.toWorld(new Vec3(at[0], at[1], top - depth));
    double reach = RADIUS + AROUND;
    if (meets(taken, side, at, top, depth)) {
      return false;
    }
    for (int k = 0; k <= ROUND; k++) {
      Vec3 p = mouth.plus(foot.minus(mouth).times((double) k / ROUND));
      if (nearChannel(p, reach) || nearKey(p, reach)) {
        return false;
      }
    }
    for (int k = 0; k < ROUND; k++) {
      Vec3 p = side.toWorld(ring(at, k, top - ON));
      Point q = block.outline().getFactory().createPoint(new Coordinate(p.x(), p.y()));
      if (!block.outline().covers(q)) {
        return false;
      }
    }
    return true;
  }

  private boolean nearChannel(Vec3 p, double reach) {
    for (Channel c : channels) {
      for (int i = 0; i + 1 < c.stations().size(); i++) {
        Channel.Station a = c.stations().get(i);
        Channel.Station b = c.stations().get(i + 1);
        Vec3 d = b.center().minus(a.center());
        double l2 = d.dot(d);
        double t = l2 > 0 ? Math.max(0, Math.min(1, p.minus(a.center()).dot(d) / l2)) : 0;
        double radius = Math.max(a.radius() + a.rise(), b.radius() + b.rise());
        if (p.minus(a.center().plus(d.times(t))).length() < radius + reach) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean nearKey(Vec3 p, double reach) {
    return keys.stream()
        .anyMatch(
            k ->
                p.minus(k.center()).length()
                    < Math.max(k.radius(), k.height()) + k.clearance() + reach);
  }

  private static Vec3 ring(double[] at, int k, double height) {
    double a = 2 * Math.PI * k / ROUND;
    double r = RADIUS + AROUND;
    return new Vec3(at[0] + r * StrictMath.cos(a), at[1] + r * StrictMath.sin(a), height);
  }

  /** Whether the body is solid round a hole and behind it. */
  private static boolean solid(TriMesh local, double[] at, double top, double depth) {
    double[] u = new double[ROUND + 1];
    double[] v = new double[ROUND + 1];
    for (int k = 0; k < ROUND; k++) {
      Vec3 p = ring(at, k, top);
      u[k] = p.x();
      v[k] = p.y();
    }
    u[ROUND] = at[0];
    v[ROUND] = at[1];
    boolean[] starts = new boolean[ROUND + 1];
    double[] xyz = local.xyz();
    int[] tri = local.tri();
    for (int f = 0; f < tri.length; f += 3) {
      int a = 3 * tri[f];
      int b = 3 * tri[f + 1];
      int c = 3 * tri[f + 2];
      for (int k = 0; k <= ROUND; k++) {
        double z = heightOver(xyz, a, b, c, u[k], v[k]);
        starts[k] |= Math.abs(z - top) < ON;
        if (z < top - ON && z > top - depth - BEHIND) {
          return false;
        }
      }
    }
    for (boolean s : starts) {
      if (!s) {
        return false;
      }
    }
    return true;
  }

  /** The height of a triangle over a point, or not a number beside it. */
  private static double heightOver(double[] p, int a, int b, int c, double u, double v) {
    double ab = cross(p, a, b, u, v);
    double bc = cross(p, b, c, u, v);
    double ca = cross(p, c, a, u, v);
    double sum = ab + bc + ca;
    boolean over = sum > 0 ? ab >= 0 && bc >= 0 && ca >= 0 : ab <= 0 && bc <= 0 && ca <= 0;
    return over && sum != 0 ? (ab * p[c + 2] + bc * p[a + 2] + ca * p[b + 2]) / sum : Double.NaN;
  }

  private static double cross(double[] p, int a, int b, double u, double v) {
    return (p[b] - p[a]) * (v - p[a + 1]) - (p[b + 1] - p[a + 1]) * (u - p[a]);
  }

  private void put(int piece, Frame side, double[] at, double depth) {
    double top = height(side);
    TriMesh hole =
        Primitives.frustum(RADIUS, top - depth, RADIUS, top + FeaturePlanner.PAST, SIDES)
            .translated(new Vec3(at[0], at[1], 0));
    TriMesh tool = hole.toLocal(side.inverse());
    grips.add(new Feature("grip-" + piece, Feature.Kind.GRIP, piece, List.of(tool)));
    taken.add(tool.bounds());
  }
}
