package org.castwright.pictures;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * The pictures of one mold. Every method writes one PNG file and returns its name. The pull of the
 * first piece points up in views of the whole mold; pieces are colored by their index.
 */
public final class MoldPictures {

  /** The casting, wherever it has no numbers or pieces on it: a gray-blue. */
  static final int CASTING = Rgb.of(174, 187, 200);

  /** A piece of the mold and the direction it is taken off in. */
  public record Piece(String name, TriMesh mesh, Vec3 pull) {}

  /** Facets of the casting that hold it in the mold, with a few words such as their size. */
  @SuppressWarnings("ArrayRecordComponent") // patches are drawn, never compared
  public record CaughtPatch(int[] facets, String label) {}

  /** Space of the mold that stays caught: the facets round it, its middle, and its size. */
  @SuppressWarnings("ArrayRecordComponent") // spaces are drawn, never compared
  public record Space(int[] facets, Vec3 center, String label) {}

  static final double SHEER = 0.36;

  /** How much of its color a casting keeps that is looked through. */
  private static final double GLASS = 0.22;

  private static final double SEAM_WIDTH = 3;

  /** Free space between casting and moved piece, as a share of the casting's diagonal. */
  private static final double GAP = 0.18;

  /** The widest draft on the scale, degrees; above it walls release alike. */
  private static final double MOST_DRAFT = 45;

  /** Two views side by side need this share of the height of one. */
  private static final double PAIR_HEIGHT = 0.72;

  /** How far the eye stands above a closed and an opened mold: tangents of the angle, about. */
  private static final double HIGH = 0.52;

  private static final double LOW = 0.34;

  private final TriMesh casting;
  private final List<Piece> pieces;
  private final List<Polyline> seam;
  private final Frame frame;
  private final PictureOptions options;

  /**
   * Takes the closed mold as it stands.
   *
   * @param seam lines where pieces part on the casting, packed coordinates, mm; may be empty
   * @throws IllegalArgumentException if there is no piece
   */
  public MoldPictures(
      TriMesh casting, List<Piece> pieces, List<double[]> seam, PictureOptions options) {
    if (pieces.isEmpty()) {
      throw new IllegalArgumentException("a mold has at least one piece");
    }
    this.casting = casting;
    this.pieces = List.copyOf(pieces);
    this.seam = seam.stream().map(xyz -> new Polyline(xyz, Band.INK, SEAM_WIDTH)).toList();
    this.frame = Frame.along(pieces.get(0).pull());
    this.options = options;
  }

  /** The closed mold; its pieces let the casting and the seam be seen. */
  public String closed(Path file) throws IOException {
    List<Item> items = new ArrayList<>();
    items.add(Item.of(casting, CASTING));
    for (int i = 0; i < pieces.size(); i++) {
      items.add(Item.of(pieces.get(i).mesh(), color(i)).translucent(SHEER));
    }
    Scene scene =
        Scene.of("Closed mold: " + count() + " around the casting", items)
            .withLines(seam)
            .withLegend(legend());
    return Picture.write(Picture.draw(scene, closedView(), options), file);
  }

  /**
   * The pieces moved apart along their pulls, the casting between them; more than two stand in the
   * order in which they leave, the first farthest, and carry their numbers.
   */
  public String opened(Path file) throws IOException {
    Opened opened = opened();
    boolean many = pieces.size() > 2;
    List<Item> items = new ArrayList<>();
    List<Mark> numbers = new ArrayList<>();
    items.add(Item.of(casting, CASTING));
    for (int i = 0; i < pieces.size(); i++) {
      Piece p = pieces.get(i);
      Vec3 move = p.pull().unit().times(opened.distances()[i]);
      items.add(Item.of(p.mesh(), color(i)).moved(move));
      Vec3 middle = p.mesh().bounds().center().plus(move);
      numbers.add(new Mark(middle, Integer.toString(i + 1), color(i)));
    }
    Scene scene =
        Scene.of("Opened mold: each piece moved along its pull", items)
            .withLines(seam)
            .withMarks(many ? numbers : List.of())
            .withLegend(legend());
    return Picture.write(Picture.draw(scene, opened.view(), options), file);
  }

