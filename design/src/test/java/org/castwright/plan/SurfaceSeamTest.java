package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.Channel.Station;
import org.castwright.seams.Mark;
import org.castwright.seams.Region;
import org.castwright.seams.Wish;
import org.castwright.seams.Wishes;
import org.junit.jupiter.api.Test;

/** The length of seams on a casting, against what can be told by hand. */
class SurfaceSeamTest {

  private static final TriMesh BOX = Primitives.box(new Vec3(-20, -10, -5), new Vec3(20, 10, 5));

  /** Halves that meet in the plane x = 3. */
  private static int half(Vec3 p) {
    return p.x() > 3 ? 0 : 1;
  }

  private static SeamMeasure measure(Wish... wishes) {
    return SurfaceSeam.of(BOX, SurfaceSeamTest::half, p -> false, new Wishes(List.of(wishes)));
  }

  @Test
  void aPlaneThroughABox() {
    SeamMeasure m = measure();
    assertEquals(60, m.lengthMm(), 0.05);
    assertEquals(m.lengthMm(), m.visibleMm());
    assertEquals(0, m.showShare());
  }

  @Test
  void threePiecesMeetInAPoint() {
    SeamMeasure m = SurfaceSeam.of(BOX, p -> p.z() < 0 ? 2 : half(p), p -> false, Wishes.NONE);
    // round the belt, and over the top from belt to belt; the small triangles where three meet are
    // a millimeter wide
    assertEquals(120 + 30, m.lengthMm(), 1);
  }

  @Test
  void marksAreMeasuredWhereTheyAre() {
    Region top = new Region.Box(new Vec3(-20, -10, 4.9), new Vec3(20, 10, 5));
    Region right = new Region.Box(new Vec3(-20, 0, 4.9), new Vec3(20, 10, 5));
    SeamMeasure hidden = measure(Wish.of(top, Mark.HIDE));
    assertEquals(40, hidden.visibleMm(), 0.3);
    // of show and hide the later holds; no seam is told apart
    SeamMeasure both =
        measure(Wish.of(top, Mark.HIDE), Wish.of(right, Mark.SHOW), Wish.of(right, Mark.NO_SEAM));
    assertEquals(50, both.visibleMm(), 0.3);
    assertEquals(10, both.showMm(), 0.3);
    assertEquals(1 / 6.0, both.showShare(), 0.005);
    assertEquals(10, both.noSeamMm(), 0.3);
  }

  @Test
  void paintedFacetsAndPieces() {
    // the top's two facets
    int[] up =
        java.util.stream.IntStream.range(0, BOX.triangleCount())
            .filter(f -> BOX.areaVector(f).z() > 1)
            .toArray();
    Region top = new Region.Painted(up);
    assertEquals(40, measure(Wish.of(top, Mark.HIDE)).visibleMm(), 0.05);
    // 17 of 40 mm belong to piece 1; surface is told in triangles of 1 mm
    assertEquals(17 * 20, measure(Wish.piece(top, 2)).missedMm2(), 10);
    assertEquals(23 * 20, measure(Wish.piece(top, 1)).missedMm2(), 10);
  }

  @Test
  void gateAndVentsAreLeftOut() {
    Vec3 foot = new Vec3(3, 9, 0);
    List<Station> stations =
        List.of(new Station(foot, 2.7, 0), new Station(foot.plus(new Vec3(0, 20, 0)), 2.7, 0));
    Channel gate =
        new Channel(
            "gate",
            Channel.Kind.GATE,
            Channel.Course.UP,
            stations,
            foot,
            foot.plus(new Vec3(0, 20, 0)),
            5.4,
            5.4);
    UprightCover covered = new UprightCover(List.of(gate));
    SeamMeasure m = SurfaceSeam.of(BOX, SurfaceSeamTest::half, covered, Wishes.NONE);
    // 6 mm of the 10 across the top edge
    assertEquals(54, m.lengthMm(), 1.2);
    double[] line = {3, 15, 0, 3, 12, 0, 3, 10, 2.9, 3, 10, 3.1, 3, 10, 5, 3, 0, 5};
    List<double[]> clipped = covered.clip(List.of(line));
    assertEquals(1, clipped.size());
    assertEquals(9, clipped.get(0).length);
    assertEquals(3.1, clipped.get(0)[2]);
  }
}
