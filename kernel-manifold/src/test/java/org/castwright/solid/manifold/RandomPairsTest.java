package org.castwright.solid.manifold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/**
 * Inclusion and exclusion on random pairs: |A| + |B| = |A ∪ B| + |A ∩ B| and |A| = |A − B| + |A ∩
 * B| (elementary measure theory), and every result is closed, oriented and manifold.
 */
class RandomPairsTest {

  /** Relative to |A| + |B|: the kernel snaps within about 1e-12 of the size of a body. */
  private static final double TOLERANCE = 1e-10;

  private static final ManifoldKernel KERNEL = new ManifoldKernel();

  @AfterAll
  static void close() {
    KERNEL.close();
  }

  @Test
  void inGeneralPosition() {
    pairs(800, 11, r -> new TriMesh[] {Bodies.any(r), Bodies.any(r)});
  }

  @Test
  void boxesOnALattice() {
    pairs(600, 12, r -> new TriMesh[] {Bodies.latticeBox(r), Bodies.latticeBox(r)});
  }

  @Test
  void oneMovedAlongItsOwnPlanes() {
    pairs(
        300,
        13,
        r -> {
          TriMesh a = Bodies.any(r);
          int f = r.nextInt(a.triangleCount());
          Vec3 along = a.vertex(a.tri()[3 * f + 1]).minus(a.vertex(a.tri()[3 * f]));
          return new TriMesh[] {a, a.translated(along.times(r.nextInt(3) / 2.0))};
        });
  }

  @Test
  void sharedVertices() {
    pairs(
        300,
        14,
        r -> {
          TriMesh a = Bodies.any(r);
          TriMesh b = Bodies.any(r);
          Vec3 p = a.vertex(r.nextInt(a.vertexCount()));
          Vec3 q = b.vertex(r.nextInt(b.vertexCount()));
          return new TriMesh[] {a, b.translated(p.minus(q))};
        });
  }

  @Test
  void nestedAndEqual() {
    pairs(
        200,
        15,
        r -> {
          TriMesh a = Bodies.any(r);
          double s = r.nextInt(3) / 2.0;
          Vec3 c = a.bounds().center();
          TriMesh b = a.translated(c.negate()).scaled(new Vec3(s + 0.5, s + 0.5, s + 0.5));
          return new TriMesh[] {a, b.translated(c)};
        });
  }

  /** Runs pairs on both instances; each has its own seed, told in the message. */
  private static void pairs(int count, int seed, Maker maker) {
    IntStream.range(0, count)
        .parallel()
        .forEach(
            i -> {
              TriMesh[] pair = maker.make(new SplittableRandom(1000L * seed + i));
              check(pair[0], pair[1], "seed " + (1000L * seed + i));
            });
  }

  private static void check(TriMesh meshA, TriMesh meshB, String message) {
    Solid a = KERNEL.solid("A", meshA);
    Solid b = KERNEL.solid("B", meshB);
    Solid union = KERNEL.union("A or B", List.of(a, b));
    Solid common = KERNEL.intersection("A and B", a, b);
    Solid rest = KERNEL.difference("A not B", a, List.of(b));
    double tolerance = TOLERANCE * (a.volume() + b.volume());
    assertEquals(a.volume() + b.volume(), union.volume() + common.volume(), tolerance, message);
    assertEquals(a.volume(), rest.volume() + common.volume(), tolerance, message);
    assertEquals(common.volume(), KERNEL.overlap(a, Vec3.ZERO, b), tolerance, message);
    for (Solid s : List.of(union, common, rest)) {
      assertTrue(MeshCheck.of(s.mesh()).closedManifold(), message);
    }
  }

  private interface Maker {
    TriMesh[] make(SplittableRandom random);
  }
}