  /** From where the opened mold is seen, and how far each piece stands off along its pull, mm. */
  @SuppressWarnings("ArrayRecordComponent") // used and dropped, never compared
  record Opened(View view, double[] distances) {}

  Opened opened() {
    double[] distances = pieces.stream().mapToDouble(this::clearance).toArray();
    if (pieces.size() <= 2) {
      return new Opened(fromAbove(LOW), distances);
    }
    List<Vec3> pulls = pieces.stream().map(p -> p.pull().unit()).toList();
    View view = View.perspective(Apart.looking(pulls, frame), frame.w());
    return new Opened(view, Apart.distances(casting, pieces, distances, view.looking(), view.up()));
  }

  TriMesh casting() {
    return casting;
  }

  List<Piece> pieces() {
    return pieces;
  }

  List<Polyline> seam() {
    return seam;
  }

  PictureOptions options() {
    return options;
  }

  View closedView() {
    return fromAbove(HIGH);
  }

  /** One piece seen from the side of the casting, into its cavity. */
  public String piece(int index, Path file) throws IOException {
    Piece p = pieces.get(index);
    Frame f = Frame.along(p.pull());
    Vec3 looking = f.w().plus(f.v().times(0.42)).plus(f.u().times(-0.18));
    Scene scene =
        Scene.of("Piece " + (index + 1) + ", " + p.name() + ": the cavity", List.of(item(index)))
            .withLegend(List.of(new Swatch(color(index), p.name())));
    return Picture.write(Picture.draw(scene, View.perspective(looking, f.v()), options), file);
  }

  private Item item(int index) {
    return Item.of(pieces.get(index).mesh(), color(index));
  }

  /**
   * The casting colored by draft, from above and from below.
   *
   * @param draftDegrees for each facet of the casting the angle between facet and pull, degrees;
   *     not a number where the facet is caught
   */
  public String draft(double[] draftDegrees, Path file) throws IOException {
    boolean caught = Arrays.stream(draftDegrees).anyMatch(Double::isNaN);
    ColorScale scale =
        new ColorScale(
            "draft, degrees", 0, MOST_DRAFT, caught ? "caught" : "", OkabeIto.VERMILLION.rgb());
    Scene scene = Scene.of("", List.of(Item.of(casting, new Paint.Mapped(draftDegrees, scale))));
    String range = String.format(Locale.ROOT, "least %.1f°", least(draftDegrees));
    String top = String.format(Locale.ROOT, "%.0f° and more in one color", MOST_DRAFT);
    return both(
        scene.captioned("Draft from the pull, upper side; " + range),
        scene.captioned("Lower side; " + top).withScale(scale),
        file);
  }

  private static double least(double[] draft) {
    return Arrays.stream(draft).filter(d -> !Double.isNaN(d)).min().orElse(0);
  }

  /**
   * The casting with its caught places marked, from above and from below.
   *
   * @param by whom they would be caught, for the caption; null where that goes without saying
   */
  public String caught(List<CaughtPatch> patches, String by, Path file) throws IOException {
    int[] colors = new int[casting.triangleCount()];
    Arrays.fill(colors, CASTING);
    List<Mark> upper = new ArrayList<>();
    List<Mark> lower = new ArrayList<>();
    for (CaughtPatch patch : patches) {
      Vec3 normal = Vec3.ZERO;
      for (int f : patch.facets()) {
        colors[f] = OkabeIto.VERMILLION.rgb();
        normal = normal.plus(casting.areaVector(f));
      }
      if (patch.facets().length > 0) {
        Mark mark = new Mark(middle(patch.facets()), patch.label(), OkabeIto.VERMILLION.rgb());
        (normal.dot(frame.w()) >= 0 ? upper : lower).add(mark);
      }
    }
    Scene scene =
        Scene.of("", List.of(Item.of(casting, new Paint.ByFacet(colors))))
            .withLegend(
                List.of(
                    new Swatch(CASTING, "free"), new Swatch(OkabeIto.VERMILLION.rgb(), "caught")));
    String found = patches.size() == 1 ? "1 caught place" : patches.size() + " caught places";
    String whose = by == null ? "" : " with " + by;
    return both(
        scene.captioned("Upper side; " + found + " in all" + whose).withMarks(upper),
        scene.captioned("Lower side").withMarks(lower),
        file);
  }

