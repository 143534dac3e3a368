package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.Channel.Station;

/** Closed meshes whose union is the bore of a channel. */
public final class ChannelBody {

  /** Segments of half a bore's circle. */
  private static final int HALF = 12;

  private static final int SIDES = 48;

  /** Fewer for bores that pieces part in any direction: small facets would make small steps. */
  private static final int UP_SIDES = 32;

  /** Two stretches count as one straight run below this sine of the angle between them. */
  private static final double STRAIGHT = 1e-3;

  private ChannelBody() {}

  /** The meshes of a channel, mold frame. */
  public static List<TriMesh> of(Channel c) {
    return switch (c.course()) {
      case PULL -> List.of(upright(c.stations()));
      case UP -> List.of(straightUp(c.stations()));
      case SEAM -> alongSeam(c);
    };
  }

  /** A body of revolution about a line along y. */
  private static TriMesh straightUp(List<Station> stations) {
    double[] profile = new double[2 * stations.size()];
    Vec3 foot = stations.get(0).center();
    for (int i = 0; i < stations.size(); i++) {
      profile[2 * i] = stations.get(i).radius();
      profile[2 * i + 1] = stations.get(i).center().y() - foot.y();
    }
    // turned so that its z becomes y: to local of axes whose columns are z, x, y
    Frame turn = new Frame(Vec3.Y, Vec3.Z, Vec3.X);
    return Primitives.revolve(profile, UP_SIDES).toLocal(turn).translated(foot);
  }

  private static TriMesh upright(List<Station> stations) {
    double[] profile = new double[2 * stations.size()];
    Vec3 foot = stations.get(0).center();
    for (int i = 0; i < stations.size(); i++) {
      profile[2 * i] = stations.get(i).radius();
      profile[2 * i + 1] = stations.get(i).center().z();
    }
    return Primitives.revolve(profile, SIDES).translated(new Vec3(foot.x(), foot.y(), 0));
  }

  private static List<TriMesh> alongSeam(Channel c) {
    List<Station> all = c.stations();
    List<TriMesh> bodies = new ArrayList<>();
    bodies.add(post(all.get(0)));
    int from = 0;
    for (int i = 1; i < all.size(); i++) {
      boolean last = i == all.size() - 1;
      if (last || turns(all.get(i - 1), all.get(i), all.get(i + 1))) {
        bodies.add(tube(all.subList(from, i + 1)));
        if (!last) {
          bodies.add(post(all.get(i)));
        }
        from = i;
      }
    }
    return bodies;
  }

  private static boolean turns(Station a, Station b, Station c) {
    Vec3 p = plan(b.center().minus(a.center())).unit();
    Vec3 q = plan(c.center().minus(b.center())).unit();
    return Math.abs(p.cross(q).z()) > STRAIGHT;
  }

  private static Vec3 plan(Vec3 v) {
    return new Vec3(v.x(), v.y(), 0);
  }

  /** A straight run: like cross-sections in parallel upright planes, joined ring to ring. */
  private static TriMesh tube(List<Station> run) {
    Vec3 along = plan(run.get(run.size() - 1).center().minus(run.get(0).center())).unit();
    Vec3 side = Vec3.Z.cross(along);
    MeshBuilder m = new MeshBuilder();
    int n = 2 * (HALF + 1);
    int first = m.vertexCount();
    for (Station s : run) {
      ring(m, s, side);
    }
    cap(m, run.get(0).center(), first, n, true);
    cap(m, run.get(run.size() - 1).center(), first + n * (run.size() - 1), n, false);
    for (int j = 0; j + 1 < run.size(); j++) {
      int a = first + j * n;
      for (int i = 0; i < n; i++) {
        int k = (i + 1) % n;
        m.triangle(a + i, a + k, a + n + k);
        m.triangle(a + i, a + n + k, a + n + i);
      }
    }
    TriMesh mesh = m.build();
    return mesh.volume() < 0 ? mesh.reversed() : mesh;
  }

  /** The cross-section, counter-clockwise in the plane of {@code side} and z. */
  private static void ring(MeshBuilder m, Station s, Vec3 side) {
    for (int half = 0; half < 2; half++) {
      double rise = half == 0 ? s.rise() : -s.rise();
      for (int k = 0; k <= HALF; k++) {
        double a = Math.PI * (half + (double) k / HALF);
        Vec3 p =
            s.center()
                .plus(side.times(s.radius() * StrictMath.cos(a)))
                .plus(new Vec3(0, 0, rise + s.radius() * StrictMath.sin(a)));
        m.vertex(p.x(), p.y(), p.z());
      }
    }
  }

  private static void cap(MeshBuilder m, Vec3 center, int ring, int n, boolean start) {
    int c = m.vertex(center.x(), center.y(), center.z());
    for (int i = 0; i < n; i++) {
      int k = (i + 1) % n;
      m.triangle(c, ring + (start ? k : i), ring + (start ? i : k));
    }
  }

  /**
   * Rounds the start and the corner between two runs: the cross-section turned about its upright
   * axis.
   */
  private static TriMesh post(Station s) {
    double[] p = new double[4 * (HALF / 2 + 1)];
    int quarter = HALF / 2;
    for (int k = 0; k <= quarter; k++) {
      double a = Math.PI / 2 * k / quarter;
      double r = k == 0 ? 0 : s.radius() * StrictMath.sin(a);
      p[2 * k] = r;
      p[2 * k + 1] = -s.rise() - s.radius() * StrictMath.cos(a);
      int j = 2 * quarter + 1 - k;
      p[2 * j] = r;
      p[2 * j + 1] = s.rise() + s.radius() * StrictMath.cos(a);
    }
    return Primitives.revolve(p, SIDES).translated(s.center());
  }
}
