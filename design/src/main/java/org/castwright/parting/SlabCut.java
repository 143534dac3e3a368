package org.castwright.parting;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * Makes both halves with a solid kernel: the block is divided by a sheet that runs through the
 * casting, and the casting taken away from both slabs. Works for every seam. Crumbs that fall off a
 * half are given to the other one, where they belong: they lie on the wrong side of the seam.
 */
final class SlabCut {

  /** A loose piece smaller than this is a crumb, mm³; larger ones stay, and are reported. */
  private static final double CRUMB_MM3 = 1;

  private SlabCut() {}

  static Halves of(ThroughSheet sheet, SheetJob job, SolidKernel kernel) {
    Solid casting = kernel.solid("casting", job.casting());
    String[] names = {"upper half", "lower half"};
    List<List<Solid>> pieces =
        IntStream.range(0, 2)
            .parallel()
            .mapToObj(
                i -> {
                  Solid slab = kernel.solid(names[i] + " slab", slab(sheet, job.box(), i == 0));
                  return kernel.decompose(kernel.difference(names[i], slab, List.of(casting)));
                })
            .toList();
    int crumbs = 0;
    List<List<Solid>> parts = List.of(new ArrayList<>(), new ArrayList<>());
    for (int i = 0; i < 2; i++) {
      for (Solid piece : pieces.get(i)) {
        boolean crumb = piece != pieces.get(i).get(0) && piece.volume() < CRUMB_MM3;
        parts.get(crumb ? 1 - i : i).add(piece);
        crumbs += crumb ? 1 : 0;
      }
    }
    Solid upper = joined(kernel, names[0], parts.get(0));
    Solid lower = joined(kernel, names[1], parts.get(1));
    return new Halves(
        upper.mesh(),
        lower.mesh(),
        sheet.mesh(),
        job.casting(),
        Method.BOOLEAN,
        crumbs,
        sheet.lips());
  }

  private static Solid joined(SolidKernel kernel, String name, List<Solid> parts) {
    return parts.size() == 1 ? parts.get(0) : kernel.union(name, parts);
  }

  private static TriMesh slab(ThroughSheet sheet, BlockBox box, boolean upper) {
    MeshBuilder out = new MeshBuilder();
    double[] v = sheet.mesh().xyz();
    for (int i = 0; i < v.length; i += 3) {
      out.vertex(v[i], v[i + 1], v[i + 2]);
    }
    int[] t = sheet.mesh().tri();
    for (int i = 0; i < t.length; i += 3) {
      out.triangle(t[i], t[upper ? i + 2 : i + 1], t[upper ? i + 1 : i + 2]);
    }
    new BlockShell(box).add(out, sheet.walls(), upper);
    return out.build();
  }
}
