package org.castwright.parting;

import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.locationtech.jts.geom.Coordinate;

/** Castings for the tests of this room, in the mold frame, on the float grid. */
final class PartingShapes {

  private PartingShapes() {}

  /** Turned about x, then about z, degrees. */
  static TriMesh turned(TriMesh m, double aboutX, double aboutZ) {
    double cx = StrictMath.cos(Math.toRadians(aboutX));
    double sx = StrictMath.sin(Math.toRadians(aboutX));
    double cz = StrictMath.cos(Math.toRadians(aboutZ));
    double sz = StrictMath.sin(Math.toRadians(aboutZ));
    return mapped(
        m,
        p -> {
          double y = cx * p.y() - sx * p.z();
          double z = sx * p.y() + cx * p.z();
          return new Vec3(cz * p.x() - sz * y, sz * p.x() + cz * y, z);
        });
  }

  static TriMesh mapped(TriMesh m, java.util.function.UnaryOperator<Vec3> map) {
    double[] out = new double[m.xyz().length];
    for (int i = 0; i < m.vertexCount(); i++) {
      Vec3 p = map.apply(m.vertex(i));
      out[3 * i] = p.x();
      out[3 * i + 1] = p.y();
      out[3 * i + 2] = p.z();
    }
    return FloatGrid.snap(new TriMesh(out, m.tri()));
  }

  static TriMesh snapped(TriMesh m) {
    return FloatGrid.snap(m);
  }

  /** A disc whose rim goes up and down by {@code wave} five times round. */
  static TriMesh wavyDisc(double radius, double wave, int sides) {
    return mapped(
        Shapes.ellipsoid(radius, radius, radius / 4, sides),
        p -> {
          double a = StrictMath.atan2(p.y(), p.x());
          double r = Math.hypot(p.x(), p.y()) / radius;
          return new Vec3(p.x(), p.y(), p.z() + wave * r * r * StrictMath.sin(5 * a));
        });
  }

  /** A sausage bent upward out of its plane: a seam far from flat. */
  static TriMesh banana(int sides) {
    return mapped(
        Shapes.ellipsoid(40, 10, 8, sides),
        p -> new Vec3(p.x(), p.y() + p.x() * p.x() / 200, p.z() + p.x() * p.x() / 120));
  }

  /**
   * A body of upright prisms on common plan triangles: {@code solid[k]} has one letter per
   * triangle, 'x' where the layer from {@code z[k]} to {@code z[k + 1]} is solid.
   */
  static TriMesh layers(double[] xy, int[] tri, double[] z, String... solid) {
    int n = xy.length / 2;
    MeshBuilder m = new MeshBuilder();
    for (double h : z) {
      for (int i = 0; i < n; i++) {
        m.vertex(xy[2 * i], xy[2 * i + 1], h);
      }
    }
    for (int k = 0; k < z.length; k++) {
      for (int t = 0; t < tri.length / 3; t++) {
        boolean below = k > 0 && solid[k - 1].charAt(t) == 'x';
        boolean above = k < solid.length && solid[k].charAt(t) == 'x';
        int a = k * n + tri[3 * t];
        int b = k * n + tri[3 * t + 1];
        int c = k * n + tri[3 * t + 2];
        if (below != above) {
          m.triangle(a, below ? b : c, below ? c : b);
        }
        for (int e = 0; above && e < 3; e++) {
          int p = tri[3 * t + e];
          int q = tri[3 * t + (e + 1) % 3];
          if (!solidAcross(tri, solid[k], p, q)) {
            m.triangle(k * n + p, k * n + q, k * n + n + q);
            m.triangle(k * n + p, k * n + n + q, k * n + n + p);
          }
        }
      }
    }
    return compact(m.build());
  }

  private static boolean solidAcross(int[] tri, String solid, int p, int q) {
    for (int c = 0; c < tri.length; c++) {
      if (tri[c] == q && tri[c % 3 == 2 ? c - 2 : c + 1] == p) {
        return solid.charAt(c / 3) == 'x';
      }
    }
    return false;
  }

  private static TriMesh compact(TriMesh m) {
    MeshBuilder out = new MeshBuilder();
    int[] map = new int[m.vertexCount()];
    for (int i = 0; i < m.tri().length; i++) {
      int v = m.tri()[i];
      if (map[v] == 0) {
        Vec3 p = m.vertex(v);
        map[v] = out.vertex(p.x(), p.y(), p.z()) + 1;
      }
    }
    for (int i = 0; i < m.tri().length; i += 3) {
      out.triangle(map[m.tri()[i]] - 1, map[m.tri()[i + 1]] - 1, map[m.tri()[i + 2]] - 1);
    }
    return FloatGrid.snap(out.build());
  }

