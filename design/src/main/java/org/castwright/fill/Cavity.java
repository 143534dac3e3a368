package org.castwright.fill;

import org.castwright.geom.Vec3;
import org.castwright.mesh.IntList;
import org.castwright.mesh.TriMesh;
import org.castwright.mesh.Weld;

/**
 * The space that is filled: the casting and the channels outside it as closed bodies that touch.
 * Where they touch is found once, whatever the position.
 */
public final class Cavity {

  /** Surfaces that touch lie closer than this, mm: far above what 32-bit files round. */
  private static final double TOUCH = 0.01;

  private final TriMesh casting;
  private final TriMesh channels;
  private final int[] joinVertex;
  private final int[] joinFacet;
  private final boolean[] mouth;
  private NearFacets castingWall;
  private NearFacets channelWall;

  private Cavity(
      TriMesh casting, TriMesh channels, int[] joinVertex, int[] joinFacet, boolean[] mouth) {
    this.casting = casting;
    this.channels = channels;
    this.joinVertex = joinVertex;
    this.joinFacet = joinFacet;
    this.mouth = mouth;
  }

  /**
   * A casting with its channels in a block. Meshes may be triangle soup: equal corners are joined.
   *
   * @param channels outside the casting, without triangles when there are none
   * @param block the outside of the mold, which the channels' mouths lie on
   */
  public static Cavity of(TriMesh casting, TriMesh channels, TriMesh block) {
    TriMesh cast = Weld.exact(casting);
    TriMesh bores = Weld.exact(channels);
    boolean[] mouth = new boolean[bores.vertexCount()];
    IntList vertices = new IntList();
    IntList facets = new IntList();
    if (!bores.isEmpty()) {
      NearFacets wall = new NearFacets(cast, TOUCH);
      NearFacets outside = new NearFacets(block, TOUCH);
      boolean[] used = used(bores);
      for (int v = 0; v < mouth.length; v++) {
        if (!used[v]) {
          continue;
        }
        Vec3 p = bores.vertex(v);
        int facet = wall.at(p);
        if (facet >= 0) {
          vertices.add(v);
          facets.add(facet);
        } else {
          mouth[v] = outside.at(p) >= 0;
        }
      }
    }
    return new Cavity(cast, bores, vertices.toArray(), facets.toArray(), mouth);
  }

  /** A casting with no way out but where {@code open} says so, by vertex. */
  static Cavity open(TriMesh casting, boolean[] open) {
    // an empty second body: the openings are the casting's own
    return new Cavity(
        new TriMesh(new double[0], new int[0]), casting, new int[0], new int[0], open);
  }

  private static boolean[] used(TriMesh mesh) {
    boolean[] out = new boolean[mesh.vertexCount()];
    for (int v : mesh.tri()) {
      out[v] = true;
    }
    return out;
  }

  TriMesh casting() {
    return casting;
  }

  TriMesh channels() {
    return channels;
  }

  int joins() {
    return joinVertex.length;
  }

  /** A vertex of the channels that lies on the casting. */
  int joinVertex(int i) {
    return joinVertex[i];
  }

  /** The facet of the casting that it lies on. */
  int joinFacet(int i) {
    return joinFacet[i];
  }

  /** Whether a vertex of the channels lies on the outside of the block. */
  boolean isMouth(int vertex) {
    return mouth[vertex];
  }

  /**
   * Whether a point lies on the surface that the liquid wets, that of casting or channels; points
   * of what is cut from the block but not filled do not. Not for several threads.
   */
  public boolean wets(Vec3 p) {
    if (castingWall == null) {
      castingWall = new NearFacets(casting, TOUCH);
      channelWall = channels.isEmpty() ? null : new NearFacets(channels, TOUCH);
    }
    return castingWall.at(p) >= 0 || (channelWall != null && channelWall.at(p) >= 0);
  }

  /** mm³. */
  public double volume() {
    return casting.volume() + channels.volume();
  }
}
