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
 * @param cure what would mend it
 * @param body name of the body to mend, empty where that says nothing
 * @param places every place that does not hold, where the check can tell them one by one, mm
 */
public record ProofCheck(
    String name,
    boolean passed,
    double value,
    double limit,
    String unit,
    String words,
    Cure cure,
    String body,
    List<Vec3> places) {

  /** What would mend a failed check without planning the mold anew. */
  public enum Cure {
    NONE,
    EDGES,
    WEBS,
    CATCH
  }

  public ProofCheck {
    places = List.copyOf(places);
  }

  /** Without a cure. */
  public ProofCheck(
      String name, boolean passed, double value, double limit, String unit, String words) {
    this(name, passed, value, limit, unit, words, Cure.NONE, "", List.of());
  }

  /** The same with places where material could go. */
  ProofCheck curedAt(Cure how, String piece, List<Vec3> where) {
    return new ProofCheck(name, passed, value, limit, unit, words, how, piece, where);
  }

  /** The same where a body could give way to what is cast. */
  ProofCheck curedBy(String piece) {
    return new ProofCheck(name, passed, value, limit, unit, words, Cure.CATCH, piece, places);
  }
}
