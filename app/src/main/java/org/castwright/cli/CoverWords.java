package org.castwright.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import org.castwright.pipeline.CoverInfo;

/** What a look for the fewest pulls says to a person. */
final class CoverWords {

  // places beyond this many are told as a number
  private static final int PLACES = 8;

  private CoverWords() {}

  static void print(CoverInfo c, PrintWriter out) {
    var proof = c.certificate();
    line(
        out,
        c.opens()
            ? "opens in %d pulls, %d piece(s) to print; %s"
            : "does NOT open in %d pulls, %d piece(s) to print; %s",
        c.pulls().size(),
        c.pieces(),
        certainty(c));
    line(
        out,
        "  %d directions on trial, %d points, %d search nodes",
        proof.candidates(),
        proof.samples(),
        proof.nodes());
    pulls(c, out);
    curve(c, out);
    places(out, "caught", c.left(), c.places());
    places(out, "freed by no direction", c.never(), c.neverPlaces());
    line(
        out,
        "  counting ledges from %.2f mm up: %.1f mm², %.1f mm³ caught",
        c.fineWidthMm(),
        c.fine().areaMm2(),
        c.fine().volumeMm3());
    line(
        out,
        c.holdsTurned()
            ? "  holds when all pulls are turned by %.2f°"
            : "  FRAGILE: does not hold when all pulls are turned by %.2f°; it hangs on walls without"
                + " draft",
        c.turnDegrees());
  }

  private static void pulls(CoverInfo c, PrintWriter out) {
    for (int i = 0; i < c.pulls().size(); i++) {
      var p = c.pulls().get(i);
      line(
          out,
          "  pull %d along %s%s: only it frees %.1f mm², %.1f mm³; %d piece(s)",
          i + 1,
          list(p.direction()),
          p.given() ? " (given)" : "",
          p.onlyAreaMm2(),
          p.onlyVolumeMm3(),
          p.bodies());
    }
  }

  private static void curve(CoverInfo c, PrintWriter out) {
    line(
        out,
        "  caught with so many pulls (may stay: %.1f mm², %.1f mm³, creases of %.2f mm)",
        c.tolerance().areaMm2(),
        c.tolerance().volumeMm3(),
        c.tolerance().widthMm());
    for (var p : c.curve()) {
      line(
          out,
          "  %4d: %10.1f mm² %10.1f mm³ %7.2f mm wide%s",
          p.pulls(),
          p.areaMm2(),
          p.volumeMm3(),
          p.widthMm(),
          p.opens() ? "  opens" : "");
    }
  }

  private static String certainty(CoverInfo c) {
    var p = c.certificate();
    if (p.least() == 0) {
      return String.format(
          Locale.ROOT, "no number up to 8 was found; at least %d are needed", p.lowerBound());
    }
    if (p.proven()) {
      return p.least() + " is the least over the directions tried (proven)";
    }
    return String.format(
        Locale.ROOT,
        "%d is the least found (not proven; at least %d are needed)",
        p.least(),
        p.lowerBound());
  }

  private static void places(
      PrintWriter out, String what, CoverInfo.CaughtSum sum, List<CoverInfo.Place> places) {
    if (places.isEmpty()) {
      return;
    }
    line(
        out,
        "  %s in all: %.1f mm², %.1f mm³, up to %.2f mm wide",
        what,
        sum.areaMm2(),
        sum.volumeMm3(),
        sum.widthMm());
    for (var p : places.subList(0, Math.min(PLACES, places.size()))) {
      line(
          out,
          "  %s near (%s): %.2f mm², %.2f mm³, %.2f mm wide, %d facet(s) from %d",
          what,
          list(p.center()),
          p.areaMm2(),
          p.volumeMm3(),
          p.widthMm(),
          p.facets(),
          p.firstFacets().get(0));
    }
    if (places.size() > PLACES) {
      line(out, "  and %d more place(s)", places.size() - PLACES);
    }
  }

  private static String list(List<Double> v) {
    return String.format(Locale.ROOT, "%.4g, %.4g, %.4g", v.get(0), v.get(1), v.get(2));
  }

  private static void line(PrintWriter out, String format, Object... args) {
    out.println(String.format(Locale.ROOT, format, args));
  }
}
