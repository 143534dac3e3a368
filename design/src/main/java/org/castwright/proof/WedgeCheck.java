package org.castwright.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * The thinnest wedge of a piece along its shut-off faces: along the edges where such a face meets
 * the cavity, or another shut-off face at a convex edge. At places {@value #SPACING} mm apart the
 * angle is measured in which material of the piece is seen from the edge, square to the edge, out
 * to {@value #REACH} mm, so the angle does not hang on slivers; where both triangles are higher
 * than half of that, it is at least the angle between them. Edges at which the surface turns by
 * less than 30° or inward are no wedge; edges shorter than {@value #SHORTEST} mm are left out
 * (their direction says little), and so is what is finer than {@value #STEP}°.
 */
final class WedgeCheck {

  private static final double SPACING = 0.5;
  private static final double REACH = 0.4;
  private static final double SHORTEST = 0.1;

  /** Degrees between the directions tried. */
  private static final int STEP = 3;

  /** Halvings of a step where material begins or ends: down to 0.2°. */
  private static final int HALVINGS = 4;

  /** Distances, as shares of the reach, at which a direction must hold material. */
  private static final double[] SHARES = {0.25, 0.5, 1};

  /** What a facet faces is asked this far from the edge, mm: beyond what counts as touching. */
  private static final double BESIDE = 0.05;

  /** Surfaces that turn less than this (cosine) have no edge: 30°. */
  private static final double ONE_FACE = 0.87;

  /** Triangles lower than this over their edge, mm, say nothing about how a surface turns. */
  private static final double SLIVER = 0.01;

  /** Triangles at least this high over their edge, mm, have the edge's angle between them. */
  private static final double PLAIN = REACH / 2;

  private final TriMesh mesh;
  private final Faces faces;
  private final Frame frame;
  private final ColumnQuery.Probe probe;
  private final List<Vec3> places = new ArrayList<>();
  private double limit;
  private double least = 360;
  private Vec3 where = Vec3.ZERO;
  private boolean byCavity;
  private double judged;
  private double leftOut;

  private WedgeCheck(Body piece, Faces faces, Columns columns) {
    this.mesh = piece.mesh();
    this.faces = faces;
    this.frame = columns.frame();
    this.probe = columns.probe();
  }

  /**
   * Measures one piece.
   *
   * @param columns of the same piece, seen any way
   */
  static ProofCheck of(Body piece, Faces faces, Columns columns, ProofLimits limits) {
    WedgeCheck check = new WedgeCheck(piece, faces, columns);
    check.walk(limits.wedgeDegrees());
    return check.judge(piece.name(), limits);
  }

  private ProofCheck judge(String piece, ProofLimits limits) {
    boolean passed = least >= limits.wedgeDegrees();
    String words =
        judged == 0
            ? piece + " has no edge between cavity and shut-off face"
            : "The thinnest wedge of "
                + piece
                + " along its shut-off faces has "
                + String.format(Locale.ROOT, "%.1f°, near ", least)
                + Say.place(where)
                + (byCavity ? ", by the cavity" : ", between shut-off faces");
    String rest =
        String.format(
            Locale.ROOT,
            " (%.0f mm of edges judged, %.1f mm in edges under %.1f mm left out)",
            judged,
            leftOut,
            SHORTEST);
    return new ProofCheck(
            "wedge: " + piece,
            passed || limits.allowCaught(),
            least,
            limits.wedgeDegrees(),
            "° at least",
            words + rest + Say.ending(passed, limits.allowCaught()))
        .curedAt(ProofCheck.Cure.EDGES, piece, places);
  }

  private void walk(double limit) {
    this.limit = limit;
    int[] tri = mesh.tri();
    EdgeTable table = new EdgeTable(tri);
    double since = SPACING / 2;
    for (int h = 0; h < tri.length; h++) {
      int other = table.opposite(h);
      if (other < h || !counts(h, other)) {
        continue;
      }
      Vec3 from = mesh.vertex(tri[h]);
      Vec3 along = mesh.vertex(tri[Outline.next(h)]).minus(from);
      double length = along.length();
      if (length < SHORTEST) {
        leftOut += length;
        continue;
      }
      judged += length;
      since += length;
      // an edge gives its middle, or places evenly along it
      int places = (int) (since / SPACING);
      since -= places * SPACING;
      for (int k = 0; k < places; k++) {
        measure(h, other, from.plus(along.times((k + 0.5) / places)), along.unit());
      }
    }
  }

  /** Whether a shut-off face ends at this edge, at the cavity or at another shut-off face. */
  private boolean counts(int h, int other) {
    Vec3 a = mesh.areaVector(h / 3);
    Vec3 b = mesh.areaVector(other / 3);
    boolean rough = sliver(h) || sliver(other);
    if (!rough && (a.dot(b) > ONE_FACE * a.length() * b.length() || !convex(h, other))) {
      return false;
    }
    FaceKind k = faces.at(beside(h));
    FaceKind l = faces.at(beside(other));
    boolean cavity = k == FaceKind.CAVITY || l == FaceKind.CAVITY;
    boolean shutOff = k == FaceKind.SHUT_OFF || l == FaceKind.SHUT_OFF;
    return shutOff && (cavity || (k == l && !rough));
  }

  /** A point of the facet of a half-edge, close to the middle of the edge. */
  private Vec3 beside(int h) {
    int[] tri = mesh.tri();
    Vec3 from = mesh.vertex(tri[h]);
    Vec3 to = mesh.vertex(tri[Outline.next(h)]);
    Vec3 middle = from.plus(to).times(0.5);
    Vec3 in = mesh.vertex(tri[Outline.next(Outline.next(h))]).minus(middle);
    return middle.plus(in.times(Math.min(1.0 / 3, BESIDE / in.length())));
  }

  private boolean sliver(int h) {
    return lower(h, SLIVER);
  }

  /** Whether a triangle's height over its half-edge is less than this. */
  private boolean lower(int h, double height) {
    Vec3 edge = mesh.vertex(mesh.tri()[Outline.next(h)]).minus(mesh.vertex(mesh.tri()[h]));
    return 2 * mesh.areaVector(h / 3).length() < height * edge.length();
  }

  /** Degrees inside between the triangles at an edge, 0 if one is too low to tell. */
  private double between(int h, int other) {
    if (lower(h, PLAIN) || lower(other, PLAIN)) {
      return 0;
    }
    Vec3 a = mesh.areaVector(h / 3);
    Vec3 b = mesh.areaVector(other / 3);
    double turn = Math.toDegrees(StrictMath.atan2(a.cross(b).length(), a.dot(b)));
    return convex(h, other) ? 180 - turn : 180 + turn;
  }

  private boolean convex(int h, int other) {
    int apex = mesh.tri()[Outline.next(Outline.next(other))];
    return mesh.areaVector(h / 3).dot(mesh.vertex(apex).minus(mesh.vertex(mesh.tri()[h]))) < 0;
  }

  private void measure(int h, int other, Vec3 p, Vec3 along) {
    // wider than this it neither fails nor is the thinnest
    double enough = Math.max(limit, least);
    double between = between(h, other);
    if (between >= enough) {
      return;
    }
    double angle = Math.max(angle(p, Frame.along(along), enough), between);
    if (angle < limit) {
      places.add(p);
    }
    if (angle < least) {
      least = angle;
      where = p;
      byCavity =
          faces.at(beside(h)) == FaceKind.CAVITY || faces.at(beside(other)) == FaceKind.CAVITY;
    }
  }

  /** Degrees round {@code p}, across the third axis, in which material is seen, up to enough. */
  private double angle(Vec3 p, Frame f, double enough) {
    double sum = 0;
    boolean before = seen(p, f, -STEP);
    for (int degrees = 0; degrees < 360 && sum < enough; degrees += STEP) {
      boolean now = seen(p, f, degrees);
      if (before && now) {
        sum += STEP;
      } else if (before != now) {
        double share = edge(p, f, degrees - STEP, degrees, before);
        sum += before ? share : STEP - share;
      }
      before = now;
    }
    return sum;
  }

  /** Degrees after {@code low} at which material ends or begins. */
  private double edge(Vec3 p, Frame f, double low, double high, boolean atLow) {
    double a = low;
    double b = high;
    for (int k = 0; k < HALVINGS; k++) {
      double mid = (a + b) / 2;
      if (seen(p, f, mid) == atLow) {
        a = mid;
      } else {
        b = mid;
      }
    }
    return (a + b) / 2 - low;
  }

  private boolean seen(Vec3 p, Frame f, double degrees) {
    double c = StrictMath.cos(Math.toRadians(degrees));
    double s = StrictMath.sin(Math.toRadians(degrees));
    Vec3 way = f.u().times(c).plus(f.v().times(s));
    for (double share : SHARES) {
      Vec3 q = frame.toLocal(p.plus(way.times(share * REACH)));
      if (!probe.at(q.x(), q.y()).holds(0, q.z())) {
        return false;
      }
    }
    return true;
  }
}
