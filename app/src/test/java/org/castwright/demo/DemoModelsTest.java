package org.castwright.demo;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.Stream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The demo models are sound bodies that open along z, and two of them on a curved seam. */
class DemoModelsTest {

  /** Bits for a vertex or facet number in a packed edge. */
  private static final int BITS = 20;

  private static final TriMesh SHELL = ShellSoap.mesh();
  private static final TriMesh BIRD = RestingBird.mesh();
  private static final TriMesh MEDALLION = Medallion.mesh();

  static Stream<Named<TriMesh>> models() {
    return Stream.of(
        Named.of("shell", SHELL), Named.of("bird", BIRD), Named.of("medallion", MEDALLION));
  }

  static Stream<Named<TriMesh>> twoSided() {
    return models().limit(2);
  }

  @ParameterizedTest
  @MethodSource("models")
  void everyDirectedEdgeHasItsOppositeOnce(TriMesh m) {
    long[] edges = sortedEdges(m);
    for (int i = 1; i < edges.length; i++) {
      assertTrue(edges[i] >> BITS != edges[i - 1] >> BITS, "an edge runs the same way twice");
    }
    int[] t = m.tri();
    for (int i = 0; i < t.length; i++) {
      assertTrue(facetAt(edges, next(t, i), t[i]) >= 0, "an edge is open");
    }
    // Euler: a sphere has V - E + F = 2
    assertEquals(2, m.vertexCount() - edges.length / 2 + m.triangleCount());
    assertEquals(m.vertexCount(), Arrays.stream(t).distinct().count());
  }

  @ParameterizedTest
  @MethodSource("models")
  void volumeIsThatOfASmallCasting(TriMesh m) {
    assertTrue(m.volume() > 10_000 && m.volume() < 100_000, "volume " + m.volume());
    assertTrue(m.volume() < 0.6 * m.bounds().volume(), "outside of its box");
  }

  @ParameterizedTest
  @MethodSource("models")
  void noFacetIsASliver(TriMesh m) {
    for (int f = 0; f < m.triangleCount(); f++) {
      double twice = 2 * m.areaVector(f).length();
      double longest = 0;
      for (int i = 3 * f; i < 3 * f + 3; i++) {
        Vec3 side = m.vertex(next(m.tri(), i)).minus(m.vertex(m.tri()[i]));
        longest = Math.max(longest, side.length());
      }
      assertTrue(twice / longest > 0.02, "facet " + f + " is " + twice / longest + " mm high");
    }
  }

  @ParameterizedTest
  @MethodSource("models")
  void noEdgeIsSharperThanAKnife(TriMesh m) {
    long[] edges = sortedEdges(m);
    int[] t = m.tri();
    double sharpest = 180;
    for (int i = 0; i < t.length; i++) {
      Vec3 own = m.areaVector(i / 3).unit();
      Vec3 other = m.areaVector(facetAt(edges, next(t, i), t[i])).unit();
      double turn = Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, own.dot(other)))));
      sharpest = Math.min(sharpest, 180 - turn);
    }
    assertTrue(sharpest > 35, "angle between facets " + sharpest + " degrees");
  }

  /**
   * Both sides are graphs over the same plane grid (every facet turns up above and down below) and
   * the upper one is higher at every inner grid point, so a vertical line meets each side at most
   * once and there is no trapped space along z.
   */
  @ParameterizedTest
  @MethodSource("twoSided")
  void eachVerticalLineEntersOnceAndLeavesOnce(TriMesh m) {
    int rings = ShellSoap.rings();
    assertEquals(rings, RestingBird.rings());
    int side = TwoSided.sideVertices(rings);
    for (int i = 0; i < TwoSided.innerVertices(rings); i++) {
      Vec3 up = m.vertex(i);
      Vec3 low = m.vertex(side + i);
      assertEquals(up.x(), low.x());
      assertEquals(up.y(), low.y());
      assertTrue(up.z() > low.z(), "the sides touch at " + up);
    }
    double covered = 0;
    for (int f = 0; f < m.triangleCount(); f += 2) {
      double up = m.areaVector(f).z();
      assertTrue(up > 0, "facet " + f + " of the upper side hangs over");
      assertEquals(-up, m.areaVector(f + 1).z(), 1e-9);
      covered += up;
    }
    // upper facets that all turn up cover the outline's area exactly once
    assertEquals(outlineArea(m, rings), covered, 1e-6);
  }

  private static double outlineArea(TriMesh m, int rings) {
    int first = TwoSided.innerVertices(rings);
    int n = TwoSided.sideVertices(rings) - first;
    double area = 0;
    for (int i = 0; i < n; i++) {
      Vec3 a = m.vertex(first + i);
      Vec3 b = m.vertex(first + (i + 1) % n);
      area += (a.x() * b.y() - b.x() * a.y()) / 2;
    }
    return area;
  }

  @ParameterizedTest
  @MethodSource("twoSided")
  void theRimIsNotFlat(TriMesh m) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int v = TwoSided.innerVertices(ShellSoap.rings());
        v < TwoSided.sideVertices(ShellSoap.rings());
        v++) {
      low = Math.min(low, m.vertex(v).z());
      high = Math.max(high, m.vertex(v).z());
    }
    assertTrue(high - low > 4, "rim from " + low + " to " + high);
  }

  @Test
  void medallionIsWidestAtItsFlatBack() {
    TriMesh m = MEDALLION;
    for (int f = 0; f < m.triangleCount(); f++) {
      Vec3 n = m.areaVector(f).unit();
      boolean back = n.z() < -0.999999;
      // sin 12 degrees: the draft its description promises
      assertTrue(back || n.z() > 0.2079, "facet " + f + " leans by " + n.z());
    }
  }

  @Test
  void theSameEveryTime() {
    assertArrayEquals(SHELL.xyz(), ShellSoap.mesh().xyz());
    assertArrayEquals(BIRD.xyz(), RestingBird.mesh().xyz());
    assertArrayEquals(MEDALLION.xyz(), Medallion.mesh().xyz());
  }

  private static int next(int[] tri, int i) {
    return tri[i % 3 == 2 ? i - 2 : i + 1];
  }

  /** All directed edges as from, to, facet, sorted. */
  private static long[] sortedEdges(TriMesh m) {
    int[] t = m.tri();
    assertTrue(m.vertexCount() < 1 << BITS && m.triangleCount() < 1 << BITS);
    long[] edges = new long[t.length];
    for (int i = 0; i < t.length; i++) {
      edges[i] = ((long) t[i] << BITS | next(t, i)) << BITS | i / 3;
    }
    Arrays.sort(edges);
    return edges;
  }

  /** The facet that has the directed edge, or -1. */
  private static int facetAt(long[] edges, int from, int to) {
    long key = (long) from << BITS | to;
    int at = Arrays.binarySearch(edges, key << BITS);
    at = at < 0 ? -at - 1 : at;
    return at < edges.length && edges[at] >> BITS == key
        ? (int) (edges[at] & ((1 << BITS) - 1))
        : -1;
  }
}
