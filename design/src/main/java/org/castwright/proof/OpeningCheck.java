package org.castwright.proof;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.solid.SolidException;

/**
 * Whether one piece comes off along its pull past one body that stays. The whole way, and the
 * volume after each of a series of steps until the piece is clear of the block, come from exact
 * columns; a few steps are measured by the solid kernel as well.
 */
final class OpeningCheck {

  private final PullView view;
  private final KernelSteps kernel;
  private final ProofLimits limits;

  OpeningCheck(PullView view, KernelSteps kernel, ProofLimits limits) {
    this.view = view;
    this.kernel = kernel;
    this.limits = limits;
  }

  /**
   * One piece past one body.
   *
   * @param moving number of the body that moves
   * @param pull its unit direction
   * @param still number of the body that stays
   * @param kernelSteps distances, mm, that the kernel has been asked for
   * @param piece name of the piece if the other of the two is cast, so that its catches may be
   *     creases or allowed; else null
   */
  record Move(int moving, Vec3 pull, int still, List<Double> kernelSteps, String piece) {

    boolean casting() {
      return piece != null;
    }

    KernelSteps.Step step(double distance) {
      return new KernelSteps.Step(moving, pull.times(distance), still);
    }
  }

  List<ProofCheck> of(Move move, String title) {
    return of(move, title, caught(move));
  }

  /** Only what does not pass, sooner told where all passes as a crease. */
  List<ProofCheck> failures(Move move, String title) {
    Catch caught = caught(move);
    boolean passes = crease(move, caught) && move.kernelSteps.isEmpty();
    return passes ? List.of() : of(move, title, caught).stream().filter(c -> !c.passed()).toList();
  }

  private Catch caught(Move move) {
    Columns moving = view.columns(move.moving);
    Columns still = view.columns(move.still);
    return Catch.of(moving, still, view.grid(), view.sign(move.pull), view.steps(), limits);
  }

  private boolean crease(Move move, Catch caught) {
    return move.casting() && most(caught) <= limits.creaseMm3();
  }

  private List<ProofCheck> of(Move move, String title, Catch caught) {
    Columns moving = view.columns(move.moving);
    Columns still = view.columns(move.still);
    Lip lip = Lip.of(moving, still, view.sign(move.pull), limits);
    boolean crease = crease(move, caught);
    List<ProofCheck> checks =
        List.of(
            way(move, title, caught, lip, crease),
            overlap(move, title, caught, lip.outlineLength()),
            width(move, title, lip, crease));
    return move.casting() ? checks.stream().map(c -> c.curedBy(move.piece)).toList() : checks;
  }

  /** The most that is shared at any step, mm³. */
  private static double most(Catch caught) {
    return caught.steps().stream().mapToDouble(Catch.Step::shared).max().orElse(0);
  }

  private ProofCheck way(Move move, String title, Catch caught, Lip lip, boolean crease) {
    double spot = limits.lipLengthShare() * lip.outlineLength();
    double limit = spot * spot;
    boolean free = caught.wideArea() <= limit;
    String words =
        title
            + (free
                ? " is free all the way, by exact columns"
                : " is caught on "
                    + Say.number(caught.wideArea())
                    + " mm² of spots wider than a lip, deepest "
                    + Say.number(caught.depth())
                    + " mm near "
                    + Say.place(caught.where())
                    + ", by exact columns")
            + ending(free, move, crease);
    return new ProofCheck(
        "opening: " + title + ", way",
        free || crease || forgiven(move),
        caught.wideArea(),
        limit,
        "mm²",
        words);
  }

  private ProofCheck overlap(Move move, String title, Catch caught, double outline) {
    Worst worst = new Worst(outline, limits, move.casting() ? limits.creaseMm3() : 0);
    for (Catch.Step s : caught.steps()) {
      worst.see(s.distance(), s.shared(), "columns");
    }
    StringBuilder byKernel = new StringBuilder();
    try {
      for (double t : move.kernelSteps) {
        double shared = kernel.answer(move.step(t));
        worst.see(t, shared, "the solid kernel");
        byKernel
            .append(" and ")
            .append(Say.number(shared))
            .append(" mm³ after ")
            .append(Say.number(t))
            .append(" mm by the solid kernel");
      }
    } catch (SolidException e) {
      String words = title + " could not be judged: " + e.getMessage() + ".";
      return new ProofCheck(
          "opening: " + title + ", overlap", false, Double.NaN, worst.limit, "mm³", words);
    }
    String words =
        title
            + " shares "
            + Say.number(worst.volume)
            + " mm³ after "
            + Say.number(worst.step)
            + " mm by "
            + worst.by
            + ", the worst of "
            + caught.steps().size()
            + " steps by columns"
            + byKernel
            + (worst.passed() || caught.depth() == 0 ? "" : ", near " + Say.place(caught.where()))
            + ending(worst.passed(), move, false);
    return new ProofCheck(
        "opening: " + title + ", overlap",
        worst.passed() || forgiven(move),
        worst.volume,
        worst.limit,
        "mm³",
        words);
  }

  private ProofCheck width(Move move, String title, Lip lip, boolean crease) {
    boolean passed = lip.width() <= limits.lipWidth();
    String words =
        title
            + (lip.width() == 0
                ? " has no lip"
                : " has a lip "
                    + Say.number(lip.width())
                    + " mm wide near "
                    + Say.place(lip.where()))
            + " along an outline of "
            + Say.number(lip.outlineLength())
            + " mm, by exact columns"
            + ending(passed, move, crease);
    return new ProofCheck(
        "opening: " + title + ", lip",
        passed || crease || forgiven(move),
        lip.width(),
        limits.lipWidth(),
        "mm",
        words);
  }

  private String ending(boolean passed, Move move, boolean crease) {
    return crease && !passed
        ? "; a crease that gives, since no step shares more than "
            + Say.number(limits.creaseMm3())
            + " mm³."
        : Say.ending(passed, forgiven(move));
  }

  /** Whether catches of a move are recorded without failing. */
  private boolean forgiven(Move move) {
    return move.casting() && limits.allowCaught();
  }

  /** The step that uses most of its allowance. */
  private static final class Worst {
    private final double outline;
    private final ProofLimits limits;
    private final double crease;
    private double share = -1;
    private double step;
    private double volume;
    private double limit;
    private String by = "";

    Worst(double outline, ProofLimits limits, double crease) {
      this.outline = outline;
      this.crease = crease;
      this.limits = limits;
    }

    void see(double t, double shared, String source) {
      double allowed = Math.max(crease, limits.allowedOverlap(outline, t));
      double used = allowed > 0 ? shared / allowed : shared > 0 ? Double.POSITIVE_INFINITY : 0;
      if (used > share) {
        share = used;
        step = t;
        volume = shared;
        limit = allowed;
        by = source;
      }
    }

    boolean passed() {
      return volume <= limit;
    }
  }
}
