package org.castwright.stretch;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.IntList;

/**
 * The room round the casting in the cells of one grid: casting, clear along the grid's own pull,
 * free only along another pull, or caught, which means that the casting is ahead along every pull.
 * Caught cells that touch form places, numbered in the order of their first cells.
 */
final class Space {

  static final byte CLEAR = 0;
  static final byte CASTING = 1;
  static final byte CAUGHT = 2;
  static final byte OTHER = 3;

  private final Grid grid;
  private final byte[] state;

  /** Place of each caught cell, from 1; 0 elsewhere. */
  private final int[] place;

  private int places;

  /**
   * Fills one grid.
   *
   * @param own index of the grid's own pull among {@code grids}
   */
  Space(List<Grid> grids, List<Columns> columns, int own) {
    this.grid = grids.get(own);
    this.state = new byte[grid.layers() * grid.cells()];
    this.place = new int[state.length];
    for (int layer = 0; layer < grid.layers(); layer++) {
      for (int cell = 0; cell < grid.cells(); cell++) {
        state[index(layer, cell)] = look(grids, columns, own, layer, cell);
      }
    }
    for (int i = 0; i < state.length; i++) {
      if (state[i] == CAUGHT && place[i] == 0) {
        flood(i, ++places);
      }
    }
  }

  private byte look(List<Grid> grids, List<Columns> columns, int own, int layer, int cell) {
    double w = grid.w(layer);
    if (columns.get(own).holds(cell, w)) {
      return CASTING;
    }
    if (!columns.get(own).ahead(cell, w)) {
      return CLEAR;
    }
    for (int k = 0; k < grids.size(); k++) {
      if (k != own) {
        Grid other = grids.get(k);
        Vec3 p = other.frame().toLocal(grid.point(layer, cell));
        if (!aheadRound(other, columns.get(k), p)) {
          return OTHER;
        }
      }
    }
    return CAUGHT;
  }

  /** Whether the casting is ahead in all four columns round a point: so edges of cells free. */
  private static boolean aheadRound(Grid grid, Columns columns, Vec3 p) {
    double half = grid.step() / 2;
    for (int corner = 0; corner < 4; corner++) {
      double u = p.x() + (corner % 2 == 0 ? half : -half);
      double v = p.y() + (corner / 2 == 0 ? half : -half);
      int cell = grid.cellAt(u, v);
      if (cell < 0 || !columns.ahead(cell, p.z())) {
        return false;
      }
    }
    return true;
  }

  private void flood(int from, int number) {
    IntList todo = new IntList();
    place[from] = number;
    todo.add(from);
    int cells = grid.cells();
    while (todo.size() > 0) {
      int i = todo.pop();
      int u = i % cells % grid.across();
      int v = i % cells / grid.across();
      reach(todo, i, u > 0, -1, number);
      reach(todo, i, u < grid.across() - 1, 1, number);
      reach(todo, i, v > 0, -grid.across(), number);
      reach(todo, i, v < grid.along() - 1, grid.across(), number);
      reach(todo, i, i >= cells, -cells, number);
      reach(todo, i, i < state.length - cells, cells, number);
    }
  }

  private void reach(IntList todo, int i, boolean exists, int step, int number) {
    if (exists && state[i + step] == CAUGHT && place[i + step] == 0) {
      place[i + step] = number;
      todo.add(i + step);
    }
  }

  private int index(int layer, int cell) {
    return layer * grid.cells() + cell;
  }

  Grid grid() {
    return grid;
  }

  int places() {
    return places;
  }

  byte state(int layer, int cell) {
    return state[index(layer, cell)];
  }

  int place(int layer, int cell) {
    return place[index(layer, cell)];
  }

  /** The place at a point, or 0. */
  int placeAt(Vec3 world) {
    Vec3 p = grid.frame().toLocal(world);
    int cell = grid.cellAt(p.x(), p.y());
    int layer = grid.layerAt(p.z());
    return cell < 0 || layer < 0 ? 0 : place(layer, cell);
  }
}
