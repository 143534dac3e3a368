package org.castwright.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.geom.Vec3;
import org.castwright.plan.Closing;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.Openings;
import org.castwright.trial.Change;

/** Applies the changes of a trial to the options of the mold that was cast. */
final class Changes {

  private final Report report;

  /**
   * @param report of the mold in whose frame places are given
   */
  Changes(Report report) {
    this.report = report;
  }

  JobOptions apply(JobOptions o, List<Change> changes) {
    JobOptions out = o;
    for (Change c : changes) {
      out = new JobOptions(out.model(), apply(out.mold(), c), out.bed(), out.wedgeDeg());
    }
    return out;
  }

  private MoldOptions apply(MoldOptions o, Change c) {
    MoldOptions.With w = o.with();
    Openings open = o.openings();
    switch (c.option()) {
      case VENT_AT -> {
        List<Vec3> vents = new ArrayList<>(open.ventsAt());
        vents.add(MoldPoints.toModel(report, vec(c)));
        w.openings(open.withVentsAt(vents));
      }
      case VENT_MM -> w.openings(open.withVentMm(number(c)));
      case GATE_MM -> w.openings(open.withGateMm(number(c)));
      case CLEARANCE_MM -> w.clearanceMm(number(c));
      case SHRINK_PERCENT ->
          w.shrinkPercent(c.place() == null ? new Vec3(number(c), number(c), number(c)) : vec(c));
      case CLOSING -> w.closing(Closing.valueOf(words(c).toUpperCase(Locale.ROOT)));
      case WALL_MM -> w.wallMm(number(c));
      case PIECES -> w.pieces((int) number(c));
      case RELEASE_MM -> w.releaseMm(number(c));
      case PULL -> w.pull(vec(c));
      case ALLOW_CAUGHT -> w.allowCaught(words(c).equals("yes"));
    }
    return w.build();
  }

  private static double number(Change c) {
    if (c.number() == null) {
      throw new IllegalArgumentException("a change of " + c.option().words() + " needs a number");
    }
    return c.number();
  }

  private static String words(Change c) {
    if (c.words() == null) {
      throw new IllegalArgumentException("a change of " + c.option().words() + " needs a choice");
    }
    return c.words();
  }

  private static Vec3 vec(Change c) {
    if (c.place() == null || c.place().size() != 3) {
      throw new IllegalArgumentException(
          "a change of " + c.option().words() + " needs three numbers");
    }
    return new Vec3(c.place().get(0), c.place().get(1), c.place().get(2));
  }
}
