package org.castwright.pipeline;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.mold.Mold;
import org.castwright.mold.Piece;
import org.castwright.mold.PrintPose;
import org.castwright.plan.Closing;
import org.castwright.plan.MoldPlan;
import org.castwright.plan.Pour;

/** {@code sheet.txt}: what a person needs at the bench, in order of use. */
final class JobSheet {

  private static final int WIDTH = 92;

  /**
   * A mold higher than this many times its foot's depth tips easily; common practice, no source.
   */
  private static final double NARROW = 2.5;

  /** So many filled places are named. */
  private static final int MOST_PLACES = 12;

  /** A pull this close to an axis (cosine from one) is told by the axis alone. */
  private static final double STRAIGHT = 1e-9;

  private final Report report;
  private final Mold mold;
  private final MoldPlan plan;
  private final StringBuilder out = new StringBuilder();

  private JobSheet(Report report, Mold mold) {
    this.report = report;
    this.mold = mold;
    this.plan = mold.plan();
  }

  static String of(Report report, Mold mold) {
    return new JobSheet(report, mold).write();
  }

  private String write() {
    Material m = plan.material();
    line("JOB SHEET: mold for %s in %s", report.input().file(), m.name());
    line(
        "%s",
        report.proof().passed()
            ? "Proved: every check passed on the files in this folder."
            : "NOT PROVED: see the failed checks below. Do not pour before they are settled.");
    report.proof().checks().stream()
        .filter(c -> !c.passed())
        .forEach(c -> item("FAILED %s: %s", c.name(), c.words()));
    blockedOut();
    caughtPlaces();
    pieces();
    print();
    close();
    pour(m);
    if (report.pouring() != null) {
      PourSheet.lines(report.pouring(), m).forEach(l -> item("%s", l));
    }
    open(m);
    if (report.pouring() != null) {
      list("Weigh, print, pay", PourSheet.bench(report.pouring()));
    }
    list("Before you start", m.cautions());
    item(
        "A closed mold is heavy and comes apart suddenly: secure and lift it by local rules."
            + " Printing fumes and uncured resin: ventilate, wear gloves.");
    item("Suppliers' safety data sheets, local codes and licensed practice come first.");
    list("Notes", report.warnings());
    return out.toString();
  }

  private void blockedOut() {
    Report.BlockedOut b = report.blockedOut();
    if (b == null) {
      return;
    }
    head("Blocked out");
    item(
        "So that two pieces open it, the casting holds %.0f mm³ more than the model: undercuts of %.0f"
            + " mm³ are filled, up to an even seam and with draft. They are:",
        b.addedMm3(), b.caughtMm3());
    for (Report.FilledInfo f : b.places().subList(0, Math.min(MOST_PLACES, b.places().size()))) {
      item(
          "%s of the model: %.1f mm³, %.1f mm² across the pull, up to %.1f mm along it",
          near(f.center()), f.volumeMm3(), f.areaMm2(), f.heightMm());
    }
    int more = b.smaller() + Math.max(0, b.places().size() - MOST_PLACES);
    if (more > 0) {
      item("%d smaller place(s)", more);
    }
  }

  private void caughtPlaces() {
    if (report.survey().free()) {
      return;
    }
    boolean two = report.cover() == null;
    head(two ? "Caught places" : "Where two opposite pieces would be caught");
    for (Report.StretchInfo s : report.stretch()) {
      item(
          "%s: stretches by %.1f %% of %.1f %% allowed (half of what the material takes), %.2f mm"
              + " deep, %.2f mm wide",
          near(s.center()), 100 * s.strain(), 100 * s.limit(), s.depthMm(), s.widthMm());
    }
    for (Report.CaughtInfo c : report.survey().caught()) {
      item(
          "%s of the scaled model: %.1f mm² caught, %.2f mm deep, %.2f mm wide",
          near(c.center()), c.areaMm2(), c.depthMm(), c.widthMm());
    }
  }

