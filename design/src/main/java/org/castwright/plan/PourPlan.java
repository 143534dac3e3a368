package org.castwright.plan;

import java.util.List;
import org.castwright.geom.Vec3;

/**
 * How the closed mold is filled.
 *
 * @param pour position
 * @param up direction in the mold frame
 * @param channels gate first, then vents
 * @param peaks number of roof maxima found
 * @param warnings sentences for the job sheet: what could not be vented and what to do
 */
public record PourPlan(
    Pour pour, Vec3 up, List<Channel> channels, int peaks, List<String> warnings) {}
