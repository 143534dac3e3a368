package org.castwright.coupon;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.mold.KeyBody;
import org.castwright.plan.Key;
import org.castwright.plan.KeyShape;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * The four bodies to print.
 *
 * @param key a key on a grip, to be tried in each socket
 * @param sockets a bar with a socket for each gap, marked by 1, 2, ... pits
 * @param bar an open trough with ridges across its floor; cast a bar in it
 * @param plate a tray with a bore of each size through its floor, marked by pits
 */
public record Coupon(TriMesh key, TriMesh sockets, TriMesh bar, TriMesh plate) {

  private static final int SIDES = 48;

  /** Solid round a socket or under it, mm; common practice, no source. */
  private static final double AROUND = 3;

  private static final double GRIP = 8;

  /** A pit to count, mm across and deep, and from pit to pit. */
  private static final double PIT = 1.2;

  private static final double PIT_DEEP = 0.6;
  private static final double PITCH = 1.9;

  /** The trough: floor, wall, room for the bar, mm, and how far its sides lean for its length. */
  private static final double FLOOR = 4;

  private static final double DEEP = 10;
  private static final double WIDE = 14;
  private static final double LEAN = 0.8;
  private static final double END = 8;

  /** A ridge across the trough's floor, half its foot and its height, mm. */
  private static final double RIDGE = 0.8;

  /** Length of the plate's bores and depth of its tray, mm. */
  private static final double BORED = 8;

  private static final double TRAY = 5;

  /** How far a tool reaches out of what it cuts, mm. */
  private static final double PAST = 1;

  /** Makes the bodies. */
  public static Coupon of(CouponOptions o, SolidKernel kernel) {
    return new Coupon(
        snapped(key(o, kernel)),
        snapped(sockets(o, kernel)),
        snapped(bar(o, kernel)),
        snapped(plate(o, kernel)));
  }

  private static TriMesh snapped(Solid s) {
    return FloatGrid.snap(s.mesh());
  }

  private static Key key(CouponOptions o, Vec3 foot, double gap) {
    // as high as a mold's keys are
    double height = (o.keyShape() == KeyShape.DOME ? 0.45 : 0.5) * o.keyMm();
    return new Key("key", o.keyShape(), foot, o.keyMm() / 2, height, gap);
  }

  private static Solid key(CouponOptions o, SolidKernel kernel) {
    double half = o.keyMm() / 2 + AROUND;
    Solid grip =
        kernel.solid("grip", Primitives.box(new Vec3(-half, -half, 0), new Vec3(half, half, GRIP)));
    Solid bump = kernel.solid("bump", KeyBody.key(key(o, new Vec3(0, 0, GRIP), 0)));
    return kernel.union("key", List.of(grip, bump));
  }

  /** From socket to socket, so that the pits fit beside each other too. */
  private static double socketStep(CouponOptions o) {
    double widest = o.gapsMm().get(o.gapsMm().size() - 1);
    return Math.max(o.keyMm() + 4 * widest + AROUND, o.gapsMm().size() * PITCH + AROUND);
  }

