package org.castwright.cover;

import java.util.Arrays;
import org.castwright.mesh.TriMesh;

/**
 * The points at which a set of pulls is judged: centers of the cells of the mold's space within the
 * casting's box, then points a hair outside the casting's facets. What lies outside the casting's
 * hull needs no samples: were such a point caught along all pulls, a plane between it and the
 * casting would have all pulls on its far side, and the casting's surface nearest to that plane
 * would be caught too.
 */
final class Samples {

  /** Points closer to the surface than this only tell noise, mm; facets are judged from here. */
  static final double OFF_SURFACE = 0.05;

  // cells reach this many of their sides past the casting's box
  private static final double MARGIN_CELLS = 0.5;

  private final SpaceGrid grid;
  private final int cells;
  private final int count;
  private final double[] xyz;
  private final int[] id;
  private final double[] weight;

  private Samples(SpaceGrid grid, int cells, int count, double[] xyz, int[] id, double[] weight) {
    this.grid = grid;
    this.cells = cells;
    this.count = count;
    this.xyz = xyz;
    this.id = id;
    this.weight = weight;
  }

  /**
   * @param cells along the longest side of the casting's box
   */
  static Samples of(TriMesh mesh, int cells) {
    double cell = mesh.bounds().longestSide() / cells;
    SpaceGrid grid = new SpaceGrid(mesh, cell, MARGIN_CELLS * cell);
    CellPoints space = new CellPoints(grid, grid.near(mesh, OFF_SURFACE));
    FacetPoints facets = new FacetPoints(mesh, cell);
    int n = space.count() + facets.count();
    double[] xyz = new double[3 * n];
    int[] id = new int[n];
    double[] weight = new double[n];
    space.into(xyz, id, weight);
    facets.into(xyz, id, weight, space.count());
    return new Samples(grid, space.count(), n, xyz, id, weight).outside(mesh);
  }

  /**
   * Leaves out facets' points that lie in the casting: in sharp grooves, and where parts overlap.
   */
  private Samples outside(TriMesh mesh) {
    Inside inside = new Inside(mesh);
    int[] list = new int[count];
    int n = 0;
    for (int s = 0; s < count; s++) {
      if (isCell(s) || !inside.test(x(s), y(s), z(s))) {
        list[n++] = s;
      }
    }
    return n == count ? this : only(Arrays.copyOf(list, n));
  }

  /** The samples of a list, in its order, cells before facets. */
  Samples only(int[] list) {
    double[] p = new double[3 * list.length];
    int[] ids = new int[list.length];
    double[] w = new double[list.length];
    int first = 0;
    for (int i = 0; i < list.length; i++) {
      System.arraycopy(xyz, 3 * list[i], p, 3 * i, 3);
      ids[i] = id[list[i]];
      w[i] = weight[list[i]];
      first += list[i] < cells ? 1 : 0;
    }
    return new Samples(grid, first, list.length, p, ids, w);
  }

  SpaceGrid grid() {
    return grid;
  }

  /** How many samples. */
  int count() {
    return count;
  }

  /** Samples below this number are cells, the others are points on facets. */
  int cells() {
    return cells;
  }

  boolean isCell(int s) {
    return s < cells;
  }

  double x(int s) {
    return xyz[3 * s];
  }

  double y(int s) {
    return xyz[3 * s + 1];
  }

  double z(int s) {
    return xyz[3 * s + 2];
  }

  /** The number of the cell or of the facet. */
  int id(int s) {
    return id[s];
  }

  /** Volume in mm³ of a cell, area in mm² of a facet's point. */
  double weight(int s) {
    return weight[s];
  }

  /** Volumes of cells, 0 for facets. */
  double[] volumes() {
    double[] out = weight.clone();
    Arrays.fill(out, cells, count, 0);
    return out;
  }

  /** Areas of facets, 0 for cells. */
  double[] areas() {
    double[] out = weight.clone();
    Arrays.fill(out, 0, cells, 0);
    return out;
  }
}
