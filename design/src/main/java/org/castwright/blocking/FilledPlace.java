package org.castwright.blocking;

import org.castwright.geom.Vec3;

/**
 * A place of a model that was filled.
 *
 * @param center middle of it, mm, in the model's frame
 * @param volumeMm3 what was filled, mm³
 * @param areaMm2 its extent across the pull, mm²
 * @param heightMm its largest extent along the pull, mm
 */
public record FilledPlace(Vec3 center, double volumeMm3, double areaMm2, double heightMm) {}
