package org.castwright.proof;

/**
 * One thing judged.
 *
 * @param name what was judged, stable from run to run: room, body, quantity
 * @param passed whether it holds
 * @param value as measured
 * @param limit what it was held against; whether from above or from below, the words say
 * @param unit of value and limit
 * @param words one sentence for a person, which says where when the check failed
 */
public record ProofCheck(
    String name, boolean passed, double value, double limit, String unit, String words) {}
