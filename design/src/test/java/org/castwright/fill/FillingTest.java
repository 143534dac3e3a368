package org.castwright.fill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FillingTest {

  /** Every pocket counts. */
  private static final FillLimits ALL = new FillLimits(1e-6, 1e-6);

  private static TriMesh box(double x0, double y0, double z0, double x1, double y1, double z1) {
    return Primitives.box(new Vec3(x0, y0, z0), new Vec3(x1, y1, z1));
  }

  private static TriMesh union(TriMesh... parts) {
    try (SolidKernel kernel = new ManifoldKernel()) {
      List<Solid> solids = Arrays.stream(parts).map(p -> kernel.solid("part", p)).toList();
      return kernel.union("all", solids).mesh();
    }
  }

  private static TriMesh less(TriMesh from, TriMesh... tools) {
    try (SolidKernel kernel = new ManifoldKernel()) {
      List<Solid> solids = Arrays.stream(tools).map(p -> kernel.solid("tool", p)).toList();
      return kernel.difference("rest", kernel.solid("from", from), solids).mesh();
    }
  }

  /** A cavity open where its vertices lie in a plane across up. */
  private static Cavity openAt(TriMesh mesh, Vec3 up, double height) {
    boolean[] open = new boolean[mesh.vertexCount()];
    for (int v = 0; v < open.length; v++) {
      open[v] = Math.abs(mesh.vertex(v).dot(up) - height) < 1e-9;
    }
    return Cavity.open(mesh, open);
  }

  @Test
  void invertedCup() {
    // a chamber 40 x 40 x 20 fed by a bent pipe: liquid rises in the pipe, which is open at z = 60,
    // and shuts the chamber in as soon as it covers the roof of the passage at z = 6
    TriMesh cavity =
        union(box(0, 0, 0, 40, 40, 20), box(39, 15, 0, 61, 25, 6), box(55, 15, 5, 61, 25, 60));
    Filling f = Filling.of(openAt(cavity, Vec3.Z, 60), Vec3.Z, ALL);
    assertEquals(1, f.pockets().size());
    Pocket p = f.pockets().get(0);
    assertEquals(40 * 40 * 14, p.volumeMm3(), 1e-6);
    assertEquals(14, p.depthMm(), 1e-9);
    assertEquals(20, p.top().z(), 1e-9);
    assertEquals(0, f.restMm3(), 1e-9);
    // level 6: the chamber's foot and the passage; then only the pipe, 6 x 10
    double atSix = 40 * 40 * 6 + 20 * 10 * 6 + 1 * 10 * 6;
    assertEquals(f.curve().levelAt(atSix + 600), 16, 0.5);
    double poured = f.curve().full();
    assertEquals(cavity.volume() - 40 * 40 * 14, poured, 1e-6);
    // turned over the chamber drains its air through the passage into the pipe's foot: the pipe's
    // end is now the lowest place and open only there, so all of it is shut in but nothing flows
    Filling turned = Filling.of(openAt(cavity, Vec3.Z, 60), Vec3.Z.negate(), ALL);
    assertEquals(cavity.volume(), turned.trappedMm3(), 1e-6);
  }

  @Test
  void twoHumpRoof() {
    // a base 60 x 20 x 10 with humps 10 x 10: one to z = 30, vented; one to z = 25, not
    TriMesh cavity =
        union(box(0, 0, 0, 60, 20, 10), box(5, 5, 9, 15, 15, 30), box(40, 5, 9, 50, 15, 25));
    Filling f = Filling.of(openAt(cavity, Vec3.Z, 30), Vec3.Z, ALL);
    assertEquals(2, Filling.peaks(cavity, Vec3.Z, 0.5).size());
    assertEquals(1, f.pockets().size());
    assertEquals(10 * 10 * 15, f.pockets().get(0).volumeMm3(), 1e-6);
    assertEquals(25, f.pockets().get(0).top().z(), 1e-9);
    // nothing open: all of it
    Filling shut = Filling.of(Cavity.open(cavity, new boolean[cavity.vertexCount()]), Vec3.Z, ALL);
    assertEquals(cavity.volume(), shut.trappedMm3(), 1e-6);
    // lying on its long side no hump is above another
    assertEquals(1, Filling.peaks(cavity, Vec3.Y, 0.5).size());
  }

  @Test
  void ringWithBosses() {
    // a flat ring, three bosses on it 8 mm high; the first vented, two shut in
    TriMesh ring =
        less(Primitives.frustum(40, 0, 40, 10, 48), Primitives.frustum(20, -1, 20, 11, 48));
    TriMesh[] parts = new TriMesh[4];
    parts[0] = ring;
    for (int i = 0; i < 3; i++) {
      double a = 2 * Math.PI * i / 3;
      Vec3 at = new Vec3(30 * Math.cos(a), 30 * Math.sin(a), 5);
      parts[i + 1] = Primitives.frustum(4, 0, 4, 13 - i, 24).translated(at);
    }
    TriMesh cavity = union(parts);
    Filling f = Filling.of(openAt(cavity, Vec3.Z, 18), Vec3.Z, ALL);
    double disk = 24 * 0.5 * 16 * Math.sin(2 * Math.PI / 24);
    assertEquals(3, Filling.peaks(cavity, Vec3.Z, 0.5).size());
    assertEquals(2, f.pockets().size());
    assertEquals(disk * 7, f.pockets().get(0).volumeMm3(), 1e-6);
    assertEquals(disk * 6, f.pockets().get(1).volumeMm3(), 1e-6);
    // upside down the ring's foot is one level roof
    assertEquals(1, Filling.peaks(cavity, Vec3.Z.negate(), 0.5).size());
  }

  @Test
  void aHollowFromBelowBelongsToTheBodyAroundIt() {
    // a dome over a hollow with a pillar in it: level by level the hollow is no air of its own, and
    // the pillar is one, 18 mm high over the floor at 2, until the level reaches the floor
    TriMesh dome = less(box(-30, -30, 0, 30, 30, 40), box(-20, -20, 2, 20, 20, 30));
    TriMesh cavity = union(dome, box(-3, -3, 1, 3, 3, 20));
    assertEquals(2, Filling.peaks(cavity, Vec3.Z, 0.5).size());
    double[] parts = Filling.partsAbove(cavity, Vec3.Z, 10);
    double shell = 60 * 60 * 30 - 40 * 40 * 20;
    assertEquals(2, parts.length);
    assertEquals(shell, Math.max(parts[0], parts[1]), 1e-6);
    assertEquals(36 * 10, Math.min(parts[0], parts[1]), 1e-6);
  }

  @Test
  void channelsThatTouchTheCastingLetItsAirOut() {
    // two humps, a riser on each; the risers are bodies of their own that stand on the casting
    TriMesh casting =
        union(box(0, 0, 0, 60, 20, 10), box(5, 5, 9, 15, 15, 30), box(40, 5, 9, 50, 15, 25));
    TriMesh block = box(-10, -10, -10, 70, 30, 50);
    TriMesh gate = Primitives.frustum(3, 30, 4, 50, 24).translated(new Vec3(10, 10, 0));
    TriMesh vent = Primitives.frustum(1, 25, 1, 50, 12).translated(new Vec3(45, 10, 0));
    Filling one = Filling.of(Cavity.of(casting, gate, block), Vec3.Z, ALL);
    assertEquals(1500, one.trappedMm3(), 1e-6);
    assertEquals(50, one.mouthMm(), 1e-9);
    assertEquals(30, one.topMm(), 1e-9);
    assertEquals(2, one.peaks());
    TriMesh both = union(gate, vent);
    Filling two = Filling.of(Cavity.of(casting, both, block), Vec3.Z, ALL);
    assertEquals(0, two.trappedMm3(), 1e-9);
    assertEquals(casting.volume() + both.volume(), two.curve().full(), 1e-6);
    // a vent that joins 4 mm below the hump's roof leaves what is above its own roof, at z = 22
    TriMesh side = union(box(50, 9, 20, 60, 11, 22), box(58, 9, 20, 60, 11, 50));
    Filling low = Filling.of(Cavity.of(casting, union(gate, side), block), Vec3.Z, ALL);
    assertEquals(1, low.pockets().size());
    assertEquals(10 * 10 * 3, low.pockets().get(0).volumeMm3(), 1e-6);
    // a vent that dips before it rises counts as shut by the liquid in its dip: the hump's air
    // stays from z = 10 up, and so does the vent's own on that side of the dip
    TriMesh dip =
        union(
            box(50, 9, 20, 66, 11, 22),
            box(64, 9, 3, 66, 11, 21),
            box(64, 9, 3, 69, 11, 5),
            box(67, 9, 3, 69, 11, 50));
    Filling trap = Filling.of(Cavity.of(casting, union(gate, dip), block), Vec3.Z, ALL);
    double own = 16 * 2 * 2 + 2 * 2 * 10;
    assertEquals(1500 + own, trap.trappedMm3(), 1e-6);
  }

  @Test
  void aPersonCanStopTheSweep() {
    TriMesh ball = Primitives.sphere(20, 96);
    Cavity cavity = openAt(ball, Vec3.Z, 20);
    for (double from : new double[] {0, 0.3, 0.6}) {
      List<Double> told = new ArrayList<>();
      Progress stop =
          (stage, share) -> {
            told.add(share);
            if (share >= from) {
              throw new Progress.CancelledException();
            }
          };
      assertThrows(Progress.CancelledException.class, () -> Filling.of(cavity, Vec3.Z, ALL, stop));
      assertTrue(told.get(told.size() - 1) < from + 0.3, told + "");
    }
  }

  @Test
  void aTiltLiftsTheAirOutOfALevelRoofWithItsVentAtTheEdge() {
    // a plate with a vent in one corner of its roof: level, all air leaves; tilted the wrong way a
    // wedge stays
    TriMesh casting = box(0, 0, 0, 60, 20, 10);
    TriMesh block = box(-5, -5, -5, 65, 25, 30);
    TriMesh vent = box(56, 0, 10, 60, 20, 30);
    Cavity cavity = Cavity.of(casting, vent, block);
    assertEquals(0, Filling.of(cavity, Vec3.Z, ALL).trappedMm3(), 1e-9);
    Filling right = Filling.of(cavity, new Vec3(0.1, 0, 1), ALL);
    assertEquals(0, right.trappedMm3(), 1e-6);
    // slope 1:10, the vent's near edge at x = 56: a triangle 56 long and 5.6 high at x = 0
    Filling wrong = Filling.of(cavity, new Vec3(-0.1, 0, 1), ALL);
    assertEquals(56 * 5.6 / 2 * 20, wrong.trappedMm3(), 1e-6);
  }

  /** A sphere with its radius moved at random: star-shaped, so its mesh stays embedded. */
  private static TriMesh rock(Random random, double rough) {
    TriMesh m = Shapes.sphere(20, 14);
    double[] xyz = m.xyz().clone();
    for (int i = 0; i < xyz.length; i += 3) {
      double s = 1 + rough * (random.nextDouble() - 0.5);
      for (int k = 0; k < 3; k++) {
        xyz[i + k] *= s;
      }
    }
    return new TriMesh(xyz, m.tri());
  }

  private static Vec3 direction(Random random) {
    return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14})
  void ventCountByBruteForce(long seed) {
    // every vertex above all its neighbors with the solid below it needs a vent of its own; whether
    // the solid lies above is asked of the winding number a little above the vertex
    Random random = new Random(seed);
    for (int round = 0; round < 6; round++) {
      TriMesh rock = rock(random, 0.6);
      Vec3 up = direction(random);
      int brute = 0;
      for (int v = 0; v < rock.vertexCount(); v++) {
        boolean highest = true;
        double step = Double.POSITIVE_INFINITY;
        for (int i = 0; i < rock.tri().length; i++) {
          if (rock.tri()[i] == v) {
            int f = i / 3;
            for (int k = 0; k < 3; k++) {
              int w = rock.tri()[3 * f + k];
              if (w != v) {
                Vec3 d = rock.vertex(w).minus(rock.vertex(v));
                highest &= d.dot(up) < 0;
                step = Math.min(step, d.length());
              }
            }
          }
        }
        if (highest && Math.abs(winding(rock, rock.vertex(v).plus(up.times(1e-4 * step)))) < 0.5) {
          brute++;
        }
      }
      assertEquals(brute, Filling.peaks(rock, up, 0).size(), "seed " + seed + " round " + round);
      assertTrue(brute >= 1);
    }
  }

  /** Solid angle of a closed mesh over 4π, after van Oosterom and Strackee 1983. */
  private static double winding(TriMesh m, Vec3 p) {
    double sum = 0;
    for (int f = 0; f < m.triangleCount(); f++) {
      Vec3 a = m.vertex(m.tri()[3 * f]).minus(p);
      Vec3 b = m.vertex(m.tri()[3 * f + 1]).minus(p);
      Vec3 c = m.vertex(m.tri()[3 * f + 2]).minus(p);
      double la = a.length();
      double lb = b.length();
      double lc = c.length();
      double under = la * lb * lc + a.dot(b) * lc + b.dot(c) * la + c.dot(a) * lb;
      sum += 2 * Math.atan2(a.dot(b.cross(c)), under);
    }
    return sum / (4 * Math.PI);
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23, 24})
  void partsAboveALevelAreWhatTheKernelCutsOff(long seed) {
    // rocks with bores and hollows, cut by the solid kernel at a level and taken apart
    Random random = new Random(seed);
    try (SolidKernel kernel = new ManifoldKernel()) {
      for (int round = 0; round < 5; round++) {
        TriMesh rock = rock(random, 0.9);
        TriMesh bore = Primitives.frustum(5, -40, 5, 10 * random.nextDouble(), 12);
        TriMesh torus = Shapes.torus(14, 4, 20, 8).translated(new Vec3(6, 2, 1));
        Solid body =
            kernel.difference(
                "body",
                kernel.union(
                    "both", List.of(kernel.solid("rock", rock), kernel.solid("ring", torus))),
                List.of(kernel.solid("bore", bore.translated(new Vec3(2, 1, 0)))));
        double level = 24 * (random.nextDouble() - 0.5);
        Solid high =
            kernel.intersection(
                "high", body, kernel.solid("upper", box(-90, -90, level, 90, 90, 90)));
        double[] cut =
            kernel.decompose(high).stream().mapToDouble(Solid::volume).sorted().toArray();
        double[] swept = Filling.partsAbove(body.mesh(), Vec3.Z, level);
        Arrays.sort(swept);
        assertEquals(cut.length, swept.length, "seed " + seed + " round " + round);
        for (int i = 0; i < cut.length; i++) {
          assertEquals(cut[i], swept[i], 1e-3 + 1e-6 * cut[i], "seed " + seed + " " + round);
        }
      }
    }
  }
}
