package org.castwright.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.survey.Lanes;
import org.castwright.survey.PullAxes;

/**
 * Finds the fewest pulls whose free sets cover a mold's space and the casting's facets.
 *
 * <ol>
 *   <li>Some hundreds of directions are put on trial by one picture an axis.
 *   <li>Greedy sets for each number of pulls; the sets near the answer are refined by small turns,
 *       which join the trial.
 *   <li>Exact search for the least number, and the best of the sets of that many.
 *   <li>What stays caught, where, and whether the answer survives small turns.
 * </ol>
 *
 * All of it is the same for any number of threads.
 */
public final class Cover {

  private static final String STAGE = "looking for the fewest pulls";
  private static final double TRIAL_DONE = 0.5;
  private static final double REFINED = 0.7;
  private static final double SOLVED = 0.85;
  // axes closer than this are one, radians
  private static final double SAME_AXIS = 1e-7;

  private final CoverOptions options;
  private final Progress progress;
  private final Trial trial;
  private int[] fixed = new int[0];

  private Cover(TriMesh mesh, CoverOptions options, Progress progress) {
    if (mesh.isEmpty()) {
      throw new MeshException("The model has no triangles; load one that has a surface.");
    }
    if (!(mesh.volume() > 0)) {
      throw new MeshException(
          "The model encloses no volume or is inside out; turn its facets outward first.");
    }
    this.options = options.withTolerance(options.tolerance().on(mesh.area()));
    this.progress = progress;
    trial = new Trial(mesh, options);
  }

  /**
   * Finds the pulls.
   *
   * @param mesh closed, outward-oriented, mm; its frame is that of all results
   * @throws MeshException if the mesh is empty or inside out
   */
  public static CoverResult of(TriMesh mesh, CoverOptions options, Progress progress) {
    progress.at(STAGE, 0);
    return new Cover(mesh, options, progress).run();
  }

