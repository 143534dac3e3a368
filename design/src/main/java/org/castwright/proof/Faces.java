package org.castwright.proof;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Tells what the facets of one piece face: a whole facet by its center, found when asked for and
 * kept, or a large one at a place of it.
 */
final class Faces {

  /** Faces that touch lie closer than this, mm; gaps round keys are wider. */
  private static final double TOUCH = 0.01;

  private final TriMesh mesh;
  private final Bvh block;
  private final Bvh casting;
  private final Bvh channels;
  private final List<Bvh> others;
  private final FaceKind[] kinds;

  /**
   * Faces of a piece.
   *
   * @param channels null if there are none
   * @param others the other pieces
   */
  Faces(TriMesh mesh, Bvh block, Bvh casting, Bvh channels, List<Bvh> others) {
    this.mesh = mesh;
    this.block = block;
    this.casting = casting;
    this.channels = channels;
    this.others = others;
    this.kinds = new FaceKind[mesh.triangleCount()];
  }

  FaceKind kind(int f) {
    if (kinds[f] == null) {
      kinds[f] = at(mesh.center(f));
    }
    return kinds[f];
  }

  /** What the surface faces at a point of it. */
  FaceKind at(Vec3 p) {
    if (casting.within(p, TOUCH)) {
      return FaceKind.CAVITY;
    }
    if (block.within(p, TOUCH)) {
      return FaceKind.OUTSIDE;
    }
    for (Bvh other : others) {
      if (other.within(p, TOUCH)) {
        return FaceKind.SHUT_OFF;
      }
    }
    return channels != null && channels.within(p, TOUCH) ? FaceKind.CHANNEL : FaceKind.CUT;
  }
}
