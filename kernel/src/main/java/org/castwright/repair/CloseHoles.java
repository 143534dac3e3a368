package org.castwright.repair;

import java.util.Arrays;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * Closes holes with the patch of least area. A hole is closed if it is small or flat within the
 * limits of the options; others are left open. Where a patch would need an edge that the mesh
 * already has elsewhere, triangles to a new vertex in the middle of the hole are used.
 */
final class CloseHoles {

  private final TriMesh mesh;
  private final Loops loops;
  private final boolean[][] barred;

  private CloseHoles(TriMesh mesh, EdgeTable edges) {
    this.mesh = mesh;
    this.loops = new Loops(mesh, edges);
    this.barred = new boolean[loops.count()][];
    barExisting(edges);
  }

  static void apply(Draft draft, RepairOptions options, Progress progress) {
    EdgeTable edges = draft.edges();
    if (NearWeld.openEdges(edges) == 0) {
      return;
    }
    CloseHoles work = new CloseHoles(draft.mesh(), edges);
    work.close(draft, options, progress);
  }

  /** Whether the options allow a hole to be closed. */
  static boolean closable(Loops loops, int i, double diagonal, RepairOptions options) {
    double width = loops.width(i);
    return loops.loop(i).length <= options.maxHoleEdges()
        && (width <= options.maxHoleShare() * diagonal
            || loops.unevenness(i) <= options.flatHoleShare() * width);
  }

  private void close(Draft draft, RepairOptions options, Progress progress) {
    double diagonal = mesh.bounds().diagonal();
    MeshBuilder patch = new MeshBuilder();
    for (int i = 0; i < mesh.vertexCount(); i++) {
      patch.vertex(mesh.xyz()[3 * i], mesh.xyz()[3 * i + 1], mesh.xyz()[3 * i + 2]);
    }
    for (int i = 0; i < mesh.tri().length; i += 3) {
      patch.triangle(mesh.tri()[i], mesh.tri()[i + 1], mesh.tri()[i + 2]);
    }
    int closed = 0;
    double widest = 0;
    for (int i = 0; i < loops.count(); i++) {
      progress.at("closing holes", (double) i / loops.count());
      if (closable(loops, i, diagonal, options)) {
        fill(patch, i);
        closed++;
        widest = Math.max(widest, loops.width(i));
      }
    }
    if (closed == 0) {
      return;
    }
    int firstPatch = mesh.triangleCount();
    int added = patch.triangleCount() - firstPatch;
    String words =
        Draft.many(closed, "hole", "holes")
            + " closed with "
            + Draft.many(added, "triangle", "triangles")
            + (closed == 1 ? ", " : ", the widest ")
            + Draft.number(widest)
            + " mm across";
    draft.replace(patch.build(), new HealingStep("close-holes", words, closed, 0));
    DropSheets.apply(draft, firstPatch);
  }

  private void fill(MeshBuilder out, int i) {
    int[] loop = loops.loop(i);
    double[] points = loops.points(i);
    int[] patch = MinimumAreaPatch.of(points, barred[i]);
    if (patch != null) {
      for (int k = 0; k < patch.length; k += 3) {
        out.triangle(loop[patch[k]], loop[patch[k + 1]], loop[patch[k + 2]]);
      }
      return;
    }
    Vec3 mean = Vec3.ZERO;
    for (int k = 0; k < loop.length; k++) {
      mean =
          mean.plus(
              new Vec3(points[3 * k], points[3 * k + 1], points[3 * k + 2])
                  .times(1.0 / loop.length));
    }
    int middle = out.vertex(mean.x(), mean.y(), mean.z());
    for (int k = 0; k < loop.length; k++) {
      out.triangle(middle, loop[k], loop[(k + 1) % loop.length]);
    }
  }

  /** Marks the diagonals of each loop that are edges of the mesh already. */
  private void barExisting(EdgeTable edges) {
    int[] loopOf = new int[mesh.vertexCount()];
    int[] position = new int[mesh.vertexCount()];
    Arrays.fill(loopOf, -1);
    for (int i = 0; i < loops.count(); i++) {
      int[] loop = loops.loop(i);
      barred[i] = new boolean[loop.length * loop.length];
      for (int k = 0; k < loop.length; k++) {
        loopOf[loop[k]] = i;
        position[loop[k]] = k;
      }
    }
    for (int e = 0; e < edges.count(); e++) {
      int a = edges.from(edges.half(e, 0));
      int b = edges.to(edges.half(e, 0));
      if (edges.size(e) > 1 && loopOf[a] >= 0 && loopOf[a] == loopOf[b]) {
        int n = loops.loop(loopOf[a]).length;
        barred[loopOf[a]][position[a] * n + position[b]] = true;
        barred[loopOf[a]][position[b] * n + position[a]] = true;
      }
    }
  }
}
