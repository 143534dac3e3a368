package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.plan.Channel.Station;

/**
 * Cross-sections of a channel along the seam that both halves can leave: each flank spans the
 * heights of the sheet across the bore and along it up to the next sections, about an axis that
 * runs smoothly.
 */
final class SeamBore {

  /** Growth of a funnel's radius for each millimeter toward the mouth. */
  static final double FUNNEL_SLOPE = Math.tan(Math.toRadians(Sizes.FUNNEL_HALF_ANGLE));

  /** Distance between cross-sections, mm. */
  private static final double STEP = 1.5;

  /**
   * Straight flank added above and below the sheet, so that its facets cannot tilt out of the bore.
   */
  private static final double LEAST_RISE = 0.2;

  /** Ground that a channel leaves before and behind it, mm; common practice, no source. */
  static final double LEAST_WALL = 2;

  /** Rounds of averaging the axis' height; three blend about five sections. */
  private static final int SMOOTHINGS = 3;

  private final Ground ground;
  private final double radius;
  private final double mouth;
  private final double joinHeight;
  private final double floor;
  private final double roof;

  /**
   * @param radius of the bore, mm
   * @param mouth radius at the end, mm
   * @param joinHeight of the seam where the channel joins the casting, used inside its shadow
   * @param floor height of the block's back, mm
   * @param roof height of its front, mm
   */
  SeamBore(
      Ground ground, double radius, double mouth, double joinHeight, double floor, double roof) {
    this.ground = ground;
    this.radius = radius;
    this.mouth = mouth;
    this.joinHeight = joinHeight;
    this.floor = floor + LEAST_WALL;
    this.roof = roof - LEAST_WALL;
  }

  /**
   * A cross-section before the axis is smoothed: the sheet lies between {@code lo} and {@code hi}.
   */
  private record Section(double x, double y, double r, double lo, double hi, boolean inside) {}

  /** Cross-sections from the first corner to the last. */
  List<Station> along(List<double[]> corners) {
    List<Section> sections = sections(corners);
    double[] z = smoothed(sections);
    List<Station> stations = new ArrayList<>();
    for (int i = 0; i < z.length; i++) {
      Section s = sections.get(i);
      double height = withinBlock(z[i], s);
      double rise = Math.max(s.hi - height, height - s.lo) + LEAST_RISE;
      stations.add(new Station(new Vec3(s.x, s.y, height), s.r, rise));
    }
    return stations;
  }

  /**
   * Where the sheet lies far to one side of the axis, a flank as long on the other side would break
   * out of the block: there the axis moves toward the sheet by what is too much.
   */
  private double withinBlock(double z, Section s) {
    double middle = (s.lo + s.hi) / 2;
    double r = s.r + LEAST_RISE;
    // above the middle the flank reaches up to z + (z − lo) + r, below it down to z − (hi − z) − r
    return z > middle
        ? Math.max(middle, Math.min(z, (roof + s.lo - r) / 2))
        : Math.min(middle, Math.max(z, (floor + s.hi + r) / 2));
  }

  private List<Section> sections(List<double[]> corners) {
    double[] end = corners.get(corners.size() - 1);
    List<Section> sections = new ArrayList<>();
    for (int k = 0; k + 1 < corners.size(); k++) {
      double[] a = corners.get(k);
      double[] b = corners.get(k + 1);
      boolean last = k + 2 == corners.size();
      double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      int n = Math.max(1, (int) Math.ceil(length / STEP));
      for (int i = 0; i < n + (last ? 1 : 0); i++) {
        double x = a[0] + (b[0] - a[0]) * i / n;
        double y = a[1] + (b[1] - a[1]) * i / n;
        double cone = last ? mouth - Math.hypot(end[0] - x, end[1] - y) * FUNNEL_SLOPE : 0;
        double ux = (b[0] - a[0]) / length;
        double uy = (b[1] - a[1]) / length;
        sections.add(section(x, y, Math.max(radius, cone), ux, uy));
      }
    }
    return sections;
  }

  private Section section(double x, double y, double r, double ux, double uy) {
    Span sheet = new Span();
    Span casting = new Span();
    for (int k = -4; k <= 4; k++) {
      double s = r * k / 4;
      for (int i = -3; i <= 3; i++) {
        double t = STEP * i / 3;
        look(x - s * uy + t * ux, y + s * ux + t * uy, sheet, casting);
      }
    }
    if (sheet.lo > sheet.hi) {
      sheet.lo = joinHeight;
      sheet.hi = joinHeight;
    }
    // where the casting itself lies beside the sheet the bore must reach it, or a sliver of a piece
    // would be left between the two and lock
    sheet.lo = Math.min(sheet.lo, casting.lo);
    sheet.hi = Math.max(sheet.hi, casting.hi);
    boolean inside = ground.shadowDistance(x, y) <= 0;
    return new Section(x, y, r, sheet.lo, sheet.hi, inside);
  }

  /** Gathers heights of the sheet, the lowest roof and the highest underside of the casting. */
  private void look(double x, double y, Span sheet, Span casting) {
    double h = ground.heightAt(x, y);
    if (!Double.isNaN(h)) {
      sheet.lo = Math.min(sheet.lo, h);
      sheet.hi = Math.max(sheet.hi, h);
      return;
    }
    double roof = ground.roofAt(x, y);
    if (!Double.isNaN(roof)) {
      casting.lo = Math.min(casting.lo, roof);
      casting.hi = Math.max(casting.hi, ground.undersideAt(x, y));
    }
  }

  /** A range of heights, empty at first. */
  private static final class Span {
    private double lo = Double.POSITIVE_INFINITY;
    private double hi = Double.NEGATIVE_INFINITY;
  }

  /** Heights of the axis: at the join inside the casting, else the middle of the sheet, blended. */
  private double[] smoothed(List<Section> sections) {
    int n = sections.size();
    double[] z = new double[n];
    for (int i = 0; i < n; i++) {
      Section s = sections.get(i);
      z[i] = s.inside ? joinHeight : (s.lo + s.hi) / 2;
    }
    for (int round = 0; round < SMOOTHINGS; round++) {
      double[] next = new double[n];
      for (int i = 0; i < n; i++) {
        double mean = (z[Math.max(0, i - 1)] + z[i] + z[Math.min(n - 1, i + 1)]) / 3;
        next[i] = sections.get(i).inside ? z[i] : mean;
      }
      z = next;
    }
    return z;
  }
}