  private CoverResult run() {
    putOnTrial();
    Curve curve = new Curve(trial.table(), fixed, CoverOptions.MOST_PULLS);
    if (options.refine()) {
      curve = refined(curve);
    }
    progress.at(STAGE, REFINED);
    Solver solver = new Solver(trial, options, fixed);
    solver.run(curve);
    progress.at(STAGE, SOLVED);
    Preference preference =
        new Preference(trial, options.tolerance(), new Bodies(trial, options.places()));
    Preference.Chosen chosen = preference.best(wanted(curve, solver, preference));
    int last = options.places().stream().mapToInt(Integer::intValue).max().orElse(0);
    if (last > chosen.set().length) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a pull is given for piece %d, but %d pulls with those given among them are the"
                  + " fewest that open the model; number its pieces from 1 to %d",
              last,
              chosen.set().length,
              chosen.set().length));
    }
    CoverResult result = result(curve, solver, chosen);
    progress.at(STAGE, 1);
    return result;
  }

  private void putOnTrial() {
    List<Vec3> axes = new ArrayList<>(PullAxes.of(trial.mesh(), options.spread()));
    fixed = new int[options.fixed().size()];
    for (int i = 0; i < fixed.length; i++) {
      Vec3 pull = options.fixed().get(i);
      int at = 0;
      while (at < axes.size() && axes.get(at).cross(pull).length() > SAME_AXIS) {
        at++;
      }
      if (at == axes.size()) {
        axes.add(pull);
      }
      fixed[i] = 2 * at + (axes.get(at).dot(pull) < 0 ? 1 : 0);
    }
    if (Arrays.stream(fixed).distinct().count() < fixed.length) {
      throw new IllegalArgumentException("two of the pulls given are the same");
    }
    trial.add(axes, done -> progress.at(STAGE, TRIAL_DONE * done / axes.size()));
  }

  /** Puts turned directions on trial, from the first set that opens and the one before it. */
  private Curve refined(Curve curve) {
    List<Vec3> more = new ArrayList<>();
    Refiner refiner = new Refiner(trial);
    for (int k = Math.max(2, curve.first()); k <= curve.last(); k++) {
      boolean opens = trial.sum(trial.left(curve.set(k))).within(options.tolerance());
      boolean next =
          k < curve.last() && trial.sum(trial.left(curve.set(k + 1))).within(options.tolerance());
      if (opens || next || k == curve.last()) {
        more.addAll(refiner.better(curve.set(k), fixed.length));
      }
      progress.at(STAGE, TRIAL_DONE);
      if (opens) {
        break;
      }
    }
    if (more.isEmpty()) {
      return curve;
    }
    trial.add(more, done -> progress.at(STAGE, TRIAL_DONE));
    return new Curve(trial.table(), fixed, CoverOptions.MOST_PULLS);
  }

  /** The sets to choose from: as many pulls as asked for, else the least number. */
  private List<int[]> wanted(Curve curve, Solver solver, Preference preference) {
    int least = solver.least();
    int number = options.pieces() > 0 ? options.pieces() : least > 0 ? least : curve.last();
    if (number == least) {
      return solver.sets();
    }
    int[] set;
    if (least > 0 && number > least) {
      set = preference.best(solver.sets()).set();
    } else {
      set = curve.set(Math.max(curve.first(), Math.min(number, curve.last())));
    }
    while (set.length < number) {
      set = preference.grown(set);
    }
    return List.of(set);
  }

  private CoverResult result(Curve curve, Solver solver, Preference.Chosen chosen) {
    int[] set = chosen.set();
    List<Vec3> directions = trial.directions(set);
    Regions regions = new Regions(trial);
    int[] left = trial.left(set);
    double[] leftWidths = Widths.of(trial.samples(), left, directions, trial.shade());
    int[] never = trial.never();
    double[] neverWidths = Widths.of(trial.samples(), never, directions, trial.shade());
    Caught leftSum = wide(trial.sum(left), leftWidths);
    Caught neverSum = wide(trial.sum(never), neverWidths);
    Caught both =
        new Caught(
            leftSum.areaMm2() + neverSum.areaMm2(), leftSum.volumeMm3() + neverSum.volumeMm3(), 0);
    FineLook fine = new FineLook(trial);
    List<Pull> pulls = pulls(chosen);
    return new CoverResult(
        pulls,
        chosen.order().total(),
        both.within(options.tolerance()),
        options.tolerance(),
        certificate(solver),
        leftSum,
        regions.of(left, leftWidths),
        neverSum,
        regions.of(never, neverWidths),
        fine.left(directions),
        fine.width(),
        points(curve, solver, set),
        new TurnTester(trial).of(set, leftSum, options.tolerance()));
  }

  private static Caught wide(Caught c, double[] widths) {
    return new Caught(c.areaMm2(), c.volumeMm3(), Widths.most(widths));
  }

  private Certificate certificate(Solver solver) {
    return new Certificate(
        solver.least(),
        solver.lowerBound(),
        solver.least() > 0 && solver.lowerBound() >= solver.least(),
        solver.nodes(),
        trial.columns(),
        trial.samples().count(),
        trial.table().rows());
  }

  private List<Pull> pulls(Preference.Chosen chosen) {
    int[] set = chosen.set();
    List<Pull> out = new ArrayList<>();
    for (int i = 0; i < set.length; i++) {
      int at = chosen.order().at(i);
      int column = set[at];
      int[] others = Greedy.without(set, at);
      int[] only = Arrays.stream(trial.left(others)).filter(s -> trial.free(column, s)).toArray();
      Caught c = trial.sum(only);
      out.add(
          new Pull(
              trial.direction(column),
              Arrays.stream(fixed).anyMatch(j -> j == column),
              c.areaMm2(),
              c.volumeMm3(),
              chosen.order().volume(i),
              chosen.order().bodies(i)));
    }
    return out;
  }

  private List<CurvePoint> points(Curve curve, Solver solver, int[] chosen) {
    CurvePoint[] out = new CurvePoint[curve.last() - curve.first() + 1];
    Lanes.run(
        out.length,
        options.threads(),
        trial::shade,
        (shade, i) -> {
          int k = curve.first() + i;
          int[] set = k == chosen.length ? chosen : curve.set(k);
          if (k == solver.least() && k != chosen.length) {
            set = solver.sets().get(0);
          }
          int[] left = trial.left(set);
          List<Vec3> directions = trial.directions(set);
          Caught sum = trial.sum(left);
          double[] widths = Widths.of(trial.samples(), left, directions, shade);
          out[i] =
              new CurvePoint(k, directions, wide(sum, widths), sum.within(options.tolerance()));
        });
    return List.of(out);
  }
}
