package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.division.Division;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;

/**
 * Marks and pry slots on the outside of a block whose pieces leave along any pulls: a number on
 * each piece, a slot where two pieces meet.
 */
final class OuterFaces {

  private static final double STEP = 2;
  private static final double INSET = 1;

  /** Sizes of a mark tried, mm. */
  private static final double[] SIZES = {12, 9, 7, 5};

  private static final int ROUND = 12;

  /** Of a slot's height to each side, within which pieces meet. */
  private static final double SHARE = 0.4;

  /** Material left between a slot and the casting, mm. */
  private static final double BEHIND = 3;

  private final Division division;
  private final List<double[]> bands;
  private final List<Channel> channels;
  private final List<Frame> faces = new ArrayList<>();
  private final List<Vec3> middles = new ArrayList<>();
  private final List<double[]> halves = new ArrayList<>();
  private final List<Feature> features = new ArrayList<>();
  private final List<double[]> taken = new ArrayList<>();

  OuterFaces(Division division, BlockBox b, List<double[]> bands, List<Channel> channels) {
    this.division = division;
    this.bands = bands;
    this.channels = channels;
    Vec3 mid = new Vec3((b.x0() + b.x1()) / 2, (b.y0() + b.y1()) / 2, (b.z0() + b.z1()) / 2);
    double x = (b.x1() - b.x0()) / 2;
    double y = (b.y1() - b.y0()) / 2;
    double z = (b.z1() - b.z0()) / 2;
    face(mid.plus(new Vec3(0, 0, z)), new Frame(Vec3.X, Vec3.Y, Vec3.Z), x, y);
    face(mid.minus(new Vec3(0, 0, z)), new Frame(Vec3.X.negate(), Vec3.Y, Vec3.Z.negate()), x, y);
    face(mid.plus(new Vec3(x, 0, 0)), new Frame(Vec3.Z.negate(), Vec3.Y, Vec3.X), z, y);
    face(mid.minus(new Vec3(x, 0, 0)), new Frame(Vec3.Z, Vec3.Y, Vec3.X.negate()), z, y);
    face(mid.plus(new Vec3(0, y, 0)), new Frame(Vec3.X, Vec3.Z.negate(), Vec3.Y), x, z);
    face(mid.minus(new Vec3(0, y, 0)), new Frame(Vec3.X, Vec3.Z, Vec3.Y.negate()), x, z);
  }

  private void face(Vec3 middle, Frame frame, double halfU, double halfV) {
    middles.add(middle);
    faces.add(frame);
    halves.add(new double[] {halfU, halfV});
  }

