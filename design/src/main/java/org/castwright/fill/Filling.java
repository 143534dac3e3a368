package org.castwright.fill;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * How a cavity fills in one position: by the model of Bose and Toussaint (Geometric and
 * computational aspects of gravity casting, CAD 27(6), 1995) the level rises everywhere alike and
 * air leaves only upward, through the channels' mouths. Where liquid runs into a low place first
 * less may be shut in, never more.
 *
 * @param up unit direction
 * @param bottomMm lowest place along up
 * @param topMm highest place of the casting along up
 * @param mouthMm lowest place of the mouths along up, where liquid runs out; infinite without any
 * @param peaks maxima of the casting's roof, as deep as the limits ask, the highest included
 * @param pockets shut in for good, largest first
 * @param restMm3 shut in by pockets below the limits, all together
 * @param volumeMm3 of casting and channels
 * @param curve liquid against level, up to the mouths
 */
public record Filling(
    Vec3 up,
    double bottomMm,
    double topMm,
    double mouthMm,
    int peaks,
    List<Pocket> pockets,
    double restMm3,
    double volumeMm3,
    LevelCurve curve) {

  /** Fills a cavity. */
  public static Filling of(Cavity cavity, Vec3 up, FillLimits limits) {
    return of(cavity, up, limits, Progress.NONE);
  }

  /**
   * Fills a cavity.
   *
   * @throws Progress.CancelledException if the person has asked to stop
   */
  public static Filling of(Cavity cavity, Vec3 up, FillLimits limits, Progress progress) {
    Vec3 unit = up.unit();
    Sweep sweep = new Sweep(cavity, unit, Double.NEGATIVE_INFINITY, progress);
    List<Pocket> pockets = pockets(sweep);
    List<Pocket> large = new ArrayList<>();
    double rest = 0;
    for (Pocket p : pockets) {
      if (limits.counts(p)) {
        large.add(p);
      } else {
        rest += p.volumeMm3();
      }
    }
    large.sort(Comparator.comparingDouble(p -> -p.volumeMm3()));
    double top = highest(cavity.casting(), unit);
    double mouth = mouth(cavity, unit);
    double to = Double.isInfinite(mouth) ? Math.max(top, highest(cavity.channels(), unit)) : mouth;
    return new Filling(
        unit,
        sweep.bottom(),
        top,
        mouth,
        peaks(cavity.casting(), unit, limits.leastDepthMm()).size(),
        List.copyOf(large),
        rest,
        cavity.volume(),
        LevelCurve.of(sweep, Math.max(to, sweep.bottom()), progress));
  }

  /**
   * The maxima of the roof of a closed body, each of which would hold air without a vent.
   *
   * @param leastDepthMm how far the level must fall from it until it joins a higher one
   * @return highest first
   */
  public static List<Vec3> peaks(TriMesh body, Vec3 up, double leastDepthMm) {
    Cavity closed = Cavity.open(body, new boolean[body.vertexCount()]);
    Sweep sweep = new Sweep(closed, up.unit(), Double.NEGATIVE_INFINITY, Progress.NONE);
    Branches b = sweep.branches();
    List<Vec3> out = new ArrayList<>();
    for (int i = 0; i < b.count(); i++) {
      if (b.depth(i) >= leastDepthMm) {
        out.add(sweep.place(b.top(i)));
      }
    }
    return out;
  }

  /**
   * The parts of a closed body above a level.
   *
   * @return their volumes, mm³, in the order of their tops from high to low
   */
  public static double[] partsAbove(TriMesh body, Vec3 up, double levelMm) {
    Cavity closed = Cavity.open(body, new boolean[body.vertexCount()]);
    return new Sweep(closed, up.unit(), levelMm, Progress.NONE).volumes();
  }

  /** Air shut in, mm³, pockets of any size. */
  public double trappedMm3() {
    return restMm3 + pockets.stream().mapToDouble(Pocket::volumeMm3).sum();
  }

  private static List<Pocket> pockets(Sweep sweep) {
    double[] volume = sweep.volumes();
    Branches b = sweep.branches();
    List<Pocket> out = new ArrayList<>();
    for (int p = 0; p < volume.length; p++) {
      int top = b.sealedTop(p);
      out.add(new Pocket(sweep.place(top), sweep.height(top) - b.seal(p), volume[p]));
    }
    return out;
  }

  private static double highest(TriMesh mesh, Vec3 up) {
    double out = Double.NEGATIVE_INFINITY;
    for (int v : mesh.tri()) {
      out = Math.max(out, mesh.vertex(v).dot(up));
    }
    return out;
  }

  private static double mouth(Cavity cavity, Vec3 up) {
    double out = Double.POSITIVE_INFINITY;
    for (int v = 0; v < cavity.channels().vertexCount(); v++) {
      if (cavity.isMouth(v)) {
        out = Math.min(out, cavity.channels().vertex(v).dot(up));
      }
    }
    return out;
  }
}
