package org.castwright.heat;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * What is liquid when the mold stands full. Both bodies are closed and outward-oriented, in the
 * mold frame, mm; they touch but share no space.
 *
 * @param casting as the cavity holds it
 * @param channels gate, vents and risers outside it, without triangles when there are none
 */
public record Poured(TriMesh casting, TriMesh channels) {

  /** A casting without channels. */
  public static Poured alone(TriMesh casting) {
    return new Poured(casting, new TriMesh(new double[0], new int[0]));
  }

  /** Both as one soup; where they touch, their surfaces cancel. */
  TriMesh all() {
    if (channels.isEmpty()) {
      return casting;
    }
    int first = casting.xyz().length;
    double[] xyz = Arrays.copyOf(casting.xyz(), first + channels.xyz().length);
    System.arraycopy(channels.xyz(), 0, xyz, first, channels.xyz().length);
    int facets = casting.tri().length;
    int[] tri = Arrays.copyOf(casting.tri(), facets + channels.tri().length);
    for (int i = facets; i < tri.length; i++) {
      tri[i] = channels.tri()[i - facets] + first / 3;
    }
    return new TriMesh(xyz, tri);
  }
}