  List<Feature> plan() {
    int n = division.pulls().size();
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        slot(i, j);
      }
    }
    for (int i = 0; i < n; i++) {
      mark(i);
    }
    return List.copyOf(features);
  }

  private Vec3 at(int face, double u, double v, double deep) {
    Frame f = faces.get(face);
    return middles.get(face).plus(f.u().times(u)).plus(f.v().times(v)).minus(f.w().times(deep));
  }

  /** Whether a round place on a face meets no band, no channel and nothing placed before. */
  private boolean free(int face, double u, double v, double radius) {
    double[] half = halves.get(face);
    if (Math.abs(u) + radius + INSET > half[0] || Math.abs(v) + radius + INSET > half[1]) {
      return false;
    }
    Vec3 p = at(face, u, v, 0);
    boolean upright = faces.get(face).w().y() == 0;
    for (double[] b : bands) {
      if (upright && p.y() + radius > b[0] - INSET && p.y() - radius < b[1] + INSET) {
        return false;
      }
    }
    for (Channel c : channels) {
      double d = Math.hypot(p.x() - c.outer().x(), p.z() - c.outer().z());
      if (faces.get(face).w().y() > 0 && d < radius + c.mouthMm() / 2 + INSET) {
        return false;
      }
    }
    return taken.stream()
        .noneMatch(t -> t[0] == face && Math.hypot(u - t[1], v - t[2]) < radius + t[3] + INSET);
  }

  private void mark(int piece) {
    for (double size : SIZES) {
      double radius = 0.6 * size;
      for (int f = 0; f < faces.size(); f++) {
        double[] half = halves.get(f);
        for (double v = 0; v < half[1]; v = v > 0 ? -v : STEP - v) {
          for (double u = 0; u < half[0]; u = u > 0 ? -u : STEP - u) {
            if (free(f, u, v, radius) && within(f, u, v, radius, piece)) {
              addMark(piece, f, u, v, size);
              return;
            }
          }
        }
      }
    }
  }

  private boolean within(int face, double u, double v, double radius, int piece) {
    for (int k = 0; k <= ROUND; k++) {
      double a = 2 * Math.PI * k / ROUND;
      double r = k == ROUND ? 0 : radius + 1;
      Vec3 p = at(face, u + r * StrictMath.cos(a), v + r * StrictMath.sin(a), INSET);
      if (division.pieceAt(p) != piece) {
        return false;
      }
    }
    return true;
  }

  private void addMark(int piece, int face, double u, double v, double size) {
    List<TriMesh> tools = new ArrayList<>();
    for (TriMesh t :
        FeaturePlanner.prisms(
            Glyphs.digit(piece + 1, size), -FeaturePlanner.MARK_DEPTH, FeaturePlanner.PAST)) {
      tools.add(placed(t.translated(new Vec3(u - size / 4, v - size / 2, 0)), face));
    }
    features.add(new Feature("mark-" + (piece + 1), Feature.Kind.MARK, piece + 1, tools));
    taken.add(new double[] {face, u, v, 0.6 * size});
  }

  private TriMesh placed(TriMesh local, int face) {
    Frame f = faces.get(face);
    return local.toLocal(f.inverse()).translated(middles.get(face));
  }

  /** A slot where two pieces meet on a face, across the line they meet in. */
  private void slot(int a, int b) {
    double depth = FeaturePlanner.SLOT_DEPTH;
    double reach = FeaturePlanner.SLOT_WIDTH / 2;
    for (int f = 0; f < faces.size(); f++) {
      double[] half = halves.get(f);
      for (double v = 0; v < half[1]; v = v > 0 ? -v : STEP - v) {
        for (double u = 0; u < half[0]; u = u > 0 ? -u : STEP - u) {
          double[] line = free(f, u, v, reach + 1) ? meeting(f, u, v, a, b) : null;
          if (line != null
              && division.toCasting(at(f, line[0], line[1], depth)) > reach + BEHIND
              && alone(f, line, a, b)) {
            addSlot(f, line, depth, a, b);
            return;
          }
        }
      }
    }
  }

  /** Where two pieces meet near a place: u, v and the angle of the line they meet in; or null. */
  private double[] meeting(int f, double u, double v, int a, int b) {
    int here = division.pieceAt(at(f, u, v, INSET));
    if (here != a && here != b) {
      return null;
    }
    int other = here == a ? b : a;
    for (int k = 0; k < 2; k++) {
      double p = u + (k == 0 ? STEP : 0);
      double q = v + (k == 0 ? 0 : STEP);
      if (division.pieceAt(at(f, p, q, INSET)) == other) {
        double mu = (u + p) / 2;
        double mv = (v + q) / 2;
        double d = STEP / 2;
        double gu = above(f, mu + d, mv, a) - above(f, mu - d, mv, a);
        double gv = above(f, mu, mv + d, a) - above(f, mu, mv - d, a);
        return new double[] {mu, mv, StrictMath.atan2(gv, gu) + Math.PI / 2};
      }
    }
    return null;
  }

  private double above(int f, double u, double v, int piece) {
    return division.sheets().get(piece).above(at(f, u, v, INSET));
  }

  /** Whether along the slot only these two pieces are met. */
  private boolean alone(int f, double[] line, int a, int b) {
    double c = StrictMath.cos(line[2]);
    double s = StrictMath.sin(line[2]);
    for (double t = -1; t <= 1; t += 0.25) {
      for (int side = -1; side <= 1; side += 2) {
        double along = t * FeaturePlanner.SLOT_WIDTH / 2;
        double across = side * FeaturePlanner.SLOT_HEIGHT;
        double u = line[0] + along * c - across * s;
        double v = line[1] + along * s + across * c;
        int p = division.pieceAt(at(f, u, v, INSET));
        if (p != a && p != b) {
          return false;
        }
      }
      if (!within(f, line, t * FeaturePlanner.SLOT_WIDTH / 2)) {
        return false;
      }
    }
    return true;
  }

  /** Whether the pieces meet inside the slot over its whole depth, so that no thin wall is left. */
  private boolean within(int f, double[] line, double along) {
    double c = StrictMath.cos(line[2]);
    double s = StrictMath.sin(line[2]);
    double across = SHARE * FeaturePlanner.SLOT_HEIGHT;
    double deepest = FeaturePlanner.SLOT_DEPTH + INSET;
    for (double deep : new double[] {INSET, FeaturePlanner.SLOT_DEPTH / 2, deepest}) {
      int one = across(f, line[0] + along * c, line[1] + along * s, -across * s, across * c, deep);
      int two = across(f, line[0] + along * c, line[1] + along * s, across * s, -across * c, deep);
      if (one == two) {
        return false;
      }
    }
    return true;
  }

  private int across(int f, double u, double v, double du, double dv, double deep) {
    return division.pieceAt(at(f, u + du, v + dv, deep));
  }

  private void addSlot(int f, double[] line, double depth, int a, int b) {
    TriMesh slot =
        Primitives.box(
            new Vec3(-FeaturePlanner.SLOT_WIDTH / 2, -FeaturePlanner.SLOT_HEIGHT / 2, -depth),
            new Vec3(
                FeaturePlanner.SLOT_WIDTH / 2,
                FeaturePlanner.SLOT_HEIGHT / 2,
                FeaturePlanner.PAST));
    Frame turn = Frame.WORLD.turned(-Math.toDegrees(line[2]));
    TriMesh tool = placed(slot.toLocal(turn).translated(new Vec3(line[0], line[1], 0)), f);
    String name = "pry-" + (a + 1) + "-" + (b + 1);
    features.add(new Feature(name, Feature.Kind.PRY_SLOT, 0, List.of(tool)));
    taken.add(new double[] {f, line[0], line[1], FeaturePlanner.SLOT_WIDTH / 2 + 1});
  }
}
