package org.castwright.proof;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** Spoils one thing in an input and leaves the rest. */
final class Change {

  private Change() {}

  static ProofInput casting(ProofInput in, TriMesh casting) {
    return new ProofInput(
        in.block(),
        casting,
        in.channelBody(),
        in.pieces(),
        in.channels(),
        in.keys(),
        in.taken(),
        in.limits());
  }

  static ProofInput piece(ProofInput in, int i, TriMesh mesh) {
    ProofInput.Piece p = in.pieces().get(i);
    return piece(in, i, new ProofInput.Piece(p.name(), mesh, p.pull(), p.print()));
  }

  static ProofInput print(ProofInput in, int i, TriMesh print) {
    ProofInput.Piece p = in.pieces().get(i);
    return piece(in, i, new ProofInput.Piece(p.name(), p.mesh(), p.pull(), print));
  }

  static ProofInput pull(ProofInput in, int i, Vec3 pull) {
    ProofInput.Piece p = in.pieces().get(i);
    return piece(in, i, new ProofInput.Piece(p.name(), p.mesh(), pull, p.print()));
  }

  private static ProofInput piece(ProofInput in, int i, ProofInput.Piece piece) {
    List<ProofInput.Piece> pieces = new ArrayList<>(in.pieces());
    pieces.set(i, piece);
    return new ProofInput(
        in.block(),
        in.casting(),
        in.channelBody(),
        pieces,
        in.channels(),
        in.keys(),
        in.taken(),
        in.limits());
  }

  static ProofInput channel(ProofInput in, int i, Vec3 inner, Vec3 outer) {
    List<ProofInput.Channel> channels = new ArrayList<>(in.channels());
    ProofInput.Channel c = channels.get(i);
    channels.set(i, new ProofInput.Channel(c.name(), c.kind(), inner, outer, c.diameter()));
    return new ProofInput(
        in.block(),
        in.casting(),
        in.channelBody(),
        in.pieces(),
        channels,
        in.keys(),
        in.taken(),
        in.limits());
  }

  static ProofInput keys(ProofInput in, List<ProofInput.Key> keys) {
    return new ProofInput(
        in.block(),
        in.casting(),
        in.channelBody(),
        in.pieces(),
        in.channels(),
        keys,
        in.taken(),
        in.limits());
  }

  static ProofInput taken(ProofInput in, List<ProofInput.Taken> taken) {
    return new ProofInput(
        in.block(),
        in.casting(),
        in.channelBody(),
        in.pieces(),
        in.channels(),
        in.keys(),
        taken,
        in.limits());
  }

  static ProofInput limits(ProofInput in, ProofLimits limits) {
    return new ProofInput(
        in.block(),
        in.casting(),
        in.channelBody(),
        in.pieces(),
        in.channels(),
        in.keys(),
        in.taken(),
        limits);
  }

  /** Without triangle {@code f}. */
  static TriMesh without(TriMesh mesh, int f) {
    int[] t = mesh.tri();
    int[] out = new int[t.length - 3];
    System.arraycopy(t, 0, out, 0, 3 * f);
    System.arraycopy(t, 3 * f + 3, out, 3 * f, t.length - 3 * f - 3);
    return new TriMesh(mesh.xyz(), out);
  }

  /** The mirror image in x = 0, facing outward. */
  static TriMesh mirrored(TriMesh mesh) {
    double[] xyz = mesh.xyz().clone();
    for (int i = 0; i < xyz.length; i += 3) {
      xyz[i] = -xyz[i];
    }
    return new TriMesh(xyz, mesh.tri()).reversed();
  }
}
