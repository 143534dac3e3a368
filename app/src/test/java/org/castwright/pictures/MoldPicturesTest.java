package org.castwright.pictures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A cube between two slabs: every picture shows what it is for. */
class MoldPicturesTest {

  private static final TriMesh CASTING = Shapes.cube(20);
  private static final MoldPictures.Piece UPPER =
      new MoldPictures.Piece("upper", slab(10, 20), Vec3.Z);
  private static final MoldPictures.Piece LOWER =
      new MoldPictures.Piece("lower", slab(-20, -10), Vec3.Z.negate());
  private static final double[] SEAM = {
    -10, -10, 10, 10, -10, 10, 10, 10, 10, -10, 10, 10, -10, -10, 10
  };

  @TempDir Path dir;

  private static TriMesh slab(double from, double to) {
    return Primitives.box(new Vec3(-30, -30, from), new Vec3(30, 30, to));
  }

  private static MoldPictures pictures() {
    PictureOptions small = PictureOptions.DEFAULT.sized(600, 450);
    return new MoldPictures(CASTING, List.of(UPPER, LOWER), List.of(SEAM), small);
  }

  @Test
  void closedMoldShowsTheCastingThroughItsPieces() throws IOException {
    assertEquals("closed.png", pictures().closed(dir.resolve("closed.png")));
    BufferedImage p = read("closed.png");
    assertTrue(count(p, Band.INK, 6) > 100, "no seam");
    assertTrue(count(p, OkabeIto.SKY_BLUE.rgb(), 6) < 600, "the upper piece is not translucent");
  }

  @Test
  void openedMoldShowsCastingAndPieces() throws IOException {
    pictures().opened(dir.resolve("opened.png"));
    BufferedImage p = read("opened.png");
    assertTrue(count(p, OkabeIto.SKY_BLUE.rgb(), 40) > 1000, "no upper piece");
    assertTrue(count(p, OkabeIto.ORANGE.rgb(), 40) > 1000, "no lower piece");
    assertTrue(count(p, MoldPictures.CASTING, 40) > 500, "no casting");
  }

  /** A cube between a lid and four sides, the last of which carries the floor. */
  private static List<MoldPictures.Piece> five() {
    return List.of(
        new MoldPictures.Piece("lid", slab(10, 20), Vec3.Z),
        new MoldPictures.Piece("right", block(10, -30, 30, 30), Vec3.X),
        new MoldPictures.Piece("left", block(-30, -30, -10, 30), new Vec3(-2, 0, 1)),
        new MoldPictures.Piece("back", block(-10, 10, 10, 30), Vec3.Y),
        new MoldPictures.Piece("front", block(-10, -30, 10, -10), Vec3.Y.negate()));
  }

  private static TriMesh block(double x, double y, double u, double v) {
    return Primitives.box(new Vec3(x, y, -10), new Vec3(u, v, 10));
  }

  @Test
  void manyPiecesStandClearOfEachOtherAndCarryNumbers() throws IOException {
    List<MoldPictures.Piece> pieces = five();
    PictureOptions small = PictureOptions.DEFAULT.sized(800, 600);
    new MoldPictures(CASTING, pieces, List.of(), small).opened(dir.resolve("opened.png"));
    BufferedImage p = read("opened.png");
    for (int i = 0; i < pieces.size(); i++) {
      int color = OkabeIto.ofPiece(i).rgb();
      assertTrue(count(p, color, 60) > 1000, "piece " + (i + 1) + " is not seen");
    }
    assertTrue(count(p, MoldPictures.CASTING, 40) > 500, "no casting");
  }

  @Test
  void outlinesOfManyPiecesDoNotMeet() {
    List<MoldPictures.Piece> pieces = five();
    Frame frame = Frame.along(Vec3.Z);
    List<Vec3> pulls = pieces.stream().map(p -> p.pull().unit()).toList();
    Vec3 looking = Apart.looking(pulls, frame);
    double[] clear = {25, 25, 25, 25, 25};
    double[] d = Apart.distances(CASTING, pieces, clear, looking, frame.w());
    List<double[]> boxes = new ArrayList<>();
    Vec3 right = looking.cross(frame.w()).unit();
    for (int i = 0; i < d.length; i++) {
      assertTrue(d[i] >= clear[i]);
      MoldPictures.Piece p = pieces.get(i);
      boxes.add(project(p.mesh().translated(p.pull().unit().times(d[i])), right, looking));
    }
    boxes.add(project(CASTING, right, looking));
    for (int i = 0; i < boxes.size(); i++) {
      for (int j = 0; j < i; j++) {
        assertTrue(parted(boxes.get(i), boxes.get(j)), "bodies " + i + " and " + j);
      }
    }
  }

  /** Packed places on the sheet. */
  private static double[] project(TriMesh mesh, Vec3 right, Vec3 looking) {
    Vec3 up = right.cross(looking);
    double[] out = new double[2 * mesh.vertexCount()];
    for (int i = 0; i < mesh.vertexCount(); i++) {
      out[2 * i] = mesh.vertex(i).dot(right);
      out[2 * i + 1] = mesh.vertex(i).dot(up);
    }
    return out;
  }

