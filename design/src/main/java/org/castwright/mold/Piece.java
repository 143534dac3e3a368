package org.castwright.mold;

import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * One piece of the mold.
 *
 * @param name {@code piece-1}, {@code piece-2} and so on
 * @param order in which it is taken off, from 1
 * @param pull unit direction in which it leaves, mold frame
 * @param mesh in the closed mold, mold frame, float coordinates
 * @param print turned for printing, standing on z = 0: see {@link PrintPose}
 */
public record Piece(String name, int order, Vec3 pull, TriMesh mesh, TriMesh print) {

  /** A piece with its usual name, posed for printing. */
  public static Piece of(int order, Vec3 pull, TriMesh mesh) {
    TriMesh print = PrintPose.of(mesh, pull).apply(mesh);
    return new Piece("piece-" + order, order, pull, mesh, print);
  }

  /** How it was turned for printing. */
  public PrintPose pose() {
    return PrintPose.of(mesh, pull);
  }
}
