package org.castwright.fill;

import org.castwright.geom.Vec3;

/**
 * Air that cannot leave.
 *
 * @param top its highest place
 * @param depthMm from there down to the level that shuts it in
 * @param volumeMm3 shut in
 */
public record Pocket(Vec3 top, double depthMm, double volumeMm3) {}
