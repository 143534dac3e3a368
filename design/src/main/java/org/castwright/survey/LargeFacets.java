package org.castwright.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.castwright.geom.Vec3;

/** Normals, up to sign, that a good share of the surface has in common: flat faces and walls. */
final class LargeFacets {

  private static final double SHARE = 0.01;
  private static final int MOST = 24;
  // cells of this size on the unit cube round normals to about a degree
  private static final int CELLS = 50;
  private static final int RANGE = 2 * CELLS + 1;
  // cosine of half a degree: facets averaged into one clean normal
  private static final double SAME = 0.99996;

  private LargeFacets() {}

  /** The normals of all groups over one percent of the area, largest first, at most two dozen. */
  static List<Vec3> normals(FacetTable facets) {
    double[] sums = new double[RANGE * RANGE * RANGE];
    for (int f = 0; f < facets.count(); f++) {
      sums[cell(facets, f)] += facets.area(f);
    }
    double least = SHARE * facets.totalArea();
    int[] cells = new int[MOST];
    int found = 0;
    for (int c = 0; c < sums.length; c++) {
      if (sums[c] > least) {
        found = insert(cells, found, c, sums);
      }
    }
    List<Vec3> out = new ArrayList<>();
    for (int k = 0; k < found; k++) {
      out.add(clean(facets, cells[k]));
    }
    return out;
  }

  private static int insert(int[] cells, int found, int c, double[] sums) {
    int at = found;
    while (at > 0 && sums[cells[at - 1]] < sums[c]) {
      at--;
    }
    if (at >= MOST) {
      return found;
    }
    int end = Math.min(found, MOST - 1);
    System.arraycopy(cells, at, cells, at + 1, end - at);
    cells[at] = c;
    return Math.min(found + 1, MOST);
  }

  private static int cell(FacetTable facets, int f) {
    double x = facets.nx(f);
    double y = facets.ny(f);
    double z = facets.nz(f);
    int i = (int) Math.rint(x * CELLS);
    int j = (int) Math.rint(y * CELLS);
    int k = (int) Math.rint(z * CELLS);
    boolean flip = k < 0 || (k == 0 && (j < 0 || (j == 0 && i < 0)));
    int s = flip ? -1 : 1;
    return ((s * k + CELLS) * RANGE + s * j + CELLS) * RANGE + s * i + CELLS;
  }

  /** The mean normal of a cell, then the mean of all facets within half a degree of it. */
  private static Vec3 clean(FacetTable facets, int cell) {
    double[] sum = new double[3];
    for (int f = 0; f < facets.count(); f++) {
      if (facets.area(f) > 0 && cell(facets, f) == cell) {
        add(facets, f, sum);
      }
    }
    Vec3 mean = new Vec3(sum[0], sum[1], sum[2]).unit();
    Arrays.fill(sum, 0);
    for (int f = 0; f < facets.count(); f++) {
      if (Math.abs(facets.normalDot(f, mean.x(), mean.y(), mean.z())) > SAME) {
        add(facets, f, sum);
      }
    }
    Vec3 close = new Vec3(sum[0], sum[1], sum[2]);
    return close.length() > 0 ? close.unit() : mean;
  }

  private static void add(FacetTable facets, int f, double[] sum) {
    double dot = facets.nx(f) * sum[0] + facets.ny(f) * sum[1] + facets.nz(f) * sum[2];
    double a = dot < 0 ? -facets.area(f) : facets.area(f);
    sum[0] += a * facets.nx(f);
    sum[1] += a * facets.ny(f);
    sum[2] += a * facets.nz(f);
  }
}