  /** Whether a line, one of 360 tried, has all places of either body on its own side. */
  private static boolean parted(double[] a, double[] b) {
    for (int k = 0; k < 360; k++) {
      double c = Math.cos(Math.toRadians(k));
      double s = Math.sin(Math.toRadians(k));
      double high = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < a.length; i += 2) {
        high = Math.max(high, c * a[i] + s * a[i + 1]);
      }
      double low = Double.POSITIVE_INFINITY;
      for (int i = 0; i < b.length; i += 2) {
        low = Math.min(low, c * b[i] + s * b[i + 1]);
      }
      if (high < low) {
        return true;
      }
    }
    return false;
  }

  @Test
  void eachPieceIsSeenFromItsCavity() throws IOException {
    // a small block stands on the side toward the casting: only from there its edges are seen
    TriMesh block = Primitives.box(new Vec3(-8, -8, 8), new Vec3(8, 8, 9));
    TriMesh mesh = joined(slab(10, 20), block);
    MoldPictures toward = single(new MoldPictures.Piece("upper", mesh, Vec3.Z));
    assertEquals("upper.png", toward.piece(0, dir.resolve("upper.png")));
    assertTrue(count(middle(read("upper.png")), Band.INK, 70) > 100, "the block is not seen");
    single(new MoldPictures.Piece("upper", mesh, Vec3.Z.negate()))
        .piece(0, dir.resolve("back.png"));
    assertEquals(0, count(middle(read("back.png")), Band.INK, 70));
  }

  private static MoldPictures single(MoldPictures.Piece piece) {
    PictureOptions small = PictureOptions.DEFAULT.sized(600, 450);
    return new MoldPictures(CASTING, List.of(piece), List.of(), small);
  }

  private static TriMesh joined(TriMesh a, TriMesh b) {
    double[] xyz = Arrays.copyOf(a.xyz(), a.xyz().length + b.xyz().length);
    System.arraycopy(b.xyz(), 0, xyz, a.xyz().length, b.xyz().length);
    int[] tri = Arrays.copyOf(a.tri(), a.tri().length + b.tri().length);
    for (int i = 0; i < b.tri().length; i++) {
      tri[a.tri().length + i] = b.tri()[i] + a.vertexCount();
    }
    return new TriMesh(xyz, tri);
  }

  private static BufferedImage middle(BufferedImage p) {
    return p.getSubimage(p.getWidth() / 2 - 80, p.getHeight() / 2 - 80, 160, 160);
  }

  @Test
  void draftShowsScaleAndCaughtColor() throws IOException {
    double[] draft = new double[12];
    Arrays.fill(draft, 90);
    draft[2] = Double.NaN; // half of the top
    pictures().draft(draft, dir.resolve("draft.png"));
    BufferedImage p = read("draft.png");
    assertEquals(600, p.getWidth());
    assertTrue(count(p, OkabeIto.VERMILLION.rgb(), 40) > 2000, "nothing caught");
    assertTrue(count(p, Cividis.rgb(1), 40) > 2000, "no steep draft");
    assertTrue(count(p, Cividis.rgb(0.5), 4) > 20, "no scale bar");
  }

  @Test
  void caughtPlacesAreMarkedOnTheSideTheyFace() throws IOException {
    MoldPictures.CaughtPatch top = new MoldPictures.CaughtPatch(new int[] {2, 3}, "400 mm²");
    pictures().caught(List.of(top), null, dir.resolve("caught.png"));
    BufferedImage p = read("caught.png");
    BufferedImage left = p.getSubimage(0, 60, 300, p.getHeight() - 60);
    BufferedImage right = p.getSubimage(300, 60, 300, p.getHeight() - 60);
    assertTrue(count(left, OkabeIto.VERMILLION.rgb(), 40) > 2000, "not marked");
    assertEquals(0, count(right, OkabeIto.VERMILLION.rgb(), 40));
  }

  @Test
  void aMoldHasPieces() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new MoldPictures(CASTING, List.of(), List.of(), PictureOptions.DEFAULT));
  }

  private BufferedImage read(String name) throws IOException {
    return ImageIO.read(dir.resolve(name).toFile());
  }

  /** Pixels whose channels all lie within {@code tolerance} of a color. */
  private static int count(BufferedImage p, int rgb, int tolerance) {
    int n = 0;
    for (int y = 0; y < p.getHeight(); y++) {
      for (int x = 0; x < p.getWidth(); x++) {
        int c = p.getRGB(x, y);
        int off =
            Math.max(
                Math.abs(Rgb.red(c) - Rgb.red(rgb)),
                Math.max(
                    Math.abs(Rgb.green(c) - Rgb.green(rgb)),
                    Math.abs(Rgb.blue(c) - Rgb.blue(rgb))));
        n += off <= tolerance ? 1 : 0;
      }
    }
    return n;
  }
}