  /**
   * Layers over a plan given by its points and edges, by Delaunay; holes are where {@code in} says.
   */
  static TriMesh prism(
      double[] xy, int[] edges, double z0, double z1, java.util.function.Predicate<Coordinate> in) {
    Triangulation t = new Triangulation(xy, edges);
    StringBuilder s = new StringBuilder();
    for (int f = 0; f < t.tri.length / 3; f++) {
      double x = 0;
      double y = 0;
      for (int k = 0; k < 3; k++) {
        x += xy[2 * t.tri[3 * f + k]] / 3;
        y += xy[2 * t.tri[3 * f + k] + 1] / 3;
      }
      s.append(in.test(new Coordinate(x, y)) ? 'x' : '.');
    }
    return layers(xy, t.tri, new double[] {z0, z1}, s.toString());
  }

  /** A disc with through-holes. */
  static TriMesh discWithHoles(double radius, double height, int sides) {
    double[][] holes = {{0, 0, 6}, {14, 0, 3}, {-12, 8, 4}};
    int n = sides * (1 + holes.length);
    double[] xy = new double[2 * n];
    int[] edges = new int[2 * n];
    for (int h = 0; h <= holes.length; h++) {
      double[] c = h == 0 ? new double[] {0, 0, radius} : holes[h - 1];
      for (int i = 0; i < sides; i++) {
        int o = h * sides + i;
        double a = 2 * Math.PI * i / sides;
        xy[2 * o] = (float) (c[0] + c[2] * StrictMath.cos(a));
        xy[2 * o + 1] = (float) (c[1] + c[2] * StrictMath.sin(a));
        edges[2 * o] = o;
        edges[2 * o + 1] = h * sides + (i + 1) % sides;
      }
    }
    return prism(
        xy,
        edges,
        -height / 2,
        height / 2,
        p -> {
          boolean in = Math.hypot(p.x, p.y) < radius;
          for (double[] h : holes) {
            in &= Math.hypot(p.x - h[0], p.y - h[1]) > h[2];
          }
          return in;
        });
  }

  /** A plus sign with upright walls. */
  static TriMesh cross(double arm, double width, double height) {
    double a = arm;
    double w = width / 2;
    double[] xy = {
      a, -w, a, w, w, w, w, a, -w, a, -w, w, -a, w, -a, -w, -w, -w, -w, -a, w, -a, w, -w
    };
    int[] edges = new int[24];
    for (int i = 0; i < 12; i++) {
      edges[2 * i] = i;
      edges[2 * i + 1] = (i + 1) % 12;
    }
    return prism(xy, edges, 0, height, p -> Math.abs(p.x) < w || Math.abs(p.y) < w);
  }

  /**
   * Two plates at different heights joined by a wall. Their outlines meet in one corner of the
   * plan, where the seam must climb straight up: plate one (z 0 to 2) lies on the left, plate two
   * (z 5 to 7) on the right, and the corner at the origin opens toward +y.
   */
  static TriMesh step() {
    double[] xy = {
      0, 0, -4, 0, -4, -20, 0, -20, -20, -20, -20, 20, -12, 12, 20, -20, 20, 20, 12, 12
    };
    int[] tri = {
      1,
      2,
      3,
      1,
      3,
      0, // the wall's plan
      2,
      1,
      4,
      1,
      5,
      4,
      1,
      6,
      5,
      1,
      0,
      6, // plate one beside it
      0,
      3,
      7,
      0,
      7,
      9,
      9,
      7,
      8 // plate two
    };
    return layers(xy, tri, new double[] {0, 2, 5, 7}, "xxxxxx...", "xx.......", "xx....xxx");
  }

  /**
   * Two plates at different heights, joined by a post, whose end faces lie over the same line of
   * the plan: between them the sheet must stand upright, and seam edges lie on one another in plan.
   */
  static TriMesh stair() {
    double[] xy = {
      -20, -20, 0, -20, 20, -20, -20, -5, -4, -5, 0, -5, 20, -5, -20, 5, -4, 5, 0, 5, 20, 5, -20,
      20, 0, 20, 20, 20
    };
    int[] tri = {
      4,
      5,
      9,
      4,
      9,
      8, // the post
      0,
      1,
      5,
      0,
      5,
      4,
      0,
      4,
      3,
      3,
      4,
      8,
      3,
      8,
      7,
      7,
      8,
      11,
      8,
      9,
      11,
      9,
      12,
      11, // left plate
      1,
      2,
      6,
      1,
      6,
      5,
      5,
      6,
      10,
      5,
      10,
      9,
      9,
      10,
      13,
      9,
      13,
      12 // right plate
    };
    return layers(
        xy,
        tri,
        new double[] {0, 2, 5, 7},
        "xxxxxxxxxx......",
        "xx..............",
        "xx........xxxxxx");
  }

  /** A sphere with rough skin: each vertex moved along its radius. */
  static TriMesh noisySphere(double radius, int sides, double sigma, long seed) {
    java.util.Random random = new java.util.Random(seed);
    return mapped(
        Shapes.sphere(radius, sides),
        p -> {
          double r = 1 + sigma * random.nextGaussian() / radius;
          return p.times(r);
        });
  }
}
