package org.castwright.side;

import java.util.ArrayList;
import java.util.List;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.parting.PartingOptions;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.survey.TrappedSpace;

/**
 * The side pieces of a mold.
 *
 * @param pieces in the order they leave
 * @param trappedMm3 space that the main pieces shut in, mm³
 * @param leftMm3 the part of it that no side piece frees, mm³
 */
public record SidePieces(List<SidePiece> pieces, double trappedMm3, double leftMm3) {

  /**
   * Distance of the points of trapped space, as a share of the longest side, and its bounds, mm.
   */
  private static final double CELL_SHARE = 0.003;

  private static final double LEAST_CELL = 0.15;

  /** Pulls that may turn out to free nothing before the search ends. */
  private static final int MOST_TRIES = 6;

  /** So many times what may stay trapped is too much for certain. */
  private static final double BY_FAR = 2;

  /** A body of a plug that frees less is left to the main pieces, mm³. */
  private static final double LEAST_FREED = 0.2;

  /** Space too small to matter: a cube of a millimeter, mm³. */
  public static final double NOTHING = 1;

  /**
   * Plans and cuts side pieces.
   *
   * @param casting in the mold frame, main pieces leave along +z and -z
   * @param box of the block
   * @param most side pieces at most
   * @param enough space that may stay trapped, mm³
   * @param early whether the search need not begin where so many cannot free enough
   */
  public static SidePieces of(
      TriMesh casting,
      BlockBox box,
      int most,
      double enough,
      boolean early,
      PartingOptions options,
      SolidKernel kernel,
      Progress progress) {
    TrappedSpace space = space(casting, options.releaseMm());
    double volume = space.size() * space.pointMm3();
    if (space.size() == 0 || most == 0) {
      return new SidePieces(List.of(), volume, volume);
    }
    Search search = new Search(casting, box, space, options, kernel, progress);
    if (!early || !search.hopeless(most, enough)) {
      search.run(most, enough);
    }
    return new SidePieces(List.copyOf(search.pieces), volume, search.left * space.pointMm3());
  }

  /** Volume that a body shuts in along z from above and from below, mm³. */
  public static double trapped(TriMesh body, double releaseMm) {
    TrappedSpace space = space(body, releaseMm);
    return space.size() * space.pointMm3();
  }

  private static TrappedSpace space(TriMesh body, double releaseMm) {
    double cell = Math.max(LEAST_CELL, CELL_SHARE * body.bounds().longestSide());
    return TrappedSpace.of(body, cell, releaseMm);
  }

  /** Chooses pulls and cuts plugs in turn until nothing worth it is left. */
  private static final class Search {
    private final TrappedSpace space;
    private final boolean[] done;
    private final SidePulls pulls;
    private final PlugCutter cutter;
    private final List<SidePiece> pieces = new ArrayList<>();
    private int left;

    Search(
        TriMesh casting,
        BlockBox box,
        TrappedSpace space,
        PartingOptions options,
        SolidKernel kernel,
        Progress progress) {
      this.space = space;
      done = new boolean[space.size()];
      left = done.length;
      pulls = new SidePulls(casting, space, progress);
      cutter = new PlugCutter(casting, box, options, kernel, progress);
    }

    /** Whether so many plugs leave more than enough, by far: points are compared in part only. */
    boolean hopeless(int most, double enough) {
      return pulls.leftBy(most) * space.pointMm3() > BY_FAR * Math.max(NOTHING, enough);
    }

    void run(int most, double enough) {
      int tries = 0;
      while (left * space.pointMm3() > enough && pieces.size() < most && tries < MOST_TRIES) {
        SidePulls.Choice choice = pulls.best(done);
        if (choice == null) {
          return;
        }
        int before = pieces.size();
        cutter.cut(choice, space, body -> keep(choice, body));
        pulls.learn(choice, done);
        tries += pieces.size() == before ? 1 : 0;
      }
    }

    /** Keeps a body of a plug if it takes trapped space worth a piece. */
    private boolean keep(SidePulls.Choice choice, Solid body) {
      boolean[] in = space.inside(body.mesh());
      int freed = Freed.count(in, done);
      if (freed * space.pointMm3() < LEAST_FREED) {
        return false;
      }
      for (int i = 0; i < in.length; i++) {
        done[i] |= in[i];
      }
      left -= freed;
      pieces.add(new SidePiece(choice.pull(), body));
      return true;
    }
  }
}
