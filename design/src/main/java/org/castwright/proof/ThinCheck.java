package org.castwright.proof;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * The thinnest places of a piece: from samples spread over its surface straight inward to where the
 * piece ends. Places where the two surfaces lean more than {@value #LEAN}° to each other, or would
 * meet within {@value #EDGE} mm, are the flanks of an edge, not a wall or web, and are left out:
 * the wedge check has those. Between cavity and outside it is a wall; anything else is a web.
 */
final class ThinCheck {

  /** Samples on a piece: a millimeter apart on one of 300 cm². */
  private static final int SAMPLES = 30_000;

  private static final double LEAN = 25;

  private static final double STEEPEST = StrictMath.tan(Math.toRadians(LEAN));

  private static final double EDGE = 2;

  /** A ray starts this far inside, mm, so that the facet it starts from is behind it. */
  private static final double INSIDE = 1e-6;

  private final TriMesh mesh;
  private final Faces faces;
  private final Bvh tree;
  private final double spacing;
  private final Place wall = new Place();
  private final Place web = new Place();

  /** Webs thinner than this are told one by one, mm. */
  private final double least;

  private final List<Vec3> webs = new ArrayList<>();

  private ThinCheck(TriMesh mesh, Faces faces, Bvh tree, double least) {
    this.least = least;
    this.mesh = mesh;
    this.faces = faces;
    this.tree = tree;
    this.spacing = mesh.area() / SAMPLES;
  }

  /** Measures one piece; gives its walls and its webs. */
  static ProofCheck[] of(Body piece, Faces faces, Bvh tree, ProofLimits limits) {
    ThinCheck check = new ThinCheck(piece.mesh(), faces, tree, limits.minimumWeb());
    check.sample();
    return new ProofCheck[] {
      check.judge(piece.name(), "wall", check.wall, limits.minimumWall(), false),
      check
          .judge(piece.name(), "web", check.web, limits.minimumWeb(), limits.allowCaught())
          .curedAt(ProofCheck.Cure.WEBS, piece.name(), check.webs)
    };
  }

  private ProofCheck judge(
      String piece, String what, Place thinnest, double limit, boolean forgiven) {
    boolean passed = thinnest.thickness >= limit;
    String words =
        Double.isInfinite(thinnest.thickness)
            ? piece + " has no " + what + " to measure."
            : "The thinnest "
                + what
                + " of "
                + piece
                + " is "
                + Say.number(thinnest.thickness)
                + " mm, near "
                + Say.place(thinnest.where)
                + ", by samples "
                + Say.number(Math.sqrt(spacing))
                + " mm apart"
                + Say.ending(passed, forgiven);
    return new ProofCheck(
        "thin: " + piece + " " + what,
        passed || forgiven,
        thinnest.thickness,
        limit,
        "mm at least",
        words);
  }

  private static final class Place {
    private double thickness = Double.POSITIVE_INFINITY;
    private Vec3 where = Vec3.ZERO;
  }

  /** Samples evenly by area, facet after facet; places on a facet by a fixed sequence. */
  private void sample() {
    double next = spacing / 2;
    int n = 0;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      Vec3 normal = mesh.areaVector(f);
      double area = normal.length();
      for (; next < area; next += spacing) {
        look(f, point(f, n++), normal.times(1 / area));
      }
      next -= area;
    }
  }

  /**
   * Point {@code n} of the R2 sequence (M. Roberts, "The unreasonable effectiveness of quasirandom
   * sequences", 2018), folded onto the triangle.
   */
  private Vec3 point(int f, int n) {
    double a = (0.5 + n * 0.7548776662466927) % 1;
    double b = (0.5 + n * 0.5698402909980532) % 1;
    if (a + b > 1) {
      a = 1 - a;
      b = 1 - b;
    }
    int[] t = mesh.tri();
    return mesh.vertex(t[3 * f])
        .times(1 - a - b)
        .plus(mesh.vertex(t[3 * f + 1]).times(a))
        .plus(mesh.vertex(t[3 * f + 2]).times(b));
  }

  private void look(int f, Vec3 p, Vec3 normal) {
    RayExit exit = tree.exit(p.minus(normal.times(INSIDE)), normal.negate());
    if (exit.face() < 0
        || exit.distance() >= Math.max(least, Math.max(wall.thickness, web.thickness))) {
      return;
    }
    double thickness = exit.distance() + INSIDE;
    if (flank(normal, mesh.areaVector(exit.face()), thickness)) {
      return;
    }
    Place place = isWall(faces.kind(f), faces.kind(exit.face())) ? wall : web;
    Vec3 middle = p.minus(normal.times(thickness / 2));
    if (place == web && thickness < least) {
      webs.add(middle);
    }
    if (thickness < place.thickness) {
      place.thickness = thickness;
      place.where = middle;
    }
  }

  /** Whether a place lies beside the edge that the surfaces at its two ends would meet in. */
  private static boolean flank(Vec3 normal, Vec3 far, double thickness) {
    double along = -far.dot(normal);
    double slope = far.cross(normal).length() / along;
    return along <= 0 || slope > STEEPEST || thickness < EDGE * slope;
  }

  private static boolean isWall(FaceKind a, FaceKind b) {
    return (a == FaceKind.CAVITY && outer(b)) || (b == FaceKind.CAVITY && outer(a));
  }

  private static boolean outer(FaceKind k) {
    return k == FaceKind.OUTSIDE || k == FaceKind.CUT;
  }
}
