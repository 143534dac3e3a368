package org.castwright.repair;

import java.util.Arrays;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * How the closed shells of a mesh lie to each other: which meet, and which lies whole inside which.
 * A shell inside another that faces the other way bounds a void; one that faces the same way is a
 * part that overlaps.
 */
final class Nesting {

  private final TriMesh mesh;
  private final Shells shells;
  private final Crossings crossings;
  private final long[] meeting;
  private final boolean[] meetsAny;
  private final int[][] outer;

  Nesting(TriMesh mesh, Progress progress) {
    this.mesh = mesh;
    this.shells = new Shells(mesh);
    this.crossings = new Crossings(new TriangleTree(mesh), shells.labels(), progress);
    this.meeting = crossings.labelPairs();
    this.meetsAny = new boolean[shells.count()];
    for (long pair : meeting) {
      meetsAny[(int) (pair >>> 32)] = true;
      meetsAny[(int) pair] = true;
    }
    this.outer = new int[shells.count()][0];
    if (shells.count() > 1) {
      findOuter(progress);
    }
  }

  private Nesting(TriMesh mesh, Nesting same) {
    this.mesh = mesh;
    this.shells = new Shells(mesh);
    this.crossings = same.crossings;
    this.meeting = same.meeting;
    this.meetsAny = same.meetsAny;
    this.outer = same.outer;
  }

  /** The nesting of the same triangles with some shells turned. */
  Nesting turned(TriMesh other) {
    return new Nesting(other, this);
  }

  Shells shells() {
    return shells;
  }

  /** How many pairs of triangles meet, within shells and between them. */
  int crossingPairs() {
    return crossings.count();
  }

  /** The pairs of shells that meet, the lower in the high half of each. */
  long[] meeting() {
    return meeting;
  }

  boolean meetsAny(int s) {
    return meetsAny[s];
  }

  /** The shells that shell {@code s} lies whole inside, smallest volume first. */
  int[] outer(int s) {
    return outer[s];
  }

  /** How often the material of other shells covers the place of shell {@code s}. */
  int cover(int s) {
    int sum = 0;
    for (int t : outer[s]) {
      sum += shells.volume(t) > 0 ? 1 : -1;
    }
    return sum;
  }

  private void findOuter(Progress progress) {
    for (int t = 0; t < shells.count(); t++) {
      progress.at("sorting shells", (double) t / shells.count());
      WindingTree winding = null;
      for (int s = 0; s < shells.count(); s++) {
        if (s == t || !shells.boxInside(s, t) || meet(s, t)) {
          continue;
        }
        if (winding == null) {
          boolean[] only = new boolean[shells.count()];
          only[t] = true;
          winding = new WindingTree(shells.keep(only));
        }
        Vec3 p = shells.point(s);
        if (Math.abs(winding.at(p.x(), p.y(), p.z())) > 0.5) {
          outer[s] = Arrays.copyOf(outer[s], outer[s].length + 1);
          outer[s][outer[s].length - 1] = t;
        }
      }
    }
    for (int s = 0; s < outer.length; s++) {
      outer[s] =
          Arrays.stream(outer[s])
              .boxed()
              .sorted(
                  (t, u) -> Double.compare(Math.abs(shells.volume(t)), Math.abs(shells.volume(u))))
              .mapToInt(t -> t)
              .toArray();
    }
  }

  private boolean meet(int s, int t) {
    return Arrays.binarySearch(meeting, ((long) Math.min(s, t) << 32) | Math.max(s, t)) >= 0;
  }

  TriMesh mesh() {
    return mesh;
  }
}
