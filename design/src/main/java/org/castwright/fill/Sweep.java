package org.castwright.fill;

import java.util.Arrays;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * A level that falls through a cavity, exactly on its mesh. The bodies of air above a level are
 * joined where their surfaces join, and these join at vertices. A surface that begins with the
 * solid above it, as round a hollow from below, belongs to the body straight above: one ray finds
 * it. Bodies of casting and channels join where they touch.
 */
final class Sweep {

  /** A facet so little above a vertex lies in its plane, mm. */
  private static final double LEVEL = 1e-9;

  /** How many vertices pass between two looks at whether to go on, less one. */
  private static final int LOOK = 4095;

  /** Share of the whole work that the falling takes; the rest is volumes. */
  static final double FALL = 0.5;

  private final Cavity cavity;
  private final int shift;
  private final int[] tri;
  private final double[] height;
  private final double[] shadow;
  private final int[] rank;
  private final Branches branches;
  private final int[] vertexBranch;
  private final RoofRay castingRay;
  private final RoofRay channelRay;
  private double bottom = Double.POSITIVE_INFINITY;

  /**
   * Lets the level fall.
   *
   * @param up unit direction
   * @param down where it stops, mm along {@code up}; what is closed then is sealed there
   * @throws Progress.CancelledException if the person has asked to stop
   */
  Sweep(Cavity cavity, Vec3 up, double down, Progress progress) {
    this.cavity = cavity;
    TriMesh a = cavity.casting();
    TriMesh b = cavity.channels();
    shift = a.vertexCount();
    int facets = a.triangleCount() + b.triangleCount();
    tri = Arrays.copyOf(a.tri(), 3 * facets);
    for (int i = 0; i < b.tri().length; i++) {
      tri[a.tri().length + i] = shift + b.tri()[i];
    }
    height = new double[shift + b.vertexCount()];
    shadow = new double[facets];
    for (int v = 0; v < height.length; v++) {
      height[v] = (v < shift ? a.vertex(v) : b.vertex(v - shift)).dot(up);
    }
    for (int f = 0; f < facets; f++) {
      boolean first = f < a.triangleCount();
      shadow[f] = (first ? a.areaVector(f) : b.areaVector(f - a.triangleCount())).dot(up);
    }
    int[] order = Order.descending(height);
    rank = new int[order.length];
    for (int i = 0; i < order.length; i++) {
      rank[order[i]] = i;
    }
    branches = new Branches(height, rank);
    vertexBranch = new int[height.length];
    castingRay = a.isEmpty() ? null : new RoofRay(a, up, Arrays.copyOf(height, shift));
    channelRay =
        b.isEmpty() ? null : new RoofRay(b, up, Arrays.copyOfRange(height, shift, height.length));
    fall(order, down, progress);
  }

  private void fall(int[] order, double down, Progress progress) {
    int[] start = new int[height.length + 2];
    int[] near = neighbors(start);
    int[] firstLink = new int[height.length];
    int[] nextLink = new int[cavity.joins()];
    int[] linkTo = new int[cavity.joins()];
    links(firstLink, nextLink, linkTo);
    for (int i = 0; i < order.length; i++) {
      int v = order[i];
      if ((i & LOOK) == 0) {
        progress.at("fill", FALL * i / order.length);
      }
      if (height[v] <= down) {
        bottom = down;
        break;
      }
      if (start[v] == start[v + 1]) {
        continue; // no facet uses it
      }
      bottom = height[v];
      branches.add(v);
      boolean alone = true;
      for (int k = start[v]; k < start[v + 1]; k++) {
        if (branches.has(near[k])) {
          branches.join(v, near[k], v);
          alone = false;
        }
      }
      if (alone) {
        begin(v);
      }
      for (int l = firstLink[v]; l != 0; l = nextLink[l - 1]) {
        branches.join(v, linkTo[l - 1], v);
      }
      if (v >= shift && cavity.isMouth(v - shift)) {
        branches.open(v);
      }
      vertexBranch[v] = branches.branchOf(v);
    }
    branches.sealRest(bottom);
  }

  /** A vertex higher than all its neighbors: a new body, or a hollow under one. */
  private void begin(int v) {
    boolean first = v < shift;
    int facet = first ? castingRay.over(v, LEVEL) : channelRay.over(v - shift, LEVEL);
    if (facet < 0) {
      branches.begin(v);
      return;
    }
    branches.join(v, topOf(first ? facet : facet + cavity.casting().triangleCount()), v);
  }

  /** Where a vertex of the channels lies on the casting both bodies are one. */
  private void links(int[] first, int[] next, int[] to) {
    for (int i = 0; i < cavity.joins(); i++) {
      int a = shift + cavity.joinVertex(i);
      int b = topOf(cavity.joinFacet(i));
      int later = rank[a] > rank[b] ? a : b;
      to[i] = later == a ? b : a;
      next[i] = first[later];
      first[later] = i + 1;
    }
  }

  private int[] neighbors(int[] start) {
    for (int v : tri) {
      start[v + 2] += 2;
    }
    for (int v = 2; v < start.length; v++) {
      start[v] += start[v - 1];
    }
    int[] near = new int[2 * tri.length];
    for (int f = 0; f < tri.length; f += 3) {
      for (int k = 0; k < 3; k++) {
        int v = tri[f + k];
        near[start[v + 1]++] = tri[f + (k + 1) % 3];
        near[start[v + 1]++] = tri[f + (k + 2) % 3];
      }
    }
    return near;
  }

  int facets() {
    return shadow.length;
  }

  FacetColumn column(int f) {
    return new FacetColumn(
        height[tri[3 * f]], height[tri[3 * f + 1]], height[tri[3 * f + 2]], shadow[f]);
  }

  /** The highest vertex of a facet. */
  private int topOf(int f) {
    int best = tri[3 * f];
    for (int k = 1; k < 3; k++) {
      if (rank[tri[3 * f + k]] < rank[best]) {
        best = tri[3 * f + k];
      }
    }
    return best;
  }

  /** The pocket that holds the part of a facet above the pocket's seal, or NONE. */
  int pocket(int f) {
    int v = topOf(f);
    if (!branches.has(v) || vertexBranch[v] == Branches.NONE) {
      return Branches.NONE;
    }
    int p = branches.pocket(vertexBranch[v]);
    return p != Branches.NONE && height[v] > branches.seal(p) ? p : Branches.NONE;
  }

  /** Volume of each pocket, mm³. */
  double[] volumes() {
    double[] out = new double[branches.pockets()];
    for (int f = 0; f < facets(); f++) {
      int p = pocket(f);
      if (p != Branches.NONE) {
        out[p] += column(f).above(branches.seal(p));
      }
    }
    return out;
  }

  Branches branches() {
    return branches;
  }

  double height(int vertex) {
    return height[vertex];
  }

  /** Lowest height reached, mm. */
  double bottom() {
    return bottom;
  }

  Vec3 place(int vertex) {
    return vertex < shift
        ? cavity.casting().vertex(vertex)
        : cavity.channels().vertex(vertex - shift);
  }
}
