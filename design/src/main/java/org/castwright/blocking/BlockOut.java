package org.castwright.blocking;

import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.repair.MeshHealth;
import org.castwright.repair.Repair;
import org.castwright.repair.RepairOptions;
import org.castwright.repair.ShortEdges;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.survey.Raster;

/**
 * A model whose undercuts along one axis are filled.
 *
 * @param mesh closed, in the model's frame, mm; opens along the pull and its opposite
 * @param pull unit
 * @param addedMm3 how much more it holds than the model, mm³, what was filled up to the seam and
 *     for draft included
 * @param places that were filled, largest first
 */
public record BlockOut(TriMesh mesh, Vec3 pull, double addedMm3, List<FilledPlace> places) {

  /**
   * Distance of the columns that are looked at, as a share of the longest side, and at least, mm.
   */
  private static final double PIXEL_SHARE = 0.0005;

  private static final double LEAST_PIXEL = 0.03;

  /** Empty columns round the model, at least. */
  private static final int MARGIN = 18;

  /** Room round it for what passes between walls, mm. */
  private static final double ROOM = 0.8;

  /**
   * Where columns stand in each pass, pixels: off round numbers, on which the walls of made things
   * stand, and every pass between the columns of those before, for what fell between them.
   */
  private static final double[] OFF_X = {0.3137, 1.8137, 0.8137, 2.3137, 1.3137, 0.1137};

  private static final double[] OFF_Y = {0.3719, 0.8719, 1.8719, 1.3719, 2.3719, 2.1719};

  /**
   * How a seam is laid.
   *
   * @param steepest rise, °
   * @param rim of the body, in places of the grid, whose noise it does not follow
   */
  private record Manner(double steepest, int rim) {}

  /** The evenest first, the one that adds least last. */
  private static final Manner[] MANNERS = {new Manner(80, 2), new Manner(85, 2), new Manner(85, 0)};

  /** How much of a filling is known from its columns to be added, at least, as a share. */
  private static final double SURE = 0.9;

  /** What may be left for the release, mm³. */
  private static final double LITTLE = 0.2;

  /**
   * Edges that are shorter go, mm: a seam that runs through splinters is hard to cut. Less where
   * the surface would pass through itself without them, as it is or rounded to what files hold.
   */
  private static final double[] SPLINTER = {0.005, 1e-3, 2e-4, 5e-5};

  /** How often splinters are taken out and crossings mended, for each length. */
  private static final int HEALS = 2;

  private static final RepairOptions CLOSED = RepairOptions.DEFAULT.withFillVoids(true);

  /** Copies the list. */
  public BlockOut {
    places = List.copyOf(places);
  }

  /**
   * Fills what is caught along a pull and its opposite, up to the evenest seam that the filling
   * allows.
   *
   * @param mesh closed, oriented, free of crossings, mm
   * @param pull of any length above zero
   * @param most that may be added, mm³
   * @return null if that is not enough
   */
  public static BlockOut of(
      TriMesh mesh, Vec3 pull, double most, SolidKernel kernel, Progress progress) {
    for (Manner manner : MANNERS) {
      BlockOut b = of(mesh, pull.unit(), manner, most, kernel, progress);
      if (b != null) {
        return b;
      }
    }
    return null;
  }

  private static BlockOut of(
      TriMesh mesh, Vec3 pull, Manner manner, double most, SolidKernel kernel, Progress progress) {
    progress.at("blocking out", 0);
    Frame frame = Frame.along(pull);
    TriMesh local = mesh.toLocal(frame);
    Box3 bounds = local.bounds();
    List<FilledPlace> places = null;
    Filling f = null;
    for (int n = 0; n < OFF_X.length; n++) {
      Gaps gaps = new Gaps(local, raster(bounds, n), frame);
      places = places == null ? gaps.places : places;
      boolean opens = volume(gaps.places) < LITTLE;
      if (opens && n > 1) {
        break;
      }
      f = new Filling(gaps, manner.steepest, manner.rim, f);
      if (opens && f.slotsMm3() < LITTLE) {
        break;
      }
      if (SURE * f.addsMm3() > most) {
        return null;
      }
      Solid filling = kernel.solid("filling", f.mesh());
      Solid both = kernel.union("blocked out", List.of(kernel.solid("model", local), filling));
      // what is filled of a slot beside the body, but does not touch it, is left out
      local = kernel.decompose(both).get(0).mesh();
      if (local.volume() - mesh.volume() > most) {
        return null;
      }
      progress.at("blocking out", (n + 1.0) / OFF_X.length);
    }
    TriMesh out = sound(local, frame, kernel, progress);
    return new BlockOut(out, frame.w(), out.volume() - mesh.volume(), places);
  }

  /**
   * Without splinters, bubbles between a filling and what it fills, and specks; in the model's
   * frame, as files will hold it.
   */
  private static TriMesh sound(TriMesh body, Frame frame, SolidKernel kernel, Progress progress) {
    TriMesh mesh = body;
    for (double mm : SPLINTER) {
      mesh = body;
      for (int n = 0; n < HEALS; n++) {
        TriMesh less = FloatGrid.snap(ShortEdges.without(mesh, mm).toLocal(frame.inverse()));
        mesh = FloatGrid.snap(Repair.heal(less, CLOSED, kernel, progress).mesh());
        TriMesh local = mesh.toLocal(frame);
        if (!crosses(mesh, progress) && !crosses(local, progress)) {
          return mesh;
        }
        mesh = n + 1 < HEALS ? local : mesh;
      }
    }
    return mesh;
  }

  private static boolean crosses(TriMesh mesh, Progress progress) {
    return MeshHealth.of(FloatGrid.snap(mesh), progress).selfIntersectingPairs() > 0;
  }

  /** What two pieces would have caught, mm³. */
  public double caughtMm3() {
    return volume(places);
  }

  private static double volume(List<FilledPlace> places) {
    return places.stream().mapToDouble(FilledPlace::volumeMm3).sum();
  }

  private static Raster raster(Box3 b, int pass) {
    double pixel = Math.max(LEAST_PIXEL, PIXEL_SHARE * b.longestSide());
    int margin = Math.max(MARGIN, (int) Math.ceil(ROOM / pixel));
    Vec3 size = b.size();
    return new Raster(
        b.min().x() - (margin - OFF_X[pass]) * pixel,
        b.min().y() - (margin - OFF_Y[pass]) * pixel,
        pixel,
        (int) Math.ceil(size.x() / pixel) + 2 * margin,
        (int) Math.ceil(size.y() / pixel) + 2 * margin);
  }
}
