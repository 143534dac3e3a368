package org.castwright.mold;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * Takes the thin edges off the pieces of a mold: a small round hollow at each place, as such edges
 * are stoned off in the shop (common practice, no source). Cast material fills the hollows; the
 * nubs are scraped off the casting.
 */
public final class Relief {

  /** Radius of a hollow, mm: past what a common nozzle can print as an edge. */
  private static final double RADIUS = 0.5;

  private static final int SIDES = 12;

  /** Places nearer than this share a hollow, mm. */
  private static final double SAME = 0.2;

  private Relief() {}

  /**
   * Relieves a mold.
   *
   * @param places along thin edges, mold frame
   * @param mostMm3 what the hollows may hold outside the casting
   * @return the mold with hollows, or none where they would hold too much
   */
  public static Optional<Mold> of(
      Mold mold, List<Vec3> places, double mostMm3, SolidKernel kernel, Progress progress) {
    progress.at("solids", 0);
    List<Solid> balls = balls(apart(places), kernel);
    Solid hollows = kernel.union("hollows", balls);
    Solid casting = kernel.solid("casting", mold.casting());
    List<Solid> whole = new ArrayList<>();
    double volume = 0;
    for (Piece p : mold.pieces()) {
      Solid body = kernel.solid(p.name(), p.mesh());
      volume += kernel.overlap(hollows, Vec3.ZERO, body);
      whole.add(body);
    }
    if (volume > mostMm3) {
      return Optional.empty();
    }
    List<Piece> pieces = new ArrayList<>();
    for (int i = 0; i < whole.size(); i++) {
      progress.at("solids", (double) i / whole.size());
      Piece p = mold.pieces().get(i);
      Solid cut = kernel.difference(p.name(), whole.get(i), List.of(hollows));
      pieces.add(Piece.of(p.order(), p.pull(), Crumbs.swept(FloatGrid.snap(cut.mesh()))));
    }
    TriMesh channels = channels(mold, balls, casting, kernel);
    double nubs = channels.volume() - mold.volumes().channels();
    Volumes v = mold.volumes();
    List<String> warnings = new ArrayList<>(mold.warnings());
    warnings.add(
        String.format(
            Locale.ROOT,
            "At %d place(s) the seam would end in a thin edge: the pieces have hollows of %.0f mm"
                + " there, and the casting nubs of %.2g mm³ in all. Scrape them off.",
            balls.size(),
            2 * RADIUS,
            nubs));
    progress.at("solids", 1);
    return Optional.of(
        new Mold(
            mold.plan(),
            pieces,
            mold.casting(),
            channels,
            new Volumes(
                v.block(),
                v.casting(),
                channels.volume(),
                v.keyClearance(),
                v.features() + volume - nubs),
            warnings));
  }

  private static List<Vec3> apart(List<Vec3> places) {
    List<Vec3> out = new ArrayList<>();
    for (Vec3 p : places) {
      if (out.stream().noneMatch(q -> q.minus(p).length() < SAME)) {
        out.add(p);
      }
    }
    return out;
  }

  private static List<Solid> balls(List<Vec3> places, SolidKernel kernel) {
    TriMesh ball = Primitives.sphere(RADIUS, SIDES);
    List<Solid> out = new ArrayList<>();
    for (Vec3 p : places) {
      out.add(kernel.solid("hollow-" + (out.size() + 1), FloatGrid.snap(ball.translated(p))));
    }
    return out;
  }

  /** What cast material fills: gate and vents, and the hollows that open to it. */
  private static TriMesh channels(Mold mold, List<Solid> balls, Solid casting, SolidKernel kernel) {
    List<Solid> filled = new ArrayList<>();
    if (!mold.channels().isEmpty()) {
      filled.add(kernel.solid("channels", mold.channels()));
    }
    List<Solid> cast = new ArrayList<>(filled);
    cast.add(casting);
    for (Solid ball : balls) {
      if (cast.stream().anyMatch(c -> kernel.overlap(ball, Vec3.ZERO, c) > 0)) {
        filled.add(ball);
      }
    }
    if (filled.isEmpty()) {
      return mold.channels();
    }
    Solid block = kernel.solid("block", mold.plan().block().box().mesh());
    Solid inside =
        kernel.intersection("filled in the block", kernel.union("filled", filled), block);
    return FloatGrid.snap(kernel.difference("channels", inside, List.of(casting)).mesh());
  }
}
