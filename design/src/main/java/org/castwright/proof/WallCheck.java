package org.castwright.proof;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * The thinnest wall between the cavity and the outside: from every corner of the casting to the
 * outer surface of the block and from every corner of the block to the casting. That is exact
 * except where an edge of the one is closest to an edge of the other (a block that is not convex).
 * Places within a diameter of a channel's axis are left out.
 */
final class WallCheck {

  private WallCheck() {}

  static ProofCheck of(Body casting, Bvh castingTree, Body block, Bvh blockTree, ProofInput input) {
    Thinnest thinnest = new Thinnest(input.channels());
    thinnest.from(casting.mesh(), blockTree);
    thinnest.from(block.mesh(), castingTree);
    double limit = input.limits().minimumWall();
    boolean passed = thinnest.wall >= limit;
    String words =
        "The thinnest wall between cavity and outside is "
            + Say.number(thinnest.wall)
            + " mm, near "
            + Say.place(thinnest.where)
            + " in "
            + holder(thinnest.where, input)
            + (passed ? "." : ", thinner than the " + Say.number(limit) + " mm asked.");
    return new ProofCheck("wall", passed, thinnest.wall, limit, "mm at least", words);
  }

  /** The piece closest to a place in the middle of the wall. */
  private static String holder(Vec3 at, ProofInput input) {
    String name = "";
    double closest = Double.POSITIVE_INFINITY;
    for (ProofInput.Piece p : input.pieces()) {
      ClosestOnTriangle c = new ClosestOnTriangle(p.mesh().xyz(), p.mesh().tri(), at);
      for (int f = 0; f < p.mesh().triangleCount(); f++) {
        c.to(f);
      }
      if (c.squared() < closest) {
        closest = c.squared();
        name = p.name();
      }
    }
    return name;
  }

  private static final class Thinnest {
    private final List<ProofInput.Channel> channels;
    private double wall = Double.POSITIVE_INFINITY;
    private Vec3 where = Vec3.ZERO;

    Thinnest(List<ProofInput.Channel> channels) {
      this.channels = channels;
    }

    void from(TriMesh mesh, Bvh other) {
      for (int i = 0; i < mesh.vertexCount(); i++) {
        Vec3 p = mesh.vertex(i);
        if (nearChannel(p)) {
          continue;
        }
        Bvh.Closest c = other.closest(p);
        if (c.distance() < wall) {
          wall = c.distance();
          where = p.plus(c.point()).times(0.5);
        }
      }
    }

    private boolean nearChannel(Vec3 p) {
      for (ProofInput.Channel c : channels) {
        if (c.distance(p) < c.diameter()) {
          return true;
        }
      }
      return false;
    }
  }
}
