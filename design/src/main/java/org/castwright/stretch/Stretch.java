package org.castwright.stretch;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.mesh.IntList;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * Which caught places a flexible part passes. A place is a part of the mold's space that no pull
 * leads out of straight. Along a pull, every cross-section of it shows what the mold has to pass
 * there: caught are exactly the columns that the casting ahead covers, so the lip lies before the
 * throat in one section. Two measures, each as strain = lip / throat − 1:
 *
 * <ul>
 *   <li>widths: across the casting behind the place (or the opening before it, when the casting
 *       surrounds the place), in the direction in which the mold gives way least far;
 *   <li>girths: the convex hull of throat and caught cells against that of the throat alone, what a
 *       closed loop of the flexible part has to stretch by.
 * </ul>
 *
 * <p>A place that reaches through the casting, or is shut in by it in a section, no stretching
 * frees. Of several pulls each place counts along the one that strains it least.
 */
public final class Stretch {

  /** Fewer cells than this to give way are what the edges of cells make. */
  private static final double RESOLVED = 1.5;

  /** Places of fewer cells are gaps between triangles. */
  private static final int FEWEST = 8;

  /** A facet borders the place found this many cells or layers outside its middle. */
  private static final double[] BEFORE = {0.75, 1.5};

  private final TriMesh casting;
  private final StretchOptions options;
  private final Progress progress;
  private final List<Vec3> pulls;
  private final List<Grid> grids;
  private final List<Columns> columns;
  private final double limit;

  private Stretch(
      TriMesh casting,
      List<Vec3> pulls,
      double demoldStrain,
      StretchOptions options,
      Progress progress) {
    this.casting = casting;
    this.options = options;
    this.progress = progress;
    this.pulls = pulls.stream().map(Vec3::unit).toList();
    this.limit = demoldStrain / options.safetyFactor();
    progress.at("stretch", 0);
    grids = this.pulls.stream().map(d -> Grid.along(d, casting, options)).toList();
    columns = grids.parallelStream().map(g -> new Columns(casting, g)).toList();
  }

  /**
   * Finds and measures the caught places.
   *
   * @param casting closed, outward-oriented, mm
   * @param pulls directions in which pieces leave, at least one; the order of leaving plays no part
   * @param demoldStrain strain, as a share, that the part which gives way takes without harm: the
   *     casting's or the mold's
   * @throws IllegalArgumentException if there is no pull or no facet, or the strain is below zero
   * @throws Progress.CancelledException if the person has asked to stop
   */
  public static StretchResult of(
      TriMesh casting,
      List<Vec3> pulls,
      double demoldStrain,
      StretchOptions options,
      Progress progress) {
    if (pulls.isEmpty() || casting.isEmpty() || !(demoldStrain >= 0)) {
      throw new IllegalArgumentException("stretch needs a casting, a pull and a strain from 0 up");
    }
    return new Stretch(casting, pulls, demoldStrain, options, progress).run();
  }

  /** As {@link #of(TriMesh, List, double, StretchOptions, Progress)} for a flexible casting. */
  public static StretchResult of(
      TriMesh casting,
      List<Vec3> pulls,
      Material material,
      StretchOptions options,
      Progress progress) {
    return of(casting, pulls, material.demoldStrain().share(), options, progress);
  }

  /**
   * A place along one pull. Two places along one pull may be one along another, so they are told
   * apart by pull and number.
   */
  private record Measured(int pull, int number, Tally tally) {
    boolean same(Measured o) {
      return pull == o.pull && number == o.number;
    }
  }

  private StretchResult run() {
    Space first = new Space(grids, columns, 0);
    Tally[] tallies = measure(first);
    Measured[] best = new Measured[tallies.length];
    for (int n = 1; n < best.length; n++) {
      best[n] = new Measured(0, n, tallies[n]);
    }
    int[][] samples = samples(first);
    for (int k = 1; k < pulls.size() && first.places() > 0; k++) {
      progress.at("stretch", (double) k / pulls.size());
      Space other = new Space(grids, columns, k);
      Tally[] measured = measure(other);
      for (int n = 1; n < best.length; n++) {
        int there = match(first, samples[n], other);
        if (there > 0 && measured[there].strain() < best[n].tally.strain()) {
          best[n] = new Measured(k, there, measured[there]);
        }
      }
    }
    progress.at("stretch", 1);
    return result(first, best);
  }

