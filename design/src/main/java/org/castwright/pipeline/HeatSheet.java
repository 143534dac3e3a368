package org.castwright.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.advice.HeatInfo;
import org.castwright.heat.ThermalTable;

/** Cooling and curing in sentences, for the job sheet, its print and the command line. */
public final class HeatSheet {

  /** Pools that leave less than this are no worry, mm³. */
  private static final double LEAST_SINK = 20;

  private HeatSheet() {}

  /** From the pour to the opening; empty when nothing is known. */
  public static List<String> lines(HeatInfo h) {
    if (h == null) {
      return List.of();
    }
    List<String> out = new ArrayList<>();
    out.add(demold(h));
    out.add(peak(h));
    out.add(wall(h.wall()));
    if (h.last() != null) {
      boolean outside = !h.pools().isEmpty() && h.pools().get(0).inChannels();
      String where = outside ? ", in the gate or a vent" : "";
      out.add(say("It sets last near %s%s.", place(h.last()), where));
    }
    if (h.feed() != null) {
      out.add(feed(h));
      pools(h, out);
    }
    return out;
  }

  /** How long until it can leave the mold, with the band. */
  public static String demold(HeatInfo h) {
    String where =
        say("in a mold of %s and air of %.0f °C", ThermalTable.mold(h.wallOf()).name(), h.airC());
    if (h.demoldS() == null) {
      return "It does not set within a week " + where + ".";
    }
    return say(
        "It can leave the mold after about %s %s%s.",
        time(h.demoldS()),
        where,
        h.demoldFromS() == null || h.demoldToS() == null
            ? ""
            : say(
                " (%s to %s by the ranges of its figures)",
                time(h.demoldFromS()), time(h.demoldToS())));
  }

  private static String peak(HeatInfo h) {
    String hot =
        h.peakToC() == null || h.peakToC() <= h.peakC()
            ? ""
            : say(" (%.0f °C at the hot ends of its figures)", h.peakToC());
    return h.peakPlace() == null
        ? say("It gets no hotter than the pour, %.0f °C%s.", h.peakC(), hot)
        : say(
            "It gets up to %.0f °C%s, near %s after %s.",
            h.peakC(), hot, place(h.peakPlace()), time(h.peakS()));
  }

  private static String wall(HeatInfo.Wall w) {
    String most = say("The mold's inner wall comes to %.0f °C at most", w.peakC());
    String limit =
        w.limitC() == w.limitToC()
            ? say("its %s of %.0f °C", w.limit(), w.limitC())
            : say("its %s of %.0f to %.0f °C", w.limit(), w.limitC(), w.limitToC());
    return switch (w.softens()) {
      case "yes" -> most + ", above " + limit + say(": %s.", share(w));
      case "may" -> most + ", within " + limit + say(", and may soften: %s.", share(w));
      default -> most + ", below " + limit + ".";
    };
  }

  private static String share(HeatInfo.Wall w) {
    return w.overS() == null || w.overS() == 0
        ? say("%.0f %% of it, from the pour on", 100 * w.overShare())
        : say("%.0f %% of it, from %s on", 100 * w.overShare(), time(w.overS()));
  }

  private static String feed(HeatInfo h) {
    HeatInfo.Feed f = h.feed();
    if (f.shrinkPercent() < 0) {
      return say(
          "It grows by %.1f %% as it freezes, %.1f cm³: leave gate and vents open and room above.",
          -f.shrinkPercent(), -f.sinkMm3() / 1000);
    }
    String lost =
        say("It loses %.1f %% as it freezes, %.1f cm³", f.shrinkPercent(), f.sinkMm3() / 1000);
    if (f.feeds()) {
      return lost + "; the gate stays open long enough to feed it: keep it full.";
    }
    return lost
        + (f.gateModulusMm() == null ? "" : "; the gate freezes before it")
        + say(
            ": expect a sink or hollow, top up through a hole in the skin, or give it a riser %.0f mm"
                + " wide and high.",
            f.riserMm());
  }

  private static void pools(HeatInfo h, List<String> out) {
    // the last of the casting is told with its feeding
    for (HeatInfo.Pool p : h.pools().stream().filter(q -> !q.inChannels()).skip(1).toList()) {
      if (p.sinkMm3() != null && p.sinkMm3() >= LEAST_SINK) {
        out.add(
            say(
                "Near %s %.1f cm³ are cut off while liquid, after %s, and leave a hollow of %.2f cm³"
                    + " unless they have a riser of their own.",
                place(p.place()), p.cutOffMm3() / 1000, time(p.cutOffS()), p.sinkMm3() / 1000));
      }
    }
  }

  private static String place(List<Double> p) {
    return say("(%.0f, %.0f, %.0f) of the mold frame", p.get(0), p.get(1), p.get(2));
  }

  static String time(double s) {
    if (s < 120) {
      return say("%.0f s", s);
    }
    return s < 7200 ? say("%.0f min", s / 60) : say("%.1f h", s / 3600);
  }

  private static String say(String format, Object... args) {
    return String.format(Locale.ROOT, format, args);
  }
}
