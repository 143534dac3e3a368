package org.castwright.proof;

import org.castwright.geom.Vec3;

/** Whether casting, channels and pieces of the closed mold share no volume, pair by pair. */
final class DisjointCheck {

  private DisjointCheck() {}

  static ProofCheck of(PullView view, double block, ProofLimits limits) {
    double worst = 0;
    StringBuilder faults = new StringBuilder();
    for (int i = 0; i < view.size(); i++) {
      for (int j = i + 1; j < view.size(); j++) {
        Shared s = shared(view, i, j);
        worst = Math.max(worst, s.volume);
        if (s.volume > limits.disjointShare() * block) {
          faults
              .append(faults.isEmpty() ? "" : "; ")
              .append(view.columns(i).name())
              .append(" and ")
              .append(view.columns(j).name())
              .append(" share ")
              .append(Say.number(s.volume))
              .append(" mm³ near ")
              .append(Say.place(s.where));
        }
      }
    }
    String words =
        faults.isEmpty()
            ? "No two bodies of the closed mold share more than "
                + Say.number(worst)
                + " mm³, by exact columns."
            : "In the closed mold " + faults + ", by exact columns.";
    double share = worst / block;
    return new ProofCheck(
        "bodies disjoint", faults.isEmpty(), share, limits.disjointShare(), "of the block", words);
  }

  private record Shared(double volume, Vec3 where) {}

  private static Shared shared(PullView view, int i, int j) {
    Columns a = view.columns(i);
    Columns b = view.columns(j);
    ColumnGrid grid = view.grid();
    double sum = 0;
    double most = 0;
    int at = 0;
    for (int c = 0; c < grid.cells(); c++) {
      double length = Ahead.shared(a.spans(), c, b.spans(), c, 0);
      sum += length;
      if (length > most) {
        most = length;
        at = c;
      }
    }
    return new Shared(sum * grid.cellArea(), most > 0 ? middle(a, b, grid, at) : Vec3.ZERO);
  }

  /** The middle of the longest stretch shared in column {@code c}, world. */
  private static Vec3 middle(Columns a, Columns b, ColumnGrid grid, int c) {
    Spans p = a.spans();
    Spans q = b.spans();
    double w = 0;
    double longest = 0;
    for (int i = p.from(c); i < p.to(c); i++) {
      for (int j = q.from(c); j < q.to(c); j++) {
        double low = Math.max(p.low(i), q.low(j));
        double high = Math.min(p.high(i), q.high(j));
        if (high - low > longest) {
          longest = high - low;
          w = (low + high) / 2;
        }
      }
    }
    return a.frame().toWorld(new Vec3(grid.u(c % grid.across()), grid.v(c / grid.across()), w));
  }
}
