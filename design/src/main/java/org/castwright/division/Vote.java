package org.castwright.division;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.castwright.mesh.IntList;
import org.castwright.seams.Mark;

/** Which piece the cells of each patch that the maker marked go to. */
final class Vote {

  /** Pieces that may take so much of what the freest may take are its equals. */
  private static final double EQUAL = 0.98;

  /** A face to be shown goes to one piece only if that may take so much of it. */
  private static final double WHOLE = 0.9;

  private final WishCells wishes;
  private final byte[] mask;
  private final float[][] share;

  /** The piece each cell is asked for by name, -1 if none. */
  private final int[] named;

  /**
   * @param mask pieces that may take each cell
   * @param share of each piece in each cell
   */
  Vote(WishCells wishes, byte[] mask, float[][] share) {
    this.wishes = wishes;
    this.mask = mask;
    this.share = share;
    named = new int[mask.length];
    Arrays.fill(named, -1);
  }

  /**
   * Places in the order for the pieces that are asked for by number: each number goes to the piece
   * that may take most of what is marked with it.
   *
   * @param places from 0, or -1, by piece
   */
  List<Integer> places(List<Integer> places) {
    List<Integer> out = new ArrayList<>(places);
    for (int n = 0; n < out.size(); n++) {
      IntList all = new IntList();
      for (WishCells.Patch p : wishes.patches) {
        for (int k = 0; p.piece() == n + 1 && k < p.cells().size(); k++) {
          all.add(p.cells().get(k));
        }
      }
      if (all.size() > 0 && !out.contains(n)) {
        int open = 0;
        for (int i = 0; i < out.size(); i++) {
          open |= out.get(i) < 0 ? 1 << i : 0;
        }
        out.set(freest(all, open), n);
      }
    }
    return List.copyOf(out);
  }

  /**
   * The piece for each patch; -1 for a face to be shown that no piece may take nearly whole, for
   * one piece's preference would then only draw the seams out.
   *
   * @param places by piece, from 0, or -1
   * @param free whether what pieces may take comes first, or only what they have
   */
  int[] pieces(List<Integer> places, boolean free) {
    int every = (1 << share.length) - 1;
    int[] out = new int[wishes.patches.size()];
    for (int p = 0; p < out.length; p++) {
      WishCells.Patch patch = wishes.patches.get(p);
      if (patch.mark() == Mark.PIECE) {
        out[p] = places.indexOf(patch.piece() - 1);
        for (int k = 0; k < patch.cells().size(); k++) {
          named[patch.cells().get(k)] = out[p];
        }
      }
    }
    for (int p = 0; p < out.length; p++) {
      WishCells.Patch patch = wishes.patches.get(p);
      if (patch.mark() != Mark.PIECE) {
        int asked = named(patch.cells());
        out[p] =
            asked >= 0 ? asked : free ? freest(patch.cells(), every) : most(patch.cells(), every);
        if (patch.mark() == Mark.SHOW && may(patch.cells(), out[p]) < WHOLE) {
          out[p] = -1;
        }
      }
    }
    return out;
  }

  /** What a piece may take of a patch, as a share. */
  private double may(IntList patch, int piece) {
    int n = 0;
    for (int k = 0; k < patch.size(); k++) {
      n += (mask[patch.get(k)] & 1 << piece) != 0 ? 1 : 0;
    }
    return (double) n / patch.size();
  }

  /** The piece that the most cells of a patch are asked for by name, or -1. */
  private int named(IntList patch) {
    int[] votes = new int[share.length];
    int best = -1;
    for (int k = 0; k < patch.size(); k++) {
      int n = named[patch.get(k)];
      if (n >= 0 && (++votes[n] > 0 && (best < 0 || votes[n] > votes[best]))) {
        best = n;
      }
    }
    return best;
  }

  /** Of some pieces the one that may take the most cells; of equals the one that has the most. */
  private int freest(IntList patch, int among) {
    int[] may = new int[share.length];
    int most = 0;
    for (int i = 0; i < may.length; i++) {
      for (int k = 0; k < patch.size() && (among & 1 << i) != 0; k++) {
        may[i] += (mask[patch.get(k)] & 1 << i) != 0 ? 1 : 0;
      }
      most = Math.max(most, may[i]);
    }
    int equals = 0;
    for (int i = 0; i < may.length; i++) {
      equals |= (among & 1 << i) != 0 && may[i] >= EQUAL * most ? 1 << i : 0;
    }
    return most(patch, equals);
  }

  private int most(IntList patch, int among) {
    int best = -1;
    double has = 0;
    for (int i = 0; i < share.length; i++) {
      double sum = 0;
      for (int k = 0; k < patch.size(); k++) {
        sum += share[i][patch.get(k)];
      }
      if ((among & 1 << i) != 0 && (best < 0 || sum > has)) {
        best = i;
        has = sum;
      }
    }
    return best;
  }
}
