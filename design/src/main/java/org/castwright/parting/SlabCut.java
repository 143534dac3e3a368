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
 * casting, and the casting taken away from both slabs. Works for every seam. Pieces that fall off a
 * half are given to the other one.
 */
final class SlabCut {

  /** A union may change the sum of volumes by this share: rounding, not geometry. */
  private static final double SAME_VOLUME = 1e-10;

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
    Sorted sorted = sort(kernel, names, pieces.get(0), pieces.get(1));
    return new Halves(
        sorted.upper.mesh(),
        sorted.lower.mesh(),
        sheet.mesh(),
        job.casting(),
        Method.BOOLEAN,
        sorted.moved,
        sorted.loose,
        sheet.lips());
  }

  private record Sorted(Solid upper, Solid lower, int moved, int loose) {}

  /**
   * Gives loose pieces of the upper half to the lower one, then what is loose in that to the upper
   * one. A loose piece of a half is closed in by the casting on the side it would leave by, so it
   * can only go with the other half. What hangs on neither, as in an enclosed void, ends up in the
   * upper half.
   */
  private static Sorted sort(
      SolidKernel kernel, String[] names, List<Solid> above, List<Solid> below) {
    List<Solid> forLower = new ArrayList<>(below);
    forLower.addAll(above.subList(1, above.size()));
    List<Solid> bodies =
        forLower.size() == 1 ? below : kernel.decompose(joined(kernel, names[1], forLower));
    List<Solid> forUpper = new ArrayList<>(bodies);
    forUpper.set(0, above.get(0));
    Solid upper = forUpper.size() == 1 ? above.get(0) : joined(kernel, names[0], forUpper);
    int moved = above.size() - 1 + bodies.size() - 1;
    int loose = forUpper.size() == 1 ? 0 : kernel.decompose(upper).size() - 1;
    return new Sorted(upper, bodies.get(0), moved, loose);
  }

  /**
   * The union of bodies that at most touch. Their common faces may differ by rounding; should that
   * cost volume, the bodies are put side by side in one mesh instead.
   */
  private static Solid joined(SolidKernel kernel, String name, List<Solid> parts) {
    double sum = 0;
    for (Solid part : parts) {
      sum += part.volume();
    }
    Solid union = kernel.union(name, parts);
    if (Math.abs(union.volume() - sum) <= SAME_VOLUME * sum) {
      return union;
    }
    MeshBuilder out = new MeshBuilder();
    for (Solid part : parts) {
      int first = out.vertexCount();
      double[] v = part.mesh().xyz();
      for (int i = 0; i < v.length; i += 3) {
        out.vertex(v[i], v[i + 1], v[i + 2]);
      }
      int[] t = part.mesh().tri();
      for (int i = 0; i < t.length; i += 3) {
        out.triangle(first + t[i], first + t[i + 1], first + t[i + 2]);
      }
    }
    return new Solid(name, out.build());
  }

  static TriMesh slab(ThroughSheet sheet, BlockBox box, boolean upper) {
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
