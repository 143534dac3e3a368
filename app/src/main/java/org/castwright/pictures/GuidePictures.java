package org.castwright.pictures;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Pictures that guide hands: the mold closed, opened, step by step, and as it stands for the pour.
 * Numbers and arrows come apart from the pixels, so that a printed sheet can set them sharp.
 */
public final class GuidePictures {

  /** A gate or vent: where it comes out, mm, and what it is called. */
  public record Mouth(Vec3 at, String label, boolean gate) {}

  /** Arrows reach this far from what they name, as a share of the mold's diagonal. */
  private static final double REACH = 0.14;

  /** Arrows along a pull must come out from before their piece. */
  private static final double FAR = 0.3;

  /** Room for the tip of an arrow and for what is written at its end, in lengths of arrows. */
  private static final double TIP = 1.18;

  private static final double WORD = 1.7;

  /** Numbers in a column stand this far apart, as a share of the picture's height. */
  private static final double APART = 0.09;

  /** In the pour picture the pieces are this sheer: casting and channels must show. */
  private static final double VEIL = 0.2;

  private static final int CAST = Rgb.of(204, 121, 87);

  private final MoldPictures mold;
  private final PictureOptions options;

  public GuidePictures(MoldPictures mold, PictureOptions options) {
    this.mold = mold;
    this.options = options;
  }

  /** The closed mold, each piece named by its number. */
  public Guide closed() {
    List<Item> items = new ArrayList<>();
    items.add(Item.of(mold.casting(), MoldPictures.CASTING));
    for (int i = 0; i < mold.pieces().size(); i++) {
      items.add(item(i).translucent(MoldPictures.SHEER));
    }
    View view = mold.closedView();
    Vec3 right = view.looking().cross(view.up()).unit();
    double reach = REACH * diagonal();
    List<Vec3> corners = mold.pieces().stream().map(p -> farthest(p.mesh(), right)).toList();
    List<Vec3> ends = corners.stream().map(c -> c.plus(right.times(reach))).toList();
    Scene scene = Scene.of("", items).withLines(mold.seam());
    List<Vec3> around = corners.stream().map(c -> c.plus(right.times(WORD * reach))).toList();
    Shot shot = Shot.take(scene, view, options, around);
    double column = ends.stream().mapToDouble(e -> shot.at(e)[0]).max().orElse(0);
    double[] heights = corners.stream().mapToDouble(c -> shot.at(c)[1]).toArray();
    spread(heights, APART * options.height(), APART * options.height() / 2);
    List<Pointer> pointers = new ArrayList<>();
    for (int i = 0; i < ends.size(); i++) {
      double[] from = shot.at(corners.get(i));
      int rgb = MoldPictures.color(i);
      pointers.add(
          new Pointer(from[0], from[1], column, heights[i], number(i), rgb, Pointer.Kind.NAMES));
    }
    return new Guide(shot.image(), pointers);
  }

  /** All pieces moved along their pulls, with arrows numbered in the order they leave. */
  public Guide opened() {
    MoldPictures.Opened opened = mold.opened();
    List<Item> items = new ArrayList<>();
    items.add(Item.of(mold.casting(), MoldPictures.CASTING));
    List<Vec3> ends = new ArrayList<>();
    List<Vec3> around = new ArrayList<>();
    double reach = FAR * diagonal();
    for (int i = 0; i < mold.pieces().size(); i++) {
      MoldPictures.Piece p = mold.pieces().get(i);
      Vec3 move = p.pull().unit().times(opened.distances()[i]);
      items.add(item(i).moved(move));
      Vec3 from = face(p).plus(move);
      ends.add(from.plus(p.pull().unit().times(reach)));
      around.add(from.plus(p.pull().unit().times(TIP * reach)));
    }
    Scene scene = Scene.of("", items).withLines(mold.seam());
    Shot shot = Shot.take(scene, opened.view(), options, around);
    List<Pointer> pointers = new ArrayList<>();
    for (int i = 0; i < ends.size(); i++) {
      Vec3 from = ends.get(i).minus(mold.pieces().get(i).pull().unit().times(reach));
      pointers.add(pointer(shot, from, ends.get(i), number(i), i, Pointer.Kind.MOVES));
    }
    return new Guide(shot.image(), pointers);
  }

  /** Step {@code index} of the opening: earlier pieces are gone, this one is on its way. */
  public Guide step(int index) {
    MoldPictures.Opened opened = mold.opened();
    MoldPictures.Piece p = mold.pieces().get(index);
    Vec3 move = p.pull().unit().times(opened.distances()[index]);
    List<Item> items = new ArrayList<>();
    items.add(Item.of(mold.casting(), MoldPictures.CASTING));
    for (int i = index + 1; i < mold.pieces().size(); i++) {
      items.add(item(i));
    }
    items.add(item(index).moved(move));
    Vec3 from = face(p).plus(move);
    Vec3 reach = p.pull().unit().times(FAR * diagonal());
    Vec3 to = from.plus(reach);
    Scene scene = Scene.of("", items).withLines(mold.seam());
    Shot shot = Shot.take(scene, opened.view(), options, List.of(from.plus(reach.times(TIP))));
    return new Guide(
        shot.image(), List.of(pointer(shot, from, to, number(index), index, Pointer.Kind.MOVES)));
  }

