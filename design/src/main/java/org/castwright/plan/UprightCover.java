package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.castwright.geom.Vec3;
import org.castwright.plan.Channel.Station;

/** What gate and vents that run straight up cover of a casting. */
final class UprightCover implements Predicate<Vec3> {

  /** Lines along the foot of a channel stray from it by so much, mm. */
  private static final double PAST = 0.3;

  private final List<Channel> channels;
  private final double past;

  UprightCover(List<Channel> channels) {
    this(channels, PAST);
  }

  /**
   * @param past how far beside them counts too, mm
   */
  UprightCover(List<Channel> channels, double past) {
    this.channels = channels;
    this.past = past;
  }

  @Override
  public boolean test(Vec3 p) {
    return channels.stream().anyMatch(c -> covers(c.stations(), p));
  }

  private boolean covers(List<Station> s, Vec3 p) {
    Vec3 axis = s.get(0).center();
    return Math.hypot(p.x() - axis.x(), p.z() - axis.z()) < radiusAt(s, p.y()) + past;
  }

  /** The radius of a channel straight up at a height, mm; minus infinity past its ends. */
  static double radiusAt(List<Station> s, double y) {
    for (int i = 0; i + 1 < s.size(); i++) {
      double y0 = s.get(i).center().y();
      double y1 = s.get(i + 1).center().y();
      if (y >= y0 && y <= y1) {
        double t = y1 > y0 ? (y - y0) / (y1 - y0) : 0;
        return s.get(i).radius() + t * (s.get(i + 1).radius() - s.get(i).radius());
      }
    }
    return Double.NEGATIVE_INFINITY;
  }

  /** What is left of lines, packed points, outside the channels. */
  List<double[]> clip(List<double[]> lines) {
    List<double[]> out = new ArrayList<>();
    for (double[] line : lines) {
      List<Vec3> run = new ArrayList<>();
      for (int i = 0; i < line.length; i += 3) {
        Vec3 p = new Vec3(line[i], line[i + 1], line[i + 2]);
        if (test(p)) {
          put(run, out);
          run.clear();
        } else {
          run.add(p);
        }
      }
      put(run, out);
    }
    return out;
  }

  private static void put(List<Vec3> run, List<double[]> out) {
    if (run.size() < 2) {
      return;
    }
    double[] packed = new double[3 * run.size()];
    for (int i = 0; i < run.size(); i++) {
      packed[3 * i] = run.get(i).x();
      packed[3 * i + 1] = run.get(i).y();
      packed[3 * i + 2] = run.get(i).z();
    }
    out.add(packed);
  }
}
