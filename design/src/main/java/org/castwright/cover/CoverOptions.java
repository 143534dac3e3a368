package org.castwright.cover;

import java.util.Collections;
import java.util.List;
import org.castwright.geom.Vec3;

/**
 * How to look for the fewest pulls.
 *
 * @param pieces how many pulls to give: 0 for the fewest that open, else this many (1 to {@link
 *     #MOST_PULLS})
 * @param fixed pulls that must be among the answer, unit vectors in the mesh's frame; may be empty
 * @param places for each fixed pull its place in the opening order, from 1, or 0 for any
 * @param spread axes spread over the half sphere, both senses of each on trial; 160 axes make 320
 *     directions about 11° apart, and what is chosen is then refined by small turns
 * @param cells cells along the longest side of the sampled box; 80 make cells of 1.25 mm on a model
 *     of 100 mm, so a pocket of 2 mm³ holds one
 * @param refine whether chosen directions are turned a little to lower what stays caught
 * @param tolerance what may stay caught
 * @param nodes most nodes of the exact search for one number of pulls; counted, not timed, so the
 *     answer is the same on any computer
 * @param threads how many threads to use; the answer does not depend on it
 */
public record CoverOptions(
    int pieces,
    List<Vec3> fixed,
    List<Integer> places,
    int spread,
    int cells,
    boolean refine,
    CoverTolerance tolerance,
    int nodes,
    int threads) {

  /** More pulls than this are not tried: nobody wants to put such a mold together. */
  public static final int MOST_PULLS = 8;

  /** The values argued for above, on all processors. */
  public static final CoverOptions DEFAULT =
      new CoverOptions(
          0,
          List.of(),
          List.of(),
          160,
          80,
          true,
          CoverTolerance.DEFAULT,
          1_000_000,
          Runtime.getRuntime().availableProcessors());

  /** Checks the ranges and makes the fixed pulls unit vectors. */
  public CoverOptions {
    if (pieces < 0 || pieces > MOST_PULLS) {
      throw new IllegalArgumentException("pieces must be 1 to " + MOST_PULLS + ", or 0 for auto");
    }
    if (fixed.size() > (pieces == 0 ? MOST_PULLS : pieces)) {
      throw new IllegalArgumentException("more pulls are given than there are pieces");
    }
    if (spread < 0 || cells < 8 || nodes < 1 || threads < 1) {
      throw new IllegalArgumentException("a cover needs 8 cells, one node and one thread at least");
    }
    if (places.size() != fixed.size()) {
      throw new IllegalArgumentException("each fixed pull needs a place in the order, or 0");
    }
    for (int place : places) {
      if (place < 0 || (place > 0 && Collections.frequency(places, place) > 1)) {
        throw new IllegalArgumentException("no two pulls can have one place in the order");
      }
    }
    places = List.copyOf(places);
    fixed = fixed.stream().map(Vec3::unit).toList();
  }

  /** The same with a number of pulls asked for, 0 for the fewest. */
  public CoverOptions withPieces(int n) {
    return new CoverOptions(n, fixed, places, spread, cells, refine, tolerance, nodes, threads);
  }

  /** The same with pulls that must be used, at any place in the opening order. */
  public CoverOptions withFixed(List<Vec3> pulls) {
    return withFixed(pulls, Collections.nCopies(pulls.size(), 0));
  }

  /** The same with pulls that must be used at their places in the opening order. */
  public CoverOptions withFixed(List<Vec3> pulls, List<Integer> at) {
    return new CoverOptions(pieces, pulls, at, spread, cells, refine, tolerance, nodes, threads);
  }

  /** The same with another spread of axes. */
  public CoverOptions withSpread(int axes) {
    return new CoverOptions(pieces, fixed, places, axes, cells, refine, tolerance, nodes, threads);
  }

  /** The same with another grid. */
  public CoverOptions withCells(int n) {
    return new CoverOptions(pieces, fixed, places, spread, n, refine, tolerance, nodes, threads);
  }

  /** The same with or without refining. */
  public CoverOptions withRefine(boolean on) {
    return new CoverOptions(pieces, fixed, places, spread, cells, on, tolerance, nodes, threads);
  }

  /** The same with another tolerance. */
  public CoverOptions withTolerance(CoverTolerance t) {
    return new CoverOptions(pieces, fixed, places, spread, cells, refine, t, nodes, threads);
  }

  /** The same with another limit of nodes. */
  public CoverOptions withNodes(int n) {
    return new CoverOptions(pieces, fixed, places, spread, cells, refine, tolerance, n, threads);
  }

  /** The same with another number of threads. */
  public CoverOptions withThreads(int n) {
    return new CoverOptions(pieces, fixed, places, spread, cells, refine, tolerance, nodes, n);
  }
}