  private static Solid sockets(CouponOptions o, SolidKernel kernel) {
    double widest = o.gapsMm().get(o.gapsMm().size() - 1);
    double step = socketStep(o);
    double reach = o.keyMm() / 2 + 2 * widest;
    double thick = o.keyMm() / 2 + widest + 2 * AROUND;
    int n = o.gapsMm().size();
    Vec3 lo = new Vec3(-step / 2, -reach - AROUND - PIT - AROUND, 0);
    Vec3 hi = new Vec3((n - 0.5) * step, reach + AROUND, thick);
    Solid body = kernel.solid("bar of sockets", Primitives.box(lo, hi));
    List<Solid> tools = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      // made upright and turned over, to open upward
      TriMesh upright = KeyBody.socket(key(o, Vec3.ZERO, o.gapsMm().get(i)));
      TriMesh over = upright.toLocal(OVER).translated(new Vec3(i * step, 0, thick));
      tools.add(kernel.solid("socket " + (i + 1), over));
      tools.addAll(pits(i + 1, new Vec3(i * step, lo.y() + AROUND, thick), kernel));
    }
    return kernel.difference("sockets", body, tools);
  }

  /** Half a turn about x. */
  private static final org.castwright.geom.Frame OVER =
      new org.castwright.geom.Frame(Vec3.X, Vec3.Y.negate(), Vec3.Z.negate());

  /** So many pits in a row along x, about the middle given, into a face that looks up. */
  private static List<Solid> pits(int count, Vec3 middle, SolidKernel kernel) {
    List<Solid> out = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      double x = middle.x() + (k - (count - 1) / 2.0) * PITCH;
      Vec3 lo = new Vec3(x - PIT / 2, middle.y() - PIT / 2, middle.z() - PIT_DEEP);
      Vec3 hi = new Vec3(x + PIT / 2, middle.y() + PIT / 2, middle.z() + PAST);
      out.add(kernel.solid("pit", Primitives.box(lo, hi)));
    }
    return out;
  }

  private static Solid bar(CouponOptions o, SolidKernel kernel) {
    double length = o.marksMm().get(o.marksMm().size() - 1);
    Vec3 lo = new Vec3(-END - AROUND - LEAN, -WIDE / 2 - AROUND - LEAN, 0);
    Vec3 hi = new Vec3(length + END + AROUND + LEAN, WIDE / 2 + AROUND + LEAN, FLOOR + DEEP);
    Solid box = kernel.solid("trough's block", Primitives.box(lo, hi));
    Solid room = room(-END, length + END, kernel);
    List<Solid> ridges = new ArrayList<>();
    ridges.add(ridge(0, kernel));
    for (double m : o.marksMm()) {
      ridges.add(ridge(m, kernel));
    }
    Solid open = kernel.difference("trough", box, List.of(room));
    ridges.add(0, open);
    return kernel.union("bar", ridges);
  }

  /** The room for the cast: wider above, so that the bar comes out. */
  private static Solid room(double x0, double x1, SolidKernel kernel) {
    double top = FLOOR + DEEP + PAST;
    double lean = LEAN * (DEEP + PAST) / DEEP;
    double w = WIDE / 2;
    return kernel.hull(
        "room",
        List.of(
            kernel.solid(
                "room's foot",
                Primitives.box(new Vec3(x0, -w, FLOOR), new Vec3(x1, w, FLOOR + PIT_DEEP))),
            kernel.solid(
                "room's top",
                Primitives.box(
                    new Vec3(x0 - lean, -w - lean, top - PIT_DEEP),
                    new Vec3(x1 + lean, w + lean, top)))));
  }

  /** A roof-shaped ridge across the floor, its edge over {@code x}. */
  private static Solid ridge(double x, SolidKernel kernel) {
    double w = WIDE / 2 + LEAN;
    double low = FLOOR - PAST;
    // its flanks reach the floor RIDGE to each side of the edge and go on below it
    double foot = RIDGE + PAST;
    double[] xyz = {
      x - foot, -w, low, x + foot, -w, low, x, -w, FLOOR + RIDGE,
      x - foot, w, low, x + foot, w, low, x, w, FLOOR + RIDGE
    };
    int[] tri = {0, 1, 2, 3, 5, 4, 0, 3, 4, 0, 4, 1, 1, 4, 5, 1, 5, 2, 2, 5, 3, 2, 3, 0};
    return kernel.solid("ridge", new TriMesh(xyz, tri));
  }

  private static Solid plate(CouponOptions o, SolidKernel kernel) {
    int n = o.boresMm().size();
    double widest = o.boresMm().get(n - 1);
    double step = Math.max(widest + AROUND, n * PITCH + AROUND);
    double half = Math.max(widest / 2 + AROUND, 8);
    Vec3 lo = new Vec3(-step / 2 - AROUND, -half - AROUND - 2 * AROUND, 0);
    Vec3 hi = new Vec3((n - 0.5) * step + AROUND, half + AROUND, BORED + TRAY);
    Solid body = kernel.solid("plate's block", Primitives.box(lo, hi));
    List<Solid> tools = new ArrayList<>();
    Vec3 trayLo = new Vec3(-step / 2, -half, BORED);
    Vec3 trayHi = new Vec3((n - 0.5) * step, half, BORED + TRAY + PAST);
    tools.add(kernel.solid("tray", Primitives.box(trayLo, trayHi)));
    for (int i = 0; i < n; i++) {
      double r = o.boresMm().get(i) / 2;
      TriMesh bore = Primitives.frustum(r, -PAST, r, BORED + PAST, SIDES);
      tools.add(kernel.solid("bore " + (i + 1), bore.translated(new Vec3(i * step, 0, 0))));
      Vec3 mark = new Vec3(i * step, lo.y() + AROUND, BORED + TRAY);
      tools.addAll(pits(i + 1, mark, kernel));
    }
    return kernel.difference("flow plate", body, tools);
  }
}