  private double least(Grid grid) {
    return Math.max(options.releaseMm(), RESOLVED * grid.step());
  }

  private Tally[] measure(Space space) {
    Grid grid = space.grid();
    Tally[] tallies = new Tally[space.places() + 1];
    for (int n = 0; n < tallies.length; n++) {
      tallies[n] = new Tally();
    }
    double cellVolume = grid.step() * grid.step() * grid.rise();
    for (int cell = 0; cell < grid.cells(); cell++) {
      int run = 0;
      for (int layer = 0; layer < grid.layers(); layer++) {
        int n = space.place(layer, cell);
        run = n > 0 ? run + 1 : 0;
        if (n > 0) {
          tallies[n].cell(grid.point(layer, cell), cellVolume);
          tallies[n].depth(run * grid.rise());
        }
      }
    }
    for (int layer = 0; layer < grid.layers() && space.places() > 0; layer++) {
      new Section(space, layer).measure(tallies, least(grid));
    }
    return tallies;
  }

  /** Some cells of each place, spread over it. */
  private static int[][] samples(Space space) {
    IntList[] cells = new IntList[space.places() + 1];
    for (int n = 0; n < cells.length; n++) {
      cells[n] = new IntList();
    }
    Grid grid = space.grid();
    for (int layer = 0; layer < grid.layers(); layer++) {
      for (int cell = 0; cell < grid.cells(); cell++) {
        cells[space.place(layer, cell)].add(layer * grid.cells() + cell);
      }
    }
    int[][] out = new int[cells.length][];
    for (int n = 1; n < cells.length; n++) {
      IntList all = cells[n];
      int count = Math.min(all.size(), 200);
      int size = all.size();
      out[n] =
          IntStream.range(0, count).map(k -> all.get((int) ((long) k * size / count))).toArray();
    }
    return out;
  }

  /** The place of another space that most samples fall into, or 0. */
  private static int match(Space first, int[] samples, Space other) {
    int[] votes = new int[other.places() + 1];
    Grid grid = first.grid();
    for (int s : samples) {
      votes[other.placeAt(grid.point(s / grid.cells(), s % grid.cells()))]++;
    }
    votes[0] = 0;
    int most = 0;
    for (int n = 1; n < votes.length; n++) {
      most = votes[n] > votes[most] ? n : most;
    }
    return most;
  }

  private StretchResult result(Space first, Measured[] best) {
    List<Measured> kept = new ArrayList<>();
    for (int n = 1; n < best.length; n++) {
      Measured m = best[n];
      // a place that no section shows wide enough was never given a width
      boolean counts = m.tally.width() > 0 && m.tally.cells() >= FEWEST;
      if (counts && kept.stream().noneMatch(m::same)) {
        kept.add(m);
      }
    }
    kept.sort(Comparator.comparingDouble((Measured m) -> -m.tally.strain()));
    int[] index = new int[best.length];
    Arrays.fill(index, -1);
    for (int n = 1; n < best.length; n++) {
      for (int k = 0; k < kept.size(); k++) {
        index[n] = kept.get(k).same(best[n]) ? k : index[n];
      }
    }
    List<StretchPlace> places =
        kept.stream().map(m -> m.tally.place(pulls.get(m.pull), limit)).toList();
    return new StretchResult(places, borders(first, index), limit, first.grid().step());
  }

  private int[] borders(Space space, int[] index) {
    int[] out = new int[casting.triangleCount()];
    Arrays.fill(out, -1);
    for (int f = 0; f < out.length; f++) {
      Vec3 normal = casting.areaVector(f);
      if (normal.length() == 0) {
        continue;
      }
      Vec3 middle = casting.center(f);
      for (double size : new double[] {space.grid().step(), space.grid().rise()}) {
        for (double before : BEFORE) {
          Vec3 p = middle.plus(normal.unit().times(before * size));
          out[f] = out[f] < 0 ? index[space.placeAt(p)] : out[f];
        }
      }
    }
    return out;
  }
}