  /** Space that stays caught, seen through the casting, from above and from below. */
  public String spaces(List<Space> spaces, Path file) throws IOException {
    int color = OkabeIto.VERMILLION.rgb();
    List<Item> items = new ArrayList<>();
    List<Mark> marks = new ArrayList<>();
    for (Space s : spaces) {
      int[] tri = new int[3 * s.facets().length];
      for (int i = 0; i < tri.length; i++) {
        tri[i] = casting.tri()[3 * s.facets()[i / 3] + i % 3];
      }
      items.add(Item.of(new TriMesh(casting.xyz(), tri), color));
      marks.add(new Mark(s.center(), s.label(), color));
    }
    items.add(Item.of(casting, CASTING).translucent(GLASS));
    Scene scene =
        Scene.of("", items)
            .withMarks(marks)
            .withLegend(
                List.of(new Swatch(CASTING, "casting"), new Swatch(color, "space that stays")));
    return both(
        scene.captioned("Space that stays caught, seen through the casting from above"),
        scene.captioned("From below"),
        file);
  }

  /** The middle of that facet which lies closest to the middle of all. */
  private Vec3 middle(int[] facets) {
    Vec3 sum = Vec3.ZERO;
    for (int f : facets) {
      sum = sum.plus(center(f));
    }
    Vec3 mean = sum.times(1.0 / facets.length);
    Vec3 best = center(facets[0]);
    for (int f : facets) {
      Vec3 c = center(f);
      if (c.minus(mean).length() < best.minus(mean).length()) {
        best = c;
      }
    }
    return best;
  }

  private Vec3 center(int f) {
    int[] t = casting.tri();
    return casting
        .vertex(t[3 * f])
        .plus(casting.vertex(t[3 * f + 1]))
        .plus(casting.vertex(t[3 * f + 2]))
        .times(1.0 / 3);
  }

  /** Two views side by side; the second is wider by the room its scale bar takes. */
  private String both(Scene above, Scene below, Path file) throws IOException {
    int bar = below.scale().isPresent() ? Margins.SCALE_BAR - Margins.EDGE : 0;
    int first = (options.width() - bar) / 2;
    int height = (int) (PAIR_HEIGHT * options.height());
    Vec3 tilt = frame.v().times(0.5);
    View down = View.parallel(tilt.minus(frame.w()), frame.v());
    View up = View.parallel(tilt.plus(frame.w()), frame.v());
    BufferedImage left = Picture.draw(above, down, options.sized(first, height));
    BufferedImage right = Picture.draw(below, up, options.sized(options.width() - first, height));
    return Picture.write(Picture.beside(List.of(left, right)), file);
  }

  private View fromAbove(double height) {
    Vec3 looking = frame.u().times(0.42).plus(frame.v().times(0.9)).minus(frame.w().times(height));
    return View.perspective(looking, frame.w());
  }

  static int color(int index) {
    return OkabeIto.ofPiece(index).rgb();
  }

  private List<Swatch> legend() {
    List<Swatch> legend = new ArrayList<>();
    for (int i = 0; i < pieces.size(); i++) {
      legend.add(new Swatch(color(i), pieces.get(i).name()));
    }
    legend.add(new Swatch(CASTING, "casting"));
    if (!seam.isEmpty()) {
      legend.add(new Swatch(Band.INK, "seam"));
    }
    return legend;
  }

  private String count() {
    return pieces.size() == 1 ? "1 piece" : pieces.size() + " pieces";
  }

  /** How far a piece must move so that all of it is ahead of the casting, with a gap, mm. */
  private double clearance(Piece p) {
    Vec3 d = p.pull().unit();
    double ahead = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < casting.vertexCount(); i++) {
      ahead = Math.max(ahead, casting.vertex(i).dot(d));
    }
    double behind = Double.POSITIVE_INFINITY;
    for (int i = 0; i < p.mesh().vertexCount(); i++) {
      behind = Math.min(behind, p.mesh().vertex(i).dot(d));
    }
    return Math.max(0, ahead - behind) + GAP * casting.bounds().diagonal();
  }
}
