package org.castwright.outside;

import java.util.SplittableRandom;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.TriMesh;

/** Bodies of equal cubes on a small grid, and the slow answer to whether two pieces open them. */
final class Cubes {

  static final int NX = 4;
  static final int NY = 4;
  static final int NZ = 3;

  private final boolean[][][] solid = new boolean[NX][NY][NZ];

  /**
   * Adds cubes that touch a face of an earlier one, one at a time, until there are {@code count}.
   */
  static Cubes grown(int count, SplittableRandom random) {
    Cubes s = new Cubes();
    s.solid[NX / 2][NY / 2][NZ / 2] = true;
    int left = count - 1;
    while (left > 0) {
      int x = random.nextInt(NX);
      int y = random.nextInt(NY);
      int z = random.nextInt(NZ);
      boolean touches =
          s.at(x - 1, y, z)
              || s.at(x + 1, y, z)
              || s.at(x, y - 1, z)
              || s.at(x, y + 1, z)
              || s.at(x, y, z - 1)
              || s.at(x, y, z + 1);
      if (touches && !s.solid[x][y][z]) {
        s.solid[x][y][z] = true;
        left--;
      }
    }
    return s;
  }

  boolean at(int x, int y, int z) {
    return x >= 0 && y >= 0 && z >= 0 && x < NX && y < NY && z < NZ && solid[x][y][z];
  }

  /**
   * Whether mold pieces that leave along +z and -z can fill the empty cells of a block one cell
   * larger all round. Every way to deal out the cells of a column is tried: what goes up must have
   * nothing of the body or of the lower piece above it, what goes down nothing of the body or of
   * the upper piece below it. Columns do not hinder each other.
   */
  boolean opens() {
    for (int x = 0; x < NX; x++) {
      for (int y = 0; y < NY; y++) {
        boolean some = false;
        for (int deal = 0; deal < 1 << (NZ + 2) && !some; deal++) {
          some = slides(x, y, deal);
        }
        if (!some) {
          return false;
        }
      }
    }
    return true;
  }

  /** Bit k of {@code deal}: the cell at z = k - 1 goes up. */
  private boolean slides(int x, int y, int deal) {
    for (int k = 0; k < NZ + 2; k++) {
      if (at(x, y, k - 1)) {
        continue;
      }
      boolean up = (deal >> k & 1) == 1;
      int step = up ? 1 : -1;
      for (int j = k + step; j >= 0 && j < NZ + 2; j += step) {
        if (at(x, y, j - 1) || (deal >> j & 1) == 1 != up) {
          return false;
        }
      }
    }
    return true;
  }

  /** Outer faces of the cubes, corners shared; {@code side} is the side of a cube, mm. */
  TriMesh mesh(double side) {
    MeshBuilder m = new MeshBuilder();
    int[][][] corner = new int[NX + 1][NY + 1][NZ + 1];
    for (int x = 0; x < NX; x++) {
      for (int y = 0; y < NY; y++) {
        for (int z = 0; z < NZ; z++) {
          for (int k = 0; k < 6 && solid[x][y][z]; k++) {
            face(m, corner, new int[] {x, y, z}, k / 2, k % 2, side);
          }
        }
      }
    }
    return m.build();
  }

  private void face(MeshBuilder m, int[][][] corner, int[] cell, int axis, int far, double side) {
    int[] next = cell.clone();
    next[axis] += 2 * far - 1;
    if (at(next[0], next[1], next[2])) {
      return;
    }
    int[] quad = new int[4];
    for (int k = 0; k < 4; k++) {
      int[] p = cell.clone();
      p[axis] += far;
      p[(axis + 1) % 3] += k == 1 || k == 2 ? 1 : 0;
      p[(axis + 2) % 3] += k >= 2 ? 1 : 0;
      if (corner[p[0]][p[1]][p[2]] == 0) {
        corner[p[0]][p[1]][p[2]] = 1 + m.vertex(side * p[0], side * p[1], side * p[2]);
      }
      quad[k] = corner[p[0]][p[1]][p[2]] - 1;
    }
    int b = far == 1 ? quad[1] : quad[3];
    int d = far == 1 ? quad[3] : quad[1];
    m.triangle(quad[0], b, quad[2]);
    m.triangle(quad[0], quad[2], d);
  }

  /**
   * Whether the surface is a clean body: cubes that meet in an edge or a corner only, and hollows
   * inside, make none.
   */
  boolean clean() {
    MeshCheck check = MeshCheck.of(mesh(1));
    return check.closedManifold() && check.components() == 1;
  }
}
