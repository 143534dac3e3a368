package org.castwright.pictures;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;

/** Casting and channels in the colors of when the rising liquid reaches them. */
public final class FillPicture {

  /** Bands between which the color changes. */
  private static final int BANDS = 12;

  /** A pocket is shown as a ball of its volume, but no smaller than this share of the mold. */
  private static final double LEAST_BALL = 0.012;

  private static final int BALL_SIDES = 24;

  private FillPicture() {}

  /**
   * When the liquid stands how high.
   *
   * @param title of the scale, with its unit
   * @param levelMm heights along up, rising
   * @param value of each, never falling
   */
  public record Course(String title, List<Double> levelMm, List<Double> value) {

    public Course {
      levelMm = List.copyOf(levelMm);
      value = List.copyOf(value);
      if (levelMm.size() != value.size() || levelMm.size() < 2) {
        throw new IllegalArgumentException("a course needs two heights or more, each with a value");
      }
    }

    private double most() {
      return value.get(value.size() - 1);
    }

    /** The height at which a value is reached. */
    private double levelAt(double wanted) {
      int i = 1;
      while (i < value.size() - 1 && value.get(i) < wanted) {
        i++;
      }
      double step = value.get(i) - value.get(i - 1);
      double t = step > 0 ? Math.max(0, Math.min(1, (wanted - value.get(i - 1)) / step)) : 1;
      return levelMm.get(i - 1) + t * (levelMm.get(i) - levelMm.get(i - 1));
    }
  }

  /** Air that stays: its highest place and its volume, mm³. */
  public record Air(Vec3 at, double volumeMm3, String label) {}

  /**
   * Draws it with a scale bar.
   *
   * @param channels may be empty
   * @param course where it does not rise, the liquid runs out as it comes in, and nothing is filled
   */
  static BufferedImage draw(
      TriMesh casting,
      TriMesh channels,
      Vec3 up,
      Course course,
      List<Air> air,
      View view,
      PictureOptions options) {
    if (course.most() <= 0) {
      return empty(casting, channels, view, options);
    }
    ColorScale scale = ColorScale.of(course.title(), 0, course.most());
    double[] levels = new double[BANDS - 1];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = course.levelAt(course.most() * (i + 1) / BANDS);
    }
    List<Item> items = new ArrayList<>();
    items.add(item(casting, up, levels, scale));
    if (!channels.isEmpty()) {
      items.add(item(channels, up, levels, scale));
    }
    List<Mark> marks = new ArrayList<>();
    double least = LEAST_BALL * casting.bounds().diagonal();
    for (Air a : air) {
      double r = Math.max(least, StrictMath.cbrt(3 * a.volumeMm3() / (4 * Math.PI)));
      items.add(
          Item.of(Primitives.sphere(r, BALL_SIDES).translated(a.at()), OkabeIto.VERMILLION.rgb()));
      marks.add(new Mark(a.at(), a.label(), OkabeIto.VERMILLION.rgb()));
    }
    Scene scene =
        Scene.of(
                air.isEmpty()
                    ? "The level rises: color tells when it comes by; no air stays"
                    : "The level rises: color tells when it comes by; balls are air that stays",
                items)
            .withMarks(marks)
            .withScale(scale);
    return Picture.draw(scene, view, options);
  }

  private static BufferedImage empty(
      TriMesh casting, TriMesh channels, View view, PictureOptions options) {
    List<Item> items = new ArrayList<>(List.of(Item.of(casting, OkabeIto.VERMILLION.rgb())));
    if (!channels.isEmpty()) {
      items.add(Item.of(channels, OkabeIto.VERMILLION.rgb()));
    }
    return Picture.draw(
        Scene.of("No level rises: the liquid runs out as it comes in", items), view, options);
  }

  private static Item item(TriMesh mesh, Vec3 up, double[] levels, ColorScale scale) {
    TriMesh cut = Terraces.of(mesh, up, levels);
    double[] values = new double[cut.triangleCount()];
    for (int f = 0; f < values.length; f++) {
      double h = 0;
      for (int k = 0; k < 3; k++) {
        h += cut.vertex(cut.tri()[3 * f + k]).dot(up) / 3;
      }
      int band = 0;
      while (band < levels.length && levels[band] < h) {
        band++;
      }
      values[f] = scale.high() * (band + 0.5) / (levels.length + 1);
    }
    return Item.of(cut, new Paint.Mapped(values, scale));
  }
}
