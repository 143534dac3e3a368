package org.castwright.pictures;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pixels whose color is known beforehand. */
class PictureTest {

  private static final int GRAY = Rgb.of(180, 180, 180);
  private static final int RED = Rgb.of(200, 30, 30);
  private static final View FACE_ON = View.parallel(Vec3.Z.negate(), Vec3.Y);
  private static final View OBLIQUE = View.perspective(new Vec3(1, 2, -1.3), Vec3.Z);
  private static final PictureOptions SMALL = PictureOptions.DEFAULT.sized(400, 300);

  @Test
  void aCubeSeenFaceOnCoversItsSquare() {
    BufferedImage p = Picture.draw(scene(Item.of(Shapes.cube(1), GRAY)), FACE_ON, SMALL);
    // no caption: the cube fills the free height between two edges
    int side = 300 - 2 * Margins.EDGE;
    int left = (400 - side) / 2;
    int covered = 0;
    for (int y = 0; y < 300; y++) {
      for (int x = 0; x < 400; x++) {
        if (rgb(p, x, y) != Band.PAPER) {
          covered++;
          assertTrue(x >= left - 1 && x <= left + side && y >= 35 && y <= 36 + side, x + ", " + y);
        }
      }
    }
    assertTrue(covered >= side * side, covered + " of " + side * side);
    assertTrue(covered <= (side + 2) * (side + 2), covered + " of " + side * side);
  }

  @Test
  void nearerHidesFarther() {
    Item front = Item.of(Shapes.cube(1), RED).moved(new Vec3(0, 0, 5));
    Item back = Item.of(Shapes.cube(2), GRAY);
    for (Scene s : List.of(scene(front, back), scene(back, front))) {
      int middle = rgb(Picture.draw(s, FACE_ON, SMALL), 200, 150);
      assertTrue(Rgb.red(middle) > 3 * Rgb.green(middle), "the red cube is hidden");
      View behind = View.parallel(Vec3.Z, Vec3.Y);
      int other = rgb(Picture.draw(s, behind, SMALL), 200, 150);
      assertEquals(Rgb.red(other), Rgb.green(other), "the gray cube is hidden");
    }
  }

  @Test
  void nearerIsAlsoDrawnLarger() {
    View near = View.perspective(Vec3.Z.negate(), Vec3.Y);
    Item a = Item.of(Shapes.cube(1), RED).moved(new Vec3(-2, 0, 2));
    Item b = Item.of(Shapes.cube(1), GRAY).moved(new Vec3(2, 0, -2));
    BufferedImage p = Picture.draw(scene(a, b), near, SMALL);
    int[] high = new int[2];
    for (int y = 0; y < 300; y++) {
      for (int side = 0; side < 2; side++) {
        boolean any = false;
        for (int x = 200 * side; x < 200 + 200 * side; x++) {
          any |= rgb(p, x, y) != Band.PAPER;
        }
        high[side] += any ? 1 : 0;
      }
    }
    assertTrue(high[0] > high[1] + 5, high[0] + " and " + high[1] + " rows");
  }

  @Test
  void translucentItemsTintWhatIsBehind() {
    Item inside = Item.of(Shapes.cube(1), GRAY);
    Item glass = Item.of(Shapes.cube(2), RED).translucent(0.4);
    int tinted = rgb(Picture.draw(scene(inside, glass), FACE_ON, SMALL), 200, 150);
    int bare = rgb(Picture.draw(scene(inside), FACE_ON, SMALL), 200, 150);
    int pure = rgb(Picture.draw(scene(Item.of(Shapes.cube(2), RED)), FACE_ON, SMALL), 200, 150);
    assertEquals(Rgb.mix(bare, pure, 0.4), tinted);
    Item behind = glass.moved(new Vec3(0, 0, -5));
    assertEquals(bare, rgb(Picture.draw(scene(inside, behind), FACE_ON, SMALL), 200, 150));
  }

  @Test
  void aCubeHasCreasesAndASphereHasNone() {
    BufferedImage cube = Picture.draw(scene(Item.of(Shapes.cube(1), GRAY)), OBLIQUE, SMALL);
    BufferedImage ball = Picture.draw(scene(Item.of(Shapes.sphere(1, 96), GRAY)), OBLIQUE, SMALL);
    // three creases of the cube meet near the middle of the sheet
    assertTrue(line(cube, 60) > 50, "no crease on the cube: " + line(cube, 60));
    assertTrue(line(ball, 60) < 4, "a line on the sphere: " + line(ball, 60));
    assertEquals(0, MeshForm.of(Shapes.sphere(1, 96), 30).creases().length);
    // four ints each: a cube has 12 edges, its six diagonals are flat
    assertEquals(4 * 12, MeshForm.of(Shapes.cube(1), 30).creases().length);
  }

