package org.castwright.pictures;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** All triangles of a scene laid on the sheet, in samples, item after item. */
final class Stage {

  final double[] x;
  final double[] y;
  final double[] z;
  final int[] tri;

  /** The item of each triangle. */
  final int[] item;

  /** Unlit color of each triangle. */
  final int[] rgb;

  /** Topmost and lowest sample row each triangle can touch. */
  final int[] top;

  final int[] bottom;

  /** True where the outside of the surface is seen. */
  final boolean[] front;

  /** Depth a sample to the right and a sample down, on the plane of each triangle. */
  final float[] slopeX;

  final float[] slopeY;

  /** Index of the first triangle and the first vertex of each item. */
  final int[] firstTriangle;

  final int[] firstVertex;
  final MeshForm[] forms;
  final List<Item> items;
  final Camera camera;

  Stage(Scene scene, Camera camera, PictureOptions options) {
    items = scene.items();
    this.camera = camera;
    int n = items.size();
    firstTriangle = new int[n + 1];
    firstVertex = new int[n + 1];
    for (int i = 0; i < n; i++) {
      firstTriangle[i + 1] = firstTriangle[i] + items.get(i).mesh().triangleCount();
      firstVertex[i + 1] = firstVertex[i] + items.get(i).mesh().vertexCount();
    }
    int vertices = firstVertex[n];
    int triangles = firstTriangle[n];
    x = new double[vertices];
    y = new double[vertices];
    z = new double[vertices];
    tri = new int[3 * triangles];
    item = new int[triangles];
    rgb = new int[triangles];
    top = new int[triangles];
    bottom = new int[triangles];
    front = new boolean[triangles];
    slopeX = new float[triangles];
    slopeY = new float[triangles];
    forms = new MeshForm[n];
    build(options);
  }

  /** Two jobs an item, so that both cores work even on a single one. */
  private void build(PictureOptions options) {
    Workers.run(
        options.threads(),
        2 * items.size(),
        () ->
            job -> {
              if (job % 2 == 0) {
                forms[job / 2] = MeshForm.of(items.get(job / 2).mesh(), options.creaseDegrees());
              } else {
                lay(job / 2);
              }
            });
  }

  private void lay(int i) {
    Item it = items.get(i);
    TriMesh mesh = it.mesh();
    double[] p = new double[3];
    for (int v = 0; v < mesh.vertexCount(); v++) {
      camera.project(mesh.xyz(), 3 * v, it.offset(), p);
      x[firstVertex[i] + v] = p[0];
      y[firstVertex[i] + v] = p[1];
      z[firstVertex[i] + v] = p[2];
    }
    for (int f = 0; f < mesh.triangleCount(); f++) {
      int t = firstTriangle[i] + f;
      for (int k = 0; k < 3; k++) {
        tri[3 * t + k] = firstVertex[i] + mesh.tri()[3 * f + k];
      }
      item[t] = i;
      rgb[t] = it.paint().rgb(f);
      measure(t);
    }
  }

  private void measure(int t) {
    int a = tri[3 * t];
    int b = tri[3 * t + 1];
    int c = tri[3 * t + 2];
    top[t] = (int) Math.floor(Math.min(y[a], Math.min(y[b], y[c])));
    bottom[t] = (int) Math.ceil(Math.max(y[a], Math.max(y[b], y[c])));
    double area = (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
    // rows grow downward, so what turns counter-clockwise for the eye has a negative area here
    front[t] = area < 0;
    if (area != 0) {
      double zb = z[b] - z[a];
      double zc = z[c] - z[a];
      slopeX[t] = (float) ((zb * (y[c] - y[a]) - zc * (y[b] - y[a])) / area);
      slopeY[t] = (float) ((zc * (x[b] - x[a]) - zb * (x[c] - x[a])) / area);
    }
  }

  int triangleCount() {
    return item.length;
  }

  /** The three normals of a triangle's corners start here in its form's array. */
  int cornerIndex(int t) {
    return 9 * (t - firstTriangle[item[t]]);
  }

  Vec3 right() {
    return camera.right();
  }

  Vec3 up() {
    return camera.up();
  }

  Vec3 toward() {
    return camera.toward();
  }
}
