package org.castwright.plan;

import org.castwright.geom.Vec3;
import org.castwright.solid.Solid;

/**
 * A piece before keys, channels and features are cut.
 *
 * @param pull unit direction it leaves in, mold frame
 * @param body in the closed mold, mold frame
 */
public record RawPiece(Vec3 pull, Solid body) {}
