package org.castwright.repair;

import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;

/**
 * A hollow inside a model that does not reach the outside.
 *
 * @param volume mm³
 * @param box the box round it
 * @param center the center of its box
 */
public record EnclosedVoid(double volume, Box3 box, Vec3 center) {}
