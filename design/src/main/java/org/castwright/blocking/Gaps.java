package org.castwright.blocking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.survey.ColumnRuns;
import org.castwright.survey.Raster;

/**
 * The columns along z in which a body has a gap: in each from the end of its lowest run of solid to
 * the beginning of its topmost, and the places they make.
 */
final class Gaps {

  /** A place that holds less is a facet's noise, mm³; what stays of it is within the release. */
  private static final double NOISE = 0.01;

  final ColumnRuns runs;
  final Raster raster;

  /** Columns with a gap that is more than noise. */
  final boolean[] wide;

  /** Largest first. */
  final List<FilledPlace> places;

  /**
   * @param local closed, mm, with the pull along z
   * @param frame of it in the model's
   */
  Gaps(TriMesh local, Raster raster, Frame frame) {
    this.raster = raster;
    int n = raster.nx() * raster.ny();
    boolean[] all = new boolean[n];
    Arrays.fill(all, true);
    runs = new ColumnRuns(local, raster, all);
    wide = new boolean[n];
    List<FilledPlace> found = new ArrayList<>();
    Together gap = new Together(raster.nx(), n, o -> runs.count(o) > 1);
    for (int o = 0; o < n; o++) {
      int count = gap.gather(o);
      if (count > 0) {
        FilledPlace p = measured(gap.places, count, frame);
        if (p.volumeMm3() > NOISE) {
          for (int k = 0; k < count; k++) {
            wide[gap.places[k]] = true;
          }
          found.add(p);
        }
      }
    }
    found.sort(Comparator.comparingDouble(FilledPlace::volumeMm3).reversed());
    places = List.copyOf(found);
  }

  private FilledPlace measured(int[] columns, int count, Frame frame) {
    double cell = raster.pixel() * raster.pixel();
    double sum = 0;
    double most = 0;
    Vec3 weighed = Vec3.ZERO;
    for (int k = 0; k < count; k++) {
      int o = columns[k];
      double gap = 0;
      for (int r = 1; r < runs.count(o); r++) {
        gap += runs.bottom(o, r) - runs.top(o, r - 1);
      }
      double middle = (low(o) + high(o)) / 2;
      weighed = weighed.plus(new Vec3(x(o), y(o), middle).times(gap));
      sum += gap;
      most = Math.max(most, gap);
    }
    Vec3 center = sum > 0 ? weighed.times(1 / sum) : new Vec3(x(columns[0]), y(columns[0]), 0);
    return new FilledPlace(frame.toWorld(center), sum * cell, count * cell, most);
  }

  double x(int o) {
    return raster.x0() + o % raster.nx() * raster.pixel();
  }

  double y(int o) {
    int row = o / raster.nx();
    return raster.y0() + row * raster.pixel();
  }

  /** Where the lowest run of a column ends. */
  double low(int o) {
    return runs.top(o, 0);
  }

  /** Where the topmost run of a column begins. */
  double high(int o) {
    return runs.bottom(o, runs.count(o) - 1);
  }

  /** The lowest point of a column that has solid. */
  double bottom(int o) {
    return runs.bottom(o, 0);
  }

  /** The highest. */
  double top(int o) {
    return runs.top(o, runs.count(o) - 1);
  }
}
