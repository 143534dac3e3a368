package org.castwright.plan;

import java.util.List;
import org.castwright.geom.Vec3;

/**
 * How the closed mold is filled.
 *
 * @param pour position
 * @param up direction in the mold frame
 * @param channels gate first, then the riser of a gate at the bottom, then vents
 * @param peaks number of roof maxima found
 * @param gate which end of the casting the gate joins
 * @param warnings sentences for the job sheet: what could not be vented and what to do
 */
public record PourPlan(
    Pour pour,
    Vec3 up,
    List<Channel> channels,
    int peaks,
    GateChoice gate,
    List<String> warnings) {}
