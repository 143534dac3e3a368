package org.castwright.sheet;

import java.util.ArrayList;
import java.util.List;
import org.castwright.advice.HeatInfo;
import org.castwright.advice.PourAdvice;
import org.castwright.geom.Vec3;
import org.castwright.pictures.Chart;
import org.castwright.pictures.FillPicture;
import org.castwright.pictures.OkabeIto;

/** The course of a pour as curves: level against volume and time, temperatures after it. */
public final class PourCharts {

  private static final int LIQUID = OkabeIto.BLUE.rgb();
  private static final int AIR = OkabeIto.VERMILLION.rgb();
  private static final int HOT = OkabeIto.VERMILLION.rgb();
  private static final int WALL = OkabeIto.BLUE.rgb();
  private static final int FAINT = OkabeIto.BLACK.rgb();

  /** Free room over the curves, as a share of their range. */
  private static final double HEADROOM = 0.06;

  private final PourAdvice pour;
  private final Units units;

  private PourCharts(PourAdvice pour, Units units) {
    this.pour = pour;
    this.units = units;
  }

  /** What can be drawn of it, filling first. */
  public static List<Chart> of(PourAdvice pour, Units units) {
    PourCharts c = new PourCharts(pour, units);
    List<Chart> out = new ArrayList<>();
    out.add(c.overVolume());
    if (timed(pour)) {
      out.add(c.overTime());
    }
    if (pour.heat() != null) {
      out.add(c.temperatures());
    }
    return List.copyOf(out);
  }

  /** Whether the level is known to rise to the top of the curve, and when. */
  private static boolean timed(PourAdvice pour) {
    List<Double> t = pour.fill().timeS();
    return !t.isEmpty() && t.get(t.size() - 1) != null && t.get(t.size() - 1) > 0;
  }

  /**
   * When the liquid reaches a height: by time if it is known, else by what was poured; all zero
   * where it runs out as it comes in.
   */
  static FillPicture.Course course(PourAdvice pour) {
    List<Double> level = pour.fill().levelMm();
    if (timed(pour)) {
      List<Double> t = pour.fill().timeS();
      Units.Clock clock = Units.Clock.of(t.get(t.size() - 1));
      return new FillPicture.Course(
          clock.unit + " after the pour", level, t.stream().map(s -> s / clock.seconds).toList());
    }
    return new FillPicture.Course("% poured", level, percent(pour.fill().pouredMm3()));
  }

  /** Volumes in percent of the last, all zero where nothing stays in. */
  static List<Double> percent(List<Double> poured) {
    double all = poured.get(poured.size() - 1);
    return poured.stream().map(v -> all > 0 ? 100 * v / all : 0.0).toList();
  }

  /** Pockets, named A1, A2 and so on, largest first. */
  static List<FillPicture.Air> air(PourAdvice pour) {
    List<FillPicture.Air> out = new ArrayList<>();
    List<PourAdvice.PocketInfo> pockets = pour.fill().pockets();
    for (int i = 0; i < pockets.size(); i++) {
      List<Double> p = pockets.get(i).top();
      out.add(
          new FillPicture.Air(
              new Vec3(p.get(0), p.get(1), p.get(2)), pockets.get(i).volumeMm3(), name(i)));
    }
    return out;
  }

  private static String name(int pocket) {
    return "A" + (pocket + 1);
  }

  private Chart overVolume() {
    List<Double> v = pour.fill().pouredMm3().stream().map(units::volumeIn).toList();
    return new Chart(
        "Level against volume",
        axis("poured, " + units.volumeUnit(), v),
        heightAxis(),
        List.of(new Chart.Curve("", LIQUID, points(v, heights()))),
        levels());
  }

  private Chart overTime() {
    List<Double> t = pour.fill().timeS();
    Units.Clock clock = Units.Clock.of(t.get(t.size() - 1));
    List<Double> times = t.stream().map(s -> s / clock.seconds).toList();
    return new Chart(
        "Level against time",
        axis("gate kept full, " + clock.unit, times),
        heightAxis(),
        List.of(new Chart.Curve("", LIQUID, points(times, heights()))),
        levels());
  }

  private List<Double> heights() {
    double low = pour.fill().levelMm().get(0);
    return pour.fill().levelMm().stream().map(l -> units.inUnit(l - low)).toList();
  }

  private Chart.Axis heightAxis() {
    return axis("level, " + units.lengthUnit(), heights());
  }

  private static Chart.Axis axis(String title, List<Double> values) {
    double high = values.stream().mapToDouble(Double::doubleValue).max().orElse(1);
    return new Chart.Axis(title, 0, high > 0 ? high * (1 + HEADROOM) : 1);
  }

  private static List<Chart.Point> points(List<Double> x, List<Double> y) {
    List<Chart.Point> out = new ArrayList<>();
    for (int i = 0; i < x.size(); i++) {
      out.add(new Chart.Point(x.get(i), y.get(i)));
    }
    return out;
  }

  /** The casting's top, and where each pocket is shut in. */
  private List<Chart.Level> levels() {
    List<Chart.Level> out = new ArrayList<>();
    double low = pour.fill().levelMm().get(0);
    double mouth = pour.fill().levelMm().get(pour.fill().levelMm().size() - 1);
    if (pour.fill().mouthOverCastingMm() != null && pour.fill().mouthOverCastingMm() > 0) {
      double top = mouth - pour.fill().mouthOverCastingMm() - low;
      out.add(new Chart.Level(units.inUnit(top), "casting full", FAINT));
    }
    List<Double> up = pour.up();
    List<PourAdvice.PocketInfo> pockets = pour.fill().pockets();
    for (int i = 0; i < pockets.size(); i++) {
      PourAdvice.PocketInfo p = pockets.get(i);
      double top = 0;
      for (int k = 0; k < up.size(); k++) {
        top += up.get(k) * p.top().get(k);
      }
      out.add(
          new Chart.Level(
              units.inUnit(Math.max(0, top - p.depthMm() - low)),
              Units.of(
                  "%s: %.2g %s of air shut in",
                  name(i), units.volumeIn(p.volumeMm3()), units.volumeUnit()),
              AIR));
    }
    return out;
  }

  private Chart temperatures() {
    HeatInfo h = pour.heat();
    HeatInfo.Course c = h.course();
    Units.Clock clock = Units.Clock.of(c.timeS().get(c.timeS().size() - 1));
    List<Double> t = c.timeS().stream().map(s -> s / clock.seconds).toList();
    List<Double> hot = c.hottestC().stream().map(units::temperatureIn).toList();
    List<Double> wall = c.wallC().stream().map(units::temperatureIn).toList();
    double limit = units.temperatureIn(h.wall().limitC());
    double high = Math.max(limit, max(hot));
    double low = Math.min(units.temperatureIn(h.airC()), Math.min(min(hot), min(wall)));
    double room = HEADROOM * (high - low);
    return new Chart(
        "Temperature after the pour",
        axis("time, " + clock.unit, t),
        new Chart.Axis(units.temperatureUnit(), low - room, high + 4 * room),
        List.of(
            new Chart.Curve("hottest place of the casting", HOT, points(t, hot)),
            new Chart.Curve("hottest place of the mold's wall", WALL, points(t, wall))),
        List.of(new Chart.Level(limit, "wall: " + h.wall().limit(), FAINT)));
  }

  private static double max(List<Double> v) {
    return v.stream().mapToDouble(Double::doubleValue).max().orElse(0);
  }

  private static double min(List<Double> v) {
    return v.stream().mapToDouble(Double::doubleValue).min().orElse(0);
  }
}