  private static String near(List<Double> p) {
    return String.format(Locale.ROOT, "near (%.1f, %.1f, %.1f)", p.get(0), p.get(1), p.get(2));
  }

  private void pieces() {
    head("Pieces");
    for (Report.PieceFile p : report.pieces()) {
      item(
          "%s: %s (to print: %s), %.1f cm³, comes off as number %d along %s",
          p.name(), p.file(), p.printFile(), p.volumeMm3() / 1000, p.order(), axis(p.pull()));
    }
    Vec3 s = plan.frame().scale();
    item(
        "Scaled for shrink by %.5f, %.5f, %.5f (model x, y, z); shrink from: %s",
        s.x(), s.y(), s.z(), report.material().shrinkSource());
    item(
        "Block %s, %s mm; seam %s, %.0f mm long",
        report.block().shape(),
        size(report.block().box()),
        plan.seam().flat() ? "flat" : "following the model",
        report.parting().seamLengthMm());
    wishes();
  }

  private void wishes() {
    if (plan.options().wishes().all().isEmpty()) {
      return;
    }
    Report.PartingInfo p = report.parting();
    item(
        "Of the seam %.0f mm are in sight, %.0f mm (%.0f %%) cross faces to be shown",
        p.visibleSeamMm(), p.showSeamMm(), 100 * p.showShare());
  }

  private void print() {
    head("Print");
    List<Piece> turned =
        mold.pieces().stream().filter(p -> p.pose().foot() != PrintPose.Foot.OUTER_FACE).toList();
    if (turned.size() < mold.pieces().size()) {
      item(
          "%sOuter face on the bed, cavity upward, no supports: the files in print/ stand that way.",
          turned.isEmpty() ? "" : "Pieces not named below: ");
    }
    for (Piece p : turned) {
      item(
          p.pose().foot() == PrintPose.Foot.FLAT_FACE
              ? "%s: its outer face is not square to its pull; print/ has it on its largest flat face"
                  + " that keeps the cavity upward. Look for overhangs."
              : "%s: it has no flat face to stand on; print it with supports on its outside.",
          p.name());
    }
    item("At least 4 wall lines and no gaps in the shut-off faces, or the mold weeps.");
    item("Smooth or coat the cavity: layer lines grip like an undercut.");
  }

  private void close() {
    head("Close");
    item(
        "%d keys (%s), gap %.2f mm"
            + (oneWay() ? "; they fit in one way only." : ".")
            + " Dry-fit first.",
        plan.keys().size(),
        plan.keys().isEmpty() ? "none" : plan.keys().get(0).shape().name().toLowerCase(Locale.ROOT),
        plan.options().clearance());
    item("%s", closing(plan.options().closing(), mold.pieces().size()));
    item(
        "Release agent as the material's supplier advises%s.",
        plan.material().release() == null ? "" : "; usual: " + plan.material().release().words());
  }

  /** Whether arrows and the keys' pattern tell how the pieces stand, as between two main ones. */
  private boolean oneWay() {
    return !report.parting().divided();
  }

  private static String closing(Closing c, int pieces) {
    return switch (c) {
      case BANDS -> "Strap rubber bands round the grooves.";
      case BOLTS -> "Bolt through the clear holes, finger-tight, crosswise.";
      case CLAMPS -> "Clamp on the round seats.";
      case NONE ->
          "No closing features: tape or clamp the " + (pieces == 2 ? "halves." : "pieces.");
    };
  }

