package org.castwright.repair;

import java.util.ArrayList;
import java.util.List;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * Unites parts that meet or lie inside each other's material. Each outward shell is a body together
 * with the voids directly inside it; bodies that touch no other are left as they are.
 */
final class UniteParts {

  private final Nesting nesting;
  private final Shells shells;
  private final int[] owner;
  private final Sets groups;

  private UniteParts(Nesting nesting) {
    this.nesting = nesting;
    this.shells = nesting.shells();
    this.owner = new int[shells.count()];
    this.groups = new Sets(shells.count());
    for (int s = 0; s < owner.length; s++) {
      owner[s] = ownerOf(s);
    }
    group();
  }

  /** How many bodies need uniting with another. */
  static int overlapping(Nesting nesting) {
    return new UniteParts(nesting).bodiesToUnite();
  }

  /**
   * Unites what overlaps.
   *
   * @return the nesting afterwards
   * @throws org.castwright.solid.SolidException if the kernel cannot
   */
  static Nesting apply(Draft draft, Nesting nesting, SolidKernel kernel, Progress progress) {
    UniteParts work = new UniteParts(nesting);
    int bodies = work.bodiesToUnite();
    if (bodies == 0) {
      return nesting;
    }
    progress.at("uniting parts", 0);
    TriMesh united = work.unite(kernel);
    String words = bodies + " overlapping parts united";
    draft.replace(united, new HealingStep("unite-parts", words, bodies, 0));
    return new Nesting(united, progress);
  }

  /** The smallest outward shell round an inward one; otherwise the shell itself. */
  private int ownerOf(int s) {
    if (shells.volume(s) < 0) {
      for (int t : nesting.outer(s)) {
        if (shells.volume(t) > 0) {
          return t;
        }
      }
    }
    return s;
  }

  private void group() {
    for (long pair : nesting.meeting()) {
      groups.unite(owner[(int) (pair >>> 32)], owner[(int) pair]);
    }
    for (int s = 0; s < owner.length; s++) {
      if (shells.volume(s) > 0 && nesting.cover(s) > 0) {
        for (int t : nesting.outer(s)) {
          groups.unite(s, owner[t]);
        }
      }
    }
  }

  private int[] bodiesInGroup() {
    int[] bodies = new int[owner.length];
    for (int s = 0; s < owner.length; s++) {
      bodies[groups.find(owner[s])] += owner[s] == s ? 1 : 0;
    }
    return bodies;
  }

  private int bodiesToUnite() {
    int sum = 0;
    for (int b : bodiesInGroup()) {
      sum += b > 1 ? b : 0;
    }
    return sum;
  }

  private TriMesh unite(SolidKernel kernel) {
    int[] bodies = bodiesInGroup();
    boolean[] untouched = new boolean[owner.length];
    for (int s = 0; s < owner.length; s++) {
      untouched[s] = bodies[groups.find(owner[s])] == 1;
    }
    MeshBuilder out = new MeshBuilder();
    append(out, shells.keep(untouched));
    for (int g = 0; g < owner.length; g++) {
      if (bodies[g] > 1) {
        List<Solid> parts = new ArrayList<>();
        for (int s = 0; s < owner.length; s++) {
          if (owner[s] == s && groups.find(s) == g) {
            parts.add(kernel.solid("part " + (s + 1) + " of the model", body(s)));
          }
        }
        append(out, kernel.union("the model", parts).mesh());
      }
    }
    return out.build();
  }

  private TriMesh body(int s) {
    boolean[] own = new boolean[owner.length];
    for (int t = 0; t < own.length; t++) {
      own[t] = owner[t] == s;
    }
    return shells.keep(own);
  }

  private static void append(MeshBuilder out, TriMesh mesh) {
    int base = out.vertexCount();
    double[] x = mesh.xyz();
    for (int i = 0; i < x.length; i += 3) {
      out.vertex(x[i], x[i + 1], x[i + 2]);
    }
    int[] t = mesh.tri();
    for (int i = 0; i < t.length; i += 3) {
      out.triangle(base + t[i], base + t[i + 1], base + t[i + 2]);
    }
  }
}
