package org.castwright.parting;

import java.util.Arrays;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.TriMesh;

/**
 * Makes both halves without a boolean: the casting's facets of one side and a sheet that covers the
 * plan outside the casting's shadow, joined at the seam by vertex index. Which triangles of the
 * plan are outside follows from counting seam edges from the block's wall inward, so a through-hole
 * gets its web by itself. Refuses, with the reason, whatever does not come out closed and on the
 * right side of the outline.
 */
final class Stitch {

  /** Times that folded facets are given back at most. */
  private static final int MAX_ROUNDS = 8;

  private final Seam seam;
  private final BlockBox box;
  private final EdgeMap seamAt;
  private final EdgeMap seamTimes;
  private SheetNodes nodes;
  private Triangulation plan;
  private boolean[] outside;
  private String refusal;

  private Stitch(Seam seam, BlockBox box) {
    this.seam = seam;
    this.box = box;
    seamAt = new EdgeMap(seam.size());
    seamTimes = new EdgeMap(seam.size());
  }

  /** The halves, or the reason why there are none. */
  record Outcome(Halves halves, Seam seam, String refusal) {}

  /**
   * @param seam its image should have no crossings
   * @param guide starting heights, or null if the sheet is a plane
   */
  static Outcome of(Seam seam, SheetJob job, GridSheet guide) {
    Seam now = seam;
    for (int round = 0; ; round++) {
      Stitch s = new Stitch(now, job.box());
      Labeled unfolded = s.plan(job, guide);
      if (unfolded == null || round == MAX_ROUNDS) {
        Halves halves = s.refusal == null ? s.halves(job, guide) : null;
        return new Outcome(halves, now, s.refusal);
      }
      now = Seam.of(unfolded);
    }
  }

  /** Triangulates the plan; returns the casting to start again with if facets are folded. */
  private Labeled plan(SheetJob job, GridSheet guide) {
    nodes = new SheetNodes();
    for (int p = 0; p < seam.planPoints(); p++) {
      nodes.add(seam.plan[2 * p], seam.plan[2 * p + 1], seam.z(p), SheetNodes.SEAM);
    }
    for (int e = 0; e < seam.size(); e++) {
      if (!seam.vertical(e)) {
        long key = EdgeMap.both(seam.planFrom(e), seam.planTo(e));
        if (seamAt.put(key, e) == EdgeMap.NONE) {
          nodes.edge(seam.planFrom(e), seam.planTo(e));
        }
        seamTimes.put(key, Math.max(0, seamTimes.get(key)) + 1);
      }
    }
    nodes.walls(box, job.ringMm(), job.wall(), guide == null);
    nodes.outside(job.grid(), job.ringMm(), guide, job.wall());
    plan = new Triangulation(nodes.points(), nodes.edges());
    if (!plan.complete()) {
      refusal = "the triangulation lost " + plan.lost() + " seam edges";
      return null;
    }
    if (!flood()) {
      refusal = "the seam does not divide the plan into inside and outside";
      return null;
    }
    return FoldedFacets.unfolded(seam, plan, outside);
  }

  private Halves halves(SheetJob job, GridSheet guide) {
    double[] z = nodes.heights();
    SheetHeights heights = new SheetHeights(plan, outside, nodes.kinds(), z);
    if (guide != null) {
      heights.solve(nodes.lows(), nodes.highs(), job.slope(), job.options().landMm());
    }
    return join(z, job);
  }

  /** Marks the triangles outside the shadow; false if the seam's parity contradicts itself. */
  private boolean flood() {
    int n = plan.tri.length / 3;
    byte[] state = new byte[n];
    Arrays.fill(state, (byte) -1);
    int[] queue = new int[n];
    int size = 0;
    for (int c = 0; c < plan.tri.length; c++) {
      if (plan.across[c] < 0 && state[c / 3] < 0) {
        state[c / 3] = 0;
        queue[size++] = c / 3;
      }
    }
    for (int i = 0; i < size; i++) {
      int t = queue[i];
      for (int c = 3 * t; c < 3 * t + 3; c++) {
        int o = plan.across[c];
        if (o < 0) {
          continue;
        }
        int times =
            Math.max(0, seamTimes.get(EdgeMap.both(plan.tri[c], plan.tri[Neighbors.next(c)])));
        byte s = (byte) (times % 2 == 1 ? 1 - state[t] : state[t]);
        if (state[o] < 0) {
          state[o] = s;
          queue[size++] = o;
        } else if (state[o] != s) {
          return false;
        }
      }
    }
    outside = new boolean[n];
    for (int t = 0; t < n; t++) {
      outside[t] = state[t] == 0;
    }
    return size == n;
  }

  private Halves join(double[] z, SheetJob job) {
    double[] base = seam.casting.mesh().xyz();
    int first = base.length / 3;
    double[] xyz = Arrays.copyOf(base, base.length + 3 * z.length);
    for (int i = 0; i < z.length; i++) {
      xyz[3 * (first + i)] = plan.xy[2 * i];
      xyz[3 * (first + i) + 1] = plan.xy[2 * i + 1];
      xyz[3 * (first + i) + 2] = (float) z[i];
    }
    SheetCorners corners = new SheetCorners(seam, plan, outside, seamAt, first);
    if (!corners.resolved()) {
      refusal = "a point of the seam with several heights has no outside sector";
      return null;
    }
    int[] sheet = corners.sheet();
    TriMesh upper = half(xyz, sheet, Sides.UPPER, first);
    TriMesh lower = half(xyz, sheet, Sides.LOWER, first);
    for (TriMesh half : new TriMesh[] {upper, lower}) {
      MeshCheck check = MeshCheck.of(half);
      if (!check.closedManifold()) {
        refusal = "a stitched half has " + check.faults();
        return null;
      }
    }
    TriMesh surface = new Compact(xyz).mesh(sheet);
    if (!OutlineCheck.agrees(new Columns(surface), job)) {
      refusal = "the seam leaves the outline of the casting";
      return null;
    }
    return new Halves(upper, lower, surface, seam.casting.mesh(), Method.STITCH, 0, 0, 0);
  }

  private TriMesh half(double[] xyz, int[] sheet, byte side, int first) {
    boolean up = side == Sides.UPPER;
    Compact c = new Compact(xyz);
    MeshBuilder out = c.builder();
    int[] tri = seam.casting.mesh().tri();
    for (int f = 0; f < tri.length / 3; f++) {
      if (seam.casting.side()[f] == side) {
        out.triangle(c.of(tri[3 * f]), c.of(tri[3 * f + 2]), c.of(tri[3 * f + 1]));
      }
    }
    for (int i = 0; i < sheet.length; i += 3) {
      int a = c.of(sheet[i]);
      int b = c.of(sheet[i + (up ? 2 : 1)]);
      out.triangle(a, b, c.of(sheet[i + (up ? 1 : 2)]));
    }
    int[][] walls = new int[4][];
    for (int k = 0; k < 4; k++) {
      walls[k] = nodes.walls[k].toArray();
      for (int i = 0; i < walls[k].length; i++) {
        walls[k][i] = c.of(first + walls[k][i]);
      }
    }
    new BlockShell(box).add(out, walls, up);
    return out.build();
  }
}
