package org.castwright.side;

import org.castwright.geom.Vec3;
import org.castwright.solid.Solid;

/**
 * A loose piece of a mold.
 *
 * @param pull unit direction it leaves in, mold frame
 * @param body closed, in the mold frame, within the block's box
 */
public record SidePiece(Vec3 pull, Solid body) {}
