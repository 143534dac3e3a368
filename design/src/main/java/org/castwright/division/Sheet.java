package org.castwright.division;

import java.util.Arrays;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;
import org.castwright.survey.Raster;

/**
 * Where the share of one piece ends: a height over each column across its pull. All that is left
 * above it leaves with the piece. Within the casting's shadow it may run inside the casting; where
 * it comes out of it is the seam.
 */
public final class Sheet {

  /** How far a slab reaches past the block, mm. */
  private static final double PAST = 3;

  /** How far a sheet may be drawn off its heights to save triangles, mm. */
  private static final double FLATNESS = 0.05;

  /** By the casting, where it makes the seam. */
  private static final double BY_CASTING = 0.005;

  /** Past the highest of the casting near by so much, mm, no seam is. */
  private static final double ABOVE = 1;

  /** Inside the casting and outside the block nobody sees the sheet, mm. */
  private static final double UNSEEN = 0.5;

  /** What share of its depth in the casting it may be off there. */
  private static final double DEPTHS = 4;

  private final PullColumns view;
  private final double[] h;
  private final int nx;
  private final int ny;

  Sheet(PullColumns view, double[] heights) {
    this.view = view;
    this.h = heights;
    nx = view.raster.nx();
    ny = view.raster.ny();
  }

  /** The pull is the third axis. */
  public Frame frame() {
    return view.frame;
  }

  /** Columns across the pull, in {@link #frame}. */
  public Raster raster() {
    return view.raster;
  }

  /** Height over a point across the pull, mm, between columns; outside them that of the rim. */
  public double heightAt(double x, double y) {
    Raster r = view.raster;
    double fx = Math.max(0, Math.min(nx - 1.001, (x - r.x0()) / r.pixel()));
    double fy = Math.max(0, Math.min(ny - 1.001, (y - r.y0()) / r.pixel()));
    int i = (int) fx;
    int j = (int) fy;
    int o = j * nx + i;
    double a = fx - i;
    double b = fy - j;
    return (1 - b) * ((1 - a) * h[o] + a * h[o + 1])
        + b * ((1 - a) * h[o + nx] + a * h[o + nx + 1]);
  }

  /** How far a point lies above the sheet along the pull, mm. */
  public double above(Vec3 p) {
    Vec3 q = view.frame.toLocal(p);
    return q.z() - heightAt(q.x(), q.y());
  }

  /** Square to the sheet under or over a point, against the pull, not of unit length. */
  Vec3 downward(Vec3 p) {
    Vec3 q = view.frame.toLocal(p);
    double d = view.raster.pixel();
    double gx = (heightAt(q.x() + d, q.y()) - heightAt(q.x() - d, q.y())) / (2 * d);
    double gy = (heightAt(q.x(), q.y() + d) - heightAt(q.x(), q.y() - d)) / (2 * d);
    return view.frame.toWorld(new Vec3(gx, gy, -1));
  }

  /**
   * Levels the sheet round a place for something to stand on.
   *
   * @param radius level out to here, mm
   * @param blend back to the sheet as it was within so much more, mm
   */
  public void level(double x, double y, double radius, double blend) {
    double z = heightAt(x, y);
    Raster r = view.raster;
    for (int j = 0; j < ny; j++) {
      for (int i = 0; i < nx; i++) {
        double d = Math.hypot(r.x0() + i * r.pixel() - x, r.y0() + j * r.pixel() - y) - radius;
        if (d < blend) {
          double t = Math.max(0, d / blend);
          h[j * nx + i] = (1 - t) * z + t * h[j * nx + i];
        }
      }
    }
  }

  /** The roof of the casting over a point across the pull, minus infinity beside its shadow, mm. */
  double roofAt(int node) {
    return view.roof[node];
  }

  /** Halfway through the topmost run of solid of a node's column. */
  double middleOfRun(int node) {
    return (view.roof[node] + view.under[node]) / 2;
  }

  double height(int node) {
    return h[node];
  }

  /** Everything above the sheet, closed, past the block on all sides. */
  TriMesh slab() {
    double top = view.high + PAST;
    double[] play = new double[h.length];
    Arrays.setAll(play, this::play);
    int[] t = SheetMesh.of(h, play, nx, ny);
    int[] number = new int[h.length];
    Arrays.fill(number, -1);
    MeshBuilder m = new MeshBuilder();
    for (int o : t) {
      if (number[o] < 0) {
        number[o] = node(m, o, h[o]);
      }
    }
    for (int k = 0; k < t.length; k += 3) {
      // faces down: the piece is above
      m.triangle(number[t[k]], number[t[k + 2]], number[t[k + 1]]);
    }
    int[] rim = Arrays.stream(rim()).filter(o -> number[o] >= 0).toArray();
    int first = m.vertexCount();
    for (int o : rim) {
      node(m, o, top);
    }
    int hub = node(m, ny / 2 * nx + nx / 2, top);
    for (int k = 0; k < rim.length; k++) {
      int n = (k + 1) % rim.length;
      m.triangle(number[rim[k]], number[rim[n]], first + n);
      m.triangle(number[rim[k]], first + n, first + k);
      m.triangle(hub, first + k, first + n);
    }
    return m.build();
  }

  /** How far the sheet may be drawn off its height at a node, mm. */
  private double play(int o) {
    if (view.outside(point(o, h[o])) > UNSEEN) {
      return UNSEEN;
    }
    if (h[o] > view.wide[o] + ABOVE) {
      // minus infinity beside the casting's shadow
      return FLATNESS;
    }
    double deep = Math.min(view.narrow[o] - h[o], h[o] - view.under[o]);
    return Math.max(BY_CASTING, Math.min(UNSEEN, deep / DEPTHS));
  }

  /** Rim nodes counter-clockwise. */
  private int[] rim() {
    int[] out = new int[2 * (nx + ny) - 4];
    int k = 0;
    for (int i = 0; i + 1 < nx; i++) {
      out[k++] = i;
    }
    for (int j = 0; j + 1 < ny; j++) {
      out[k++] = j * nx + nx - 1;
    }
    for (int i = nx - 1; i > 0; i--) {
      out[k++] = (ny - 1) * nx + i;
    }
    for (int j = ny - 1; j > 0; j--) {
      out[k++] = j * nx;
    }
    return out;
  }

  private int node(MeshBuilder m, int o, double height) {
    Vec3 p = point(o, height);
    return m.vertex(p.x(), p.y(), p.z());
  }

  /** A point of the column of a node. */
  Vec3 point(int o, double height) {
    return view.point(o, height);
  }
}