  private void pour(Material m) {
    head("Pour");
    item(
        plan.pour().pour() == Pour.SEAM
            ? "Stand the mold "
                + (oneWay() ? "with the arrows pointing up, seam upright, " : "with the ")
                + "funnel on top."
            : "Lay the mold flat, %s on top; pour through a loose funnel.",
        mold.pieces().get(0).name().replace('-', ' '));
    item(
        "Volume %.1f cm³ with gate and vents: %.3f kg at %.0f kg/m³. Mix 5 to 10 %% more.",
        report.pour().volumeToPourMm3() / 1000,
        report.pour().massToPourKg(),
        m.density().kgPerM3());
    Report.Box box = report.block().box();
    double height = box.max().get(1) - box.min().get(1);
    double depth = box.max().get(2) - box.min().get(2);
    if (plan.pour().pour() == Pour.SEAM && height > NARROW * depth) {
      item("It stands %.0f mm high on a foot %.0f mm deep: prop it up.", height, depth);
    }
    item(
        "%d gate, %d vent(s): stop when every vent shows material.",
        report.pour().gates(), report.pour().vents());
    Report.GateInfo gate = report.pour().gate();
    if (gate.at().equals("bottom")) {
      item(
          "It fills from below: pour down the gate beside the casting until the riser on top is full.");
    }
    item("Gate at the %s. %s", gate.at(), gate.why());
    if (!m.pourC().isEmpty()) {
      item("Pour at %s °C.", range(m.pourC()));
    }
    if (m.workingTimeMin() != null) {
      item("Working time usually %s min.", range(m.workingTimeMin()));
    }
    item("%s", m.notes());
  }

  private void open(Material m) {
    head("Open");
    if (m.demoldTimeMin().isEmpty()) {
      item("The time to the opening is not known: take the supplier's.");
    } else {
      item(
          "Not before %s min (usual range; the supplier's figure wins).", range(m.demoldTimeMin()));
    }
    if (report.pouring() != null && report.pouring().heat() != null) {
      item("%s", HeatSheet.demold(report.pouring().heat()));
    }
    item("Start at the pry slots; pull straight, without twisting:");
    String held =
        report.features().stream()
            .filter(f -> f.kind().equals("grip"))
            .map(f -> Integer.toString(f.piece()))
            .collect(Collectors.joining(", "));
    if (!held.isEmpty()) {
      item(
          "  to pull by, turn a wood screw of 4 mm into the hole in the outside of piece %s", held);
    }
    for (Piece p : mold.pieces()) {
      item(
          "  %d. %s off along %s",
          p.order(), p.name(), axis(List.of(p.pull().x(), p.pull().y(), p.pull().z())));
    }
    item("Cut gate and vents off the casting when it is free.");
  }

  private void list(String head, List<String> lines) {
    if (!lines.isEmpty()) {
      head(head);
      lines.forEach(l -> item("%s", l));
    }
  }

  private void head(String words) {
    out.append('\n').append(words.toUpperCase(Locale.ROOT)).append('\n');
  }

  private void line(String format, Object... args) {
    out.append(String.format(Locale.ROOT, format, args)).append('\n');
  }

  /** One wrapped list item. */
  private void item(String format, Object... args) {
    String text = String.format(Locale.ROOT, format, args);
    StringBuilder row = new StringBuilder("- ");
    for (String word : text.split(" ", -1)) {
      if (row.length() + word.length() > WIDTH) {
        out.append(row.toString().stripTrailing()).append('\n');
        row = new StringBuilder("  ");
      }
      row.append(word).append(' ');
    }
    out.append(row.toString().stripTrailing()).append('\n');
  }

  /** A direction of the mold frame, by the name of its axis if it runs along one. */
  static String axis(List<Double> v) {
    for (int k = 0; k < v.size(); k++) {
      if (Math.abs(v.get(k)) > 1 - STRAIGHT) {
        return (v.get(k) > 0 ? "+" : "-") + "xyz".charAt(k) + " (mold frame)";
      }
    }
    return String.format(
        Locale.ROOT, "(%.3f, %.3f, %.3f) (mold frame)", v.get(0), v.get(1), v.get(2));
  }

  private static String size(Report.Box b) {
    return String.format(
        Locale.ROOT,
        "%.1f × %.1f × %.1f",
        b.max().get(0) - b.min().get(0),
        b.max().get(1) - b.min().get(1),
        b.max().get(2) - b.min().get(2));
  }

  private static String range(List<Double> r) {
    return r.stream()
        .map(d -> String.format(Locale.ROOT, "%.0f", d))
        .collect(Collectors.joining(" to "));
  }
}
