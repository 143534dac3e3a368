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

  /** Space too small to matter: a cube of a millimeter, mm³. */
  public static final double ENOUGH = 1;

  /**
   * Plans and cuts side pieces.
   *
   * @param casting in the mold frame, main pieces leave along +z and -z
   * @param box of the block
   * @param most side pieces at most
   */
  public static SidePieces of(
      TriMesh casting,
      BlockBox box,
      int most,
      PartingOptions options,
      SolidKernel kernel,
      Progress progress) {
    double cell = Math.max(LEAST_CELL, CELL_SHARE * casting.bounds().longestSide());
    TrappedSpace space = TrappedSpace.of(casting, cell, options.releaseMm());
    double volume = space.size() * space.pointMm3();
    List<SidePiece> pieces = new ArrayList<>();
    boolean[] done = new boolean[space.size()];
    int left = done.length;
    int tries = 0;
    if (left > 0 && most > 0) {
      SidePulls pulls = new SidePulls(casting, space, progress);
      PlugCutter cutter = new PlugCutter(casting, box, options, kernel, progress);
      while (left * space.pointMm3() > ENOUGH && pieces.size() < most && tries < MOST_TRIES) {
        SidePulls.Choice choice = pulls.best(done);
        if (choice == null) {
          break;
        }
        int before = left;
        for (Solid body : cutter.cut(choice, space)) {
          boolean[] in = space.inside(body.mesh());
          int freed = 0;
          for (int i = 0; i < in.length; i++) {
            freed += in[i] && !done[i] ? 1 : 0;
            done[i] |= in[i];
          }
          left -= freed;
          pieces.add(new SidePiece(choice.pull(), body, freed * space.pointMm3()));
        }
        pulls.learn(choice, done);
        tries += left == before ? 1 : 0;
      }
    }
    return new SidePieces(List.copyOf(pieces), volume, left * space.pointMm3());
  }
}
