package org.castwright.pipeline;

import java.util.List;
import org.castwright.geom.Vec3;

/** Points and directions between the mold frame and the model's, as a report states them. */
public final class MoldPoints {

  private MoldPoints() {}

  /** A point of the mold frame in the model's frame, before scaling for shrink. */
  public static Vec3 toModel(Report r, Vec3 p) {
    Vec3 q = p.plus(vec(r.moldFrame().origin()));
    Vec3 scaled = directionToModel(r, q);
    Vec3 s = vec(r.scale());
    return new Vec3(scaled.x() / s.x(), scaled.y() / s.y(), scaled.z() / s.z());
  }

  /** A direction of the mold frame in the model's frame. */
  static Vec3 directionToModel(Report r, Vec3 d) {
    List<List<Double>> rows = r.moldFrame().rows();
    return vec(rows.get(0))
        .times(d.x())
        .plus(vec(rows.get(1)).times(d.y()))
        .plus(vec(rows.get(2)).times(d.z()));
  }

  /** A point of the scaled model in the mold frame. */
  static Vec3 scaledToMold(Report r, Vec3 p) {
    List<List<Double>> rows = r.moldFrame().rows();
    return new Vec3(vec(rows.get(0)).dot(p), vec(rows.get(1)).dot(p), vec(rows.get(2)).dot(p))
        .minus(vec(r.moldFrame().origin()));
  }

  static Vec3 vec(List<Double> v) {
    return new Vec3(v.get(0), v.get(1), v.get(2));
  }
}
