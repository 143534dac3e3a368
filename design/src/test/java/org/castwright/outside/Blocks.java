package org.castwright.outside;

import java.util.SplittableRandom;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.TriMesh;

/** A connected shape of 4 × 4 × 3 cubes, and the plain way to tell whether it opens along z. */
final class Blocks {

  private static final int[] N = {4, 4, 3};
  private static final int[][] STEPS = {
    {1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}
  };

  private final boolean[][][] full = new boolean[4][4][3];

  private Blocks() {}

  /** Grown from one cell until it has so many, without cells that touch in an edge or a corner. */
  static Blocks grown(SplittableRandom random) {
    while (true) {
      Blocks b = new Blocks();
      b.full[random.nextInt(4)][random.nextInt(4)][random.nextInt(3)] = true;
      int cells = 5 + random.nextInt(26);
      for (int tries = 0; tries < 400 && cells > 1; tries++) {
        int x = random.nextInt(4);
        int y = random.nextInt(4);
        int z = random.nextInt(3);
        if (!b.full[x][y][z] && b.hasNeighbor(x, y, z)) {
          b.full[x][y][z] = true;
          cells--;
        }
      }
      if (MeshCheck.of(b.mesh(1)).closedManifold()) {
        return b;
      }
    }
  }

  private boolean hasNeighbor(int x, int y, int z) {
    for (int[] s : STEPS) {
      if (full(x + s[0], y + s[1], z + s[2])) {
        return true;
      }
    }
    return false;
  }

  private boolean full(int x, int y, int z) {
    return x >= 0 && y >= 0 && z >= 0 && x < N[0] && y < N[1] && z < N[2] && full[x][y][z];
  }

  /** Whether every column along z is empty or one run of full cells. */
  boolean everyColumnIsOneRun() {
    for (int x = 0; x < N[0]; x++) {
      for (int y = 0; y < N[1]; y++) {
        int starts = 0;
        for (int z = 0; z < N[2]; z++) {
          starts += full(x, y, z) && !full(x, y, z - 1) ? 1 : 0;
        }
        if (starts > 1) {
          return false;
        }
      }
    }
    return true;
  }

  /** Faces between full and empty cells; corners at the same place are one vertex. */
  TriMesh mesh(double side) {
    MeshBuilder m = new MeshBuilder();
    int[][][] corner = new int[N[0] + 1][N[1] + 1][N[2] + 1];
    for (int x = 0; x <= N[0]; x++) {
      for (int y = 0; y <= N[1]; y++) {
        for (int z = 0; z <= N[2]; z++) {
          corner[x][y][z] = m.vertex(side * x, side * y, side * z);
        }
      }
    }
    for (int x = 0; x < N[0]; x++) {
      for (int y = 0; y < N[1]; y++) {
        for (int z = 0; z < N[2]; z++) {
          for (int[] s : STEPS) {
            if (full(x, y, z) && !full(x + s[0], y + s[1], z + s[2])) {
              face(m, corner, new Vec3(x, y, z), new Vec3(s[0], s[1], s[2]));
            }
          }
        }
      }
    }
    return m.build();
  }

  private static void face(MeshBuilder m, int[][][] corner, Vec3 cell, Vec3 out) {
    Vec3 middle = cell.plus(new Vec3(0.5, 0.5, 0.5)).plus(out.times(0.5));
    Vec3 u = new Vec3(Math.abs(out.y()), Math.abs(out.z()), Math.abs(out.x()));
    Vec3 v = out.cross(u);
    int[] q = new int[4];
    for (int k = 0; k < 4; k++) {
      Vec3 p =
          middle.plus(u.times(k == 0 || k == 3 ? -0.5 : 0.5)).plus(v.times(k < 2 ? -0.5 : 0.5));
      q[k] = corner[(int) p.x()][(int) p.y()][(int) p.z()];
    }
    m.triangle(q[0], q[1], q[2]);
    m.triangle(q[0], q[2], q[3]);
  }
}
