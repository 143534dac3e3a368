package org.castwright.mold;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * One piece of the mold.
 *
 * @param name {@code piece-1}, {@code piece-2}
 * @param order in which it is taken off, from 1
 * @param pull unit direction in which it leaves, mold frame
 * @param mesh in the closed mold, mold frame, float coordinates
 * @param print turned for printing: outer face on z = 0, cavity upward
 */
public record Piece(String name, int order, Vec3 pull, TriMesh mesh, TriMesh print) {}
