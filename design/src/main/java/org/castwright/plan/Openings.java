package org.castwright.plan;

import java.util.List;
import org.castwright.geom.Vec3;

/**
 * What the maker wishes of gate and vents. Places are in the model's frame, mm, before scaling for
 * shrink, so that they stay where they are on the model whatever else changes; each opening is made
 * at the nearest place that can be joined.
 *
 * @param gateAt where the gate should join, or null to choose by rule
 * @param ventsAt where further vents should join, besides those at the roof's maxima
 * @param gate end of the casting that the gate joins, where no place is asked for
 * @param gateMm bore of the gate's throat, or 0 for the material's
 * @param ventMm bore of a vent, or 0 for the material's
 */
public record Openings(
    Vec3 gateAt, List<Vec3> ventsAt, GateEnd gate, double gateMm, double ventMm) {

  /** All by rule. */
  public static final Openings BY_RULE = new Openings(null, List.of(), GateEnd.TOP, 0, 0);

  /** More vents than this would leave no seam to close. */
  public static final int MOST_VENTS = 12;

  /** Checks every value; the message of the exception says which is wrong and what is allowed. */
  public Openings {
    gate = gate == null ? GateEnd.TOP : gate;
    ventsAt = ventsAt == null ? List.of() : List.copyOf(ventsAt);
    require(gateMm == 0 || (gateMm >= 2 && gateMm <= 50), "the gate's bore must be 2 to 50 mm");
    require(ventMm == 0 || (ventMm >= 0.5 && ventMm <= 20), "a vent's bore must be 0.5 to 20 mm");
    require(ventsAt.size() <= MOST_VENTS, "at most 12 vents can be placed by hand");
  }

  private static void require(boolean ok, String words) {
    if (!ok) {
      throw new IllegalArgumentException(words);
    }
  }

  public Openings withGateAt(Vec3 v) {
    return new Openings(v, ventsAt, gate, gateMm, ventMm);
  }

  public Openings withVentsAt(List<Vec3> v) {
    return new Openings(gateAt, v, gate, gateMm, ventMm);
  }

  public Openings withGate(GateEnd v) {
    return new Openings(gateAt, ventsAt, v, gateMm, ventMm);
  }

  public Openings withGateMm(double v) {
    return new Openings(gateAt, ventsAt, gate, v, ventMm);
  }

  public Openings withVentMm(double v) {
    return new Openings(gateAt, ventsAt, gate, gateMm, v);
  }
}
