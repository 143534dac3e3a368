package org.castwright.proof;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.IntList;
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

  /** For facets that touch nothing: whether the room before them is open to the outside. */
  private final Boolean[] open;

  private EdgeTable edges;

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
    this.open = new Boolean[mesh.triangleCount()];
  }

  FaceKind kind(int f) {
    FaceKind k = touched(f);
    return k == FaceKind.CUT && !open(f) ? FaceKind.GAP : k;
  }

  private FaceKind touched(int f) {
    if (kinds[f] == null) {
      kinds[f] = at(mesh.center(f));
    }
    return kinds[f];
  }

  /** Whether from a facet, over others that touch nothing, the surface leads to the outside. */
  private boolean open(int f) {
    if (open[f] == null) {
      edges = edges == null ? new EdgeTable(mesh.tri()) : edges;
      IntList reached = new IntList();
      reached.add(f);
      open[f] = false;
      boolean out = false;
      for (int n = 0; n < reached.size(); n++) {
        for (int h = 3 * reached.get(n); h < 3 * reached.get(n) + 3; h++) {
          int across = edges.opposite(h);
          if (across < 0) {
            continue;
          }
          int g = across / 3;
          FaceKind k = touched(g);
          out |= k == FaceKind.OUTSIDE;
          if (k == FaceKind.CUT && open[g] == null) {
            open[g] = false;
            reached.add(g);
          }
        }
      }
      for (int n = 0; n < reached.size(); n++) {
        open[reached.get(n)] = out;
      }
    }
    return open[f];
  }

  /** What the surface faces at a point of it; room that is shut in counts as cut. */
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