  @Test
  void hiddenLinesStayHidden() {
    Polyline across = new Polyline(new double[] {-3, 0, 0, 3, 0, 0}, 0x0000ff, 3);
    Scene s =
        scene(
                Item.of(Shapes.cube(2), GRAY),
                Item.of(Shapes.cube(0.1), GRAY).moved(far(-3)),
                Item.of(Shapes.cube(0.1), GRAY).moved(far(3)))
            .withLines(List.of(across));
    BufferedImage p = Picture.draw(s, FACE_ON, SMALL);
    int blue = 0;
    int insideCube = 0;
    for (int x = 0; x < 400; x++) {
      if (rgb(p, x, 150) == 0x0000ff) {
        blue++;
        insideCube += Math.abs(x - 200) < 50 ? 1 : 0;
      }
    }
    assertTrue(blue > 150, "the line is not drawn: " + blue);
    assertEquals(0, insideCube);
  }

  private static Vec3 far(double x) {
    return new Vec3(x, 0, 0);
  }

  @Test
  void mappedFacetsShowTheEndsOfTheScale() {
    double[] values = new double[12];
    values[2] = 10; // facets 2 and 3 are the top of the box
    values[3] = 10;
    ColorScale scale = ColorScale.of("height, mm", 0, 10);
    Scene s = scene(Item.of(Shapes.cube(1), new Paint.Mapped(values, scale)));
    int top = rgb(Picture.draw(s, FACE_ON, SMALL), 180, 150);
    int under = rgb(Picture.draw(s, View.parallel(Vec3.Z, Vec3.Y), SMALL), 180, 150);
    assertTrue(Rgb.red(top) > 200 && Rgb.green(top) > 180 && Rgb.blue(top) < 90, "not yellow");
    assertTrue(Rgb.red(under) < 20 && Rgb.blue(under) > 50, "not blue");
  }

  @Test
  void bytesDoNotDependOnThreads(@TempDir Path dir) throws IOException {
    TriMesh torus = Shapes.torus(3, 1, 90, 40);
    Scene s =
        scene(
                Item.of(torus, GRAY),
                Item.of(Shapes.cube(3), RED).translucent(0.5),
                Item.of(Shapes.hourglass(2, 0.7, 5, 40), RED))
            .withLines(List.of(new Polyline(new double[] {-4, -4, 0, 4, 4, 1}, 0x0000ff, 5)))
            .withMarks(List.of(new Mark(new Vec3(3, 0, 1), "12.5 mm²", RED)))
            .withLegend(List.of(new Swatch(GRAY, "ring")))
            .withScale(ColorScale.of("draft, degrees", 0, 30))
            .captioned("A ring, a block and a glass");
    byte[] one = bytes(s, 1, dir);
    assertArrayEquals(one, bytes(s, 2, dir));
    assertArrayEquals(one, bytes(s, 5, dir));
    assertArrayEquals(one, bytes(s, 2, dir));
  }

  private static byte[] bytes(Scene s, int threads, Path dir) throws IOException {
    Path file = dir.resolve("p.png");
    assertEquals(
        "p.png", Picture.write(Picture.draw(s, OBLIQUE, SMALL.withThreads(threads)), file));
    return Files.readAllBytes(file);
  }

  @Test
  void neighborsLeaveNoGapAndNoDoubt() {
    // five hundred thin facets of one flat cap must not let the paper through
    TriMesh m = Shapes.cylinder(1, 0.5, 500);
    BufferedImage p = Picture.draw(scene(Item.of(m, GRAY)), FACE_ON, SMALL);
    int middle = rgb(p, 200, 150);
    for (int y = 100; y < 200; y++) {
      for (int x = 150; x < 250; x++) {
        assertEquals(middle, rgb(p, x, y), x + ", " + y);
      }
    }
    assertNotEquals(Band.PAPER, middle);
  }

  @Test
  void badInputIsNamed() {
    assertThrows(IllegalArgumentException.class, () -> Picture.draw(scene(), FACE_ON, SMALL));
    assertThrows(IllegalArgumentException.class, () -> View.parallel(Vec3.Z, Vec3.Z));
    assertThrows(
        IllegalArgumentException.class,
        () -> Item.of(Shapes.cube(1), new Paint.ByFacet(new int[3])));
  }

  private static Scene scene(Item... items) {
    return Scene.of("", List.of(items));
  }

  private static int rgb(BufferedImage p, int x, int y) {
    return p.getRGB(x, y) & 0xffffff;
  }

  /** By how much some pixel near the middle is darker than both of its sides. */
  private static int line(BufferedImage p, int reach) {
    int most = 0;
    for (int y = 150 - reach; y <= 150 + reach; y++) {
      for (int x = 200 - reach; x <= 200 + reach; x++) {
        int sides = Math.min(Rgb.red(rgb(p, x - 3, y)), Rgb.red(rgb(p, x + 3, y)));
        most = Math.max(most, sides - Rgb.red(rgb(p, x, y)));
      }
    }
    return most;
  }
}
