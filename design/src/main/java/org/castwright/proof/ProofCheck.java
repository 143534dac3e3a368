package org.castwright.proof;

import java.util.List;
import org.castwright.geom.Vec3;

/**
 * One thing judged.
 *
 * @param name what was judged, stable from run to run: room, body, quantity
 * @param passed whether it holds
 * @param value as measured
 * @param limit what it was held against; whether from above or from below, the words say
 * @param unit of value and limit
 * @param words one sentence for a person, which says where when the check failed
 * @param places every place that does not hold, where the check can tell them one by one, mm
 */
public record ProofCheck(
    String name,
    boolean passed,
    double value,
    double limit,
    String unit,
    String words,
    List<Vec3> places) {

  public ProofCheck {
    places = List.copyOf(places);
  }

  /** Without single places. */
  public ProofCheck(
      String name, boolean passed, double value, double limit, String unit, String words) {
    this(name, passed, value, limit, unit, words, List.of());
  }
}
