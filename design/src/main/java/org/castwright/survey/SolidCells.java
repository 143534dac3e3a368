package org.castwright.survey;

import org.castwright.mesh.TriMesh;

/** Which cells of a grid lie inside a mesh. */
public final class SolidCells {

  private SolidCells() {}

  /**
   * Tells it for the centers of cubic cells. Inside is told by signed crossings along z, so shells
   * that overlap are counted as one solid.
   *
   * @param mesh closed, outward-oriented, mm
   * @param raster centers across z; its pixel is the side of a cell
   * @param z0 height of the lowest centers, mm
   * @param nz layers
   * @return layer after layer, each row after row of the raster
   */
  public static boolean[] of(TriMesh mesh, Raster raster, double z0, int nz) {
    int columns = raster.columns();
    int[] turns = new int[columns * (nz + 1)];
    new Scanlines(
            mesh.xyz(),
            mesh.tri(),
            raster,
            (facet, row, from, to, x, z, slope, up) -> {
              for (int k = from; k < to; k++) {
                double below = Math.ceil((z + (k - x) * slope - z0) / raster.pixel());
                int level = (int) Math.max(0, Math.min(nz, below));
                turns[(row * raster.nx() + k) * (nz + 1) + level] += up ? 1 : -1;
              }
            })
        .all();
    boolean[] solid = new boolean[columns * nz];
    for (int c = 0; c < columns; c++) {
      int winding = 0;
      for (int k = nz - 1; k >= 0; k--) {
        winding += turns[c * (nz + 1) + k + 1];
        solid[k * columns + c] = winding > 0;
      }
    }
    return solid;
  }
}