  /**
   * The closed mold as it stands while it is filled.
   *
   * @param channels gate and vents as cast material fills them; may be empty
   * @param up against gravity
   */
  public Guide pour(TriMesh channels, List<Mouth> mouths, Vec3 up) {
    List<Item> items = new ArrayList<>();
    items.add(Item.of(mold.casting(), MoldPictures.CASTING));
    if (!channels.isEmpty()) {
      items.add(Item.of(channels, CAST));
    }
    for (int i = 0; i < mold.pieces().size(); i++) {
      items.add(item(i).translucent(VEIL));
    }
    double reach = REACH * diagonal();
    List<Vec3> ends = mouths.stream().map(m -> m.at().plus(up.times(reach))).toList();
    List<Vec3> around = mouths.stream().map(m -> m.at().plus(up.times(WORD * reach))).toList();
    Shot shot = Shot.take(Scene.of("", items), pourView(up), options, around);
    List<Pointer> pointers = new ArrayList<>();
    for (int i = 0; i < mouths.size(); i++) {
      Mouth m = mouths.get(i);
      int rgb = m.gate() ? OkabeIto.BLUE.rgb() : OkabeIto.BLUISH_GREEN.rgb();
      double[] low = shot.at(m.at());
      double[] high = shot.at(ends.get(i));
      pointers.add(
          m.gate()
              ? new Pointer(high[0], high[1], low[0], low[1], m.label(), rgb, Pointer.Kind.MOVES)
              : new Pointer(low[0], low[1], high[0], high[1], m.label(), rgb, Pointer.Kind.LEAVES));
    }
    return new Guide(shot.image(), pointers);
  }

  /** Casting and channels in the colors of when the rising liquid reaches them. */
  public BufferedImage fill(
      TriMesh channels, Vec3 up, FillPicture.Course course, List<FillPicture.Air> air) {
    return FillPicture.draw(mold.casting(), channels, up, course, air, pourView(up), options);
  }

  /** From the front and a little from above; the front is the first main piece if it stands. */
  private View pourView(Vec3 up) {
    Vec3 pull = mold.pieces().get(mold.pieces().size() - 1).pull().unit().negate();
    Vec3 front = pull.minus(up.times(pull.dot(up)));
    // a mold that lies has no front: any side will do
    front = front.length() > 0.5 ? front.unit() : Math.abs(up.x()) < 0.5 ? Vec3.X : Vec3.Y;
    Vec3 side = up.cross(front);
    Vec3 looking = front.negate().plus(side.times(0.45)).plus(up.times(-0.38));
    return View.perspective(looking, up);
  }

  /** Moves places down, and the lot back up, until no two are closer than {@code gap}. */
  private static void spread(double[] places, double gap, double top) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < places.length; i++) {
      order.add(i);
    }
    order.sort(Comparator.comparingDouble(i -> places[i]));
    double pushed = 0;
    for (int k = 1; k < order.size(); k++) {
      double least = places[order.get(k - 1)] + gap;
      double move = least - places[order.get(k)];
      if (move > 0) {
        places[order.get(k)] = least;
        pushed = Math.max(pushed, move);
      }
    }
    double back = Math.max(0, Math.min(pushed / 2, places[order.get(0)] - top));
    for (int i = 0; i < places.length; i++) {
      places[i] -= back;
    }
  }

  /** The vertex that lies farthest in a direction. */
  private static Vec3 farthest(TriMesh mesh, Vec3 direction) {
    Vec3 best = mesh.vertex(0);
    for (int i = 1; i < mesh.vertexCount(); i++) {
      Vec3 v = mesh.vertex(i);
      best = v.dot(direction) > best.dot(direction) ? v : best;
    }
    return best;
  }

  private Item item(int index) {
    return Item.of(mold.pieces().get(index).mesh(), MoldPictures.color(index));
  }

  private static String number(int index) {
    return Integer.toString(index + 1);
  }

  private double diagonal() {
    return mold.pieces().stream().mapToDouble(p -> p.mesh().bounds().diagonal()).max().orElse(0);
  }

  /** The middle of the side of a piece that goes ahead when it leaves. */
  private static Vec3 face(MoldPictures.Piece p) {
    Box3 b = p.mesh().bounds();
    Vec3 d = p.pull().unit();
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < p.mesh().vertexCount(); i++) {
      most = Math.max(most, p.mesh().vertex(i).dot(d));
    }
    return b.center().plus(d.times(most - b.center().dot(d)));
  }

  private static Pointer pointer(
      Shot shot, Vec3 from, Vec3 to, String label, int piece, Pointer.Kind kind) {
    double[] a = shot.at(from);
    double[] b = shot.at(to);
    return new Pointer(a[0], a[1], b[0], b[1], label, MoldPictures.color(piece), kind);
  }
}
