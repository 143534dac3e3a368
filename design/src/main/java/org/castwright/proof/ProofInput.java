package org.castwright.proof;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * A written mold as read back. Meshes may be triangle soup: the proof joins equal corners itself.
 *
 * @param block the outer body before anything was cut from it
 * @param casting the casting, as the cavity holds it
 * @param channelBody gate and vents outside the casting, as cast material fills them; without
 *     triangles when there are none
 * @param pieces in the order they are taken off
 * @param channels each gate and vent
 * @param keys each key with its socket
 * @param taken what else was taken from the block: everything that belongs to no piece, nor to the
 *     casting, nor to {@code channelBody}
 * @param limits what to hold it against
 * @param up against gravity while it is filled, or null to leave filling out
 */
public record ProofInput(
    TriMesh block,
    TriMesh casting,
    TriMesh channelBody,
    List<Piece> pieces,
    List<Channel> channels,
    List<Key> keys,
    List<Taken> taken,
    ProofLimits limits,
    Vec3 up) {

  /** Without the filling. */
  public ProofInput(
      TriMesh block,
      TriMesh casting,
      TriMesh channelBody,
      List<Piece> pieces,
      List<Channel> channels,
      List<Key> keys,
      List<Taken> taken,
      ProofLimits limits) {
    this(block, casting, channelBody, pieces, channels, keys, taken, limits, null);
  }

  /**
   * @throws IllegalArgumentException if there is no piece, or a block, casting or piece has no
   *     triangles, or a key names a piece that does not exist
   */
  public ProofInput {
    pieces = List.copyOf(pieces);
    channels = List.copyOf(channels);
    keys = List.copyOf(keys);
    taken = List.copyOf(taken);
    if (pieces.isEmpty() || block.isEmpty() || casting.isEmpty()) {
      throw new IllegalArgumentException("a proof needs a block, a casting and a piece");
    }
    for (Piece p : pieces) {
      if (p.mesh.isEmpty() || p.print.isEmpty()) {
        throw new IllegalArgumentException("no triangles in " + p.name);
      }
    }
    for (Key k : keys) {
      if (Math.min(k.keyPiece, k.socketPiece) < 0
          || Math.max(k.keyPiece, k.socketPiece) >= pieces.size()) {
        throw new IllegalArgumentException("key " + k.name + " names a piece that does not exist");
      }
    }
  }

  /**
   * A piece of the mold.
   *
   * @param mesh in the closed mold
   * @param pull unit direction in which it comes off
   * @param print the piece turned for printing, standing on z = 0
   */
  public record Piece(String name, TriMesh mesh, Vec3 pull, TriMesh print) {
    public Piece {
      pull = pull.unit();
    }
  }

  /** What a channel is for. */
  public enum ChannelKind {
    GATE,
    VENT
  }

  /**
   * A channel along a line of straight stretches.
   *
   * @param axis from a point in or on the casting to one on or beyond the outside of the block
   * @param diameter mm, where it is narrowest
   */
  public record Channel(String name, ChannelKind kind, List<Vec3> axis, double diameter) {
    /**
     * @throws IllegalArgumentException if the axis has fewer than two points
     */
    public Channel {
      axis = List.copyOf(axis);
      if (axis.size() < 2) {
        throw new IllegalArgumentException("channel " + name + " needs two points");
      }
    }

    /** A straight channel. */
    public Channel(String name, ChannelKind kind, Vec3 inner, Vec3 outer, double diameter) {
      this(name, kind, List.of(inner, outer), diameter);
    }

    /** Distance from a point to the axis, mm. */
    double distance(Vec3 p) {
      double least = Double.POSITIVE_INFINITY;
      for (int i = 0; i + 1 < axis.size(); i++) {
        Vec3 along = axis.get(i + 1).minus(axis.get(i));
        double t = p.minus(axis.get(i)).dot(along) / along.dot(along);
        Vec3 foot = axis.get(i).plus(along.times(Math.max(0, Math.min(1, t))));
        least = Math.min(least, p.minus(foot).length());
      }
      return least;
    }

    /** Where it leaves the casting. */
    public Vec3 inner() {
      return axis.get(0);
    }

    /** Where it leaves the block. */
    public Vec3 outer() {
      return axis.get(axis.size() - 1);
    }
  }

  /**
   * A round key, straight or tapering.
   *
   * @param center of its foot, on the seam
   * @param axis unit direction from the foot to the tip, out of the piece that carries it
   * @param radius mm, at the foot
   * @param height mm, foot to tip
   * @param clearance mm asked between key and socket, measured square to the flank
   * @param keyPiece index of the piece that carries the key
   * @param socketPiece index of the piece with the socket
   */
  public record Key(
      String name,
      Vec3 center,
      Vec3 axis,
      double radius,
      double height,
      double clearance,
      int keyPiece,
      int socketPiece) {
    public Key {
      axis = axis.unit();
    }
  }

  /** A volume, mm³, declared as taken from the block. */
  public record Taken(String what, double volume) {}
}
