package org.castwright.seams;

import java.util.List;
import org.castwright.mesh.MeshException;

/**
 * What the user asks of the seams. Where regions overlap, {@link Mark#NO_SEAM} goes before the
 * rest, and of {@link Mark#HIDE}, {@link Mark#SHOW} and of several pieces the later wish holds.
 */
public record Wishes(List<Wish> all) {

  public static final Wishes NONE = new Wishes(List.of());

  public Wishes {
    all = List.copyOf(all);
  }

  /**
   * Checks the wishes against a job.
   *
   * @throws MeshException naming the first wish that speaks of a piece or facet there is not
   */
  public void check(int pieces, int facets) {
    for (int i = 0; i < all.size(); i++) {
      Wish w = all.get(i);
      if (w.piece() > pieces) {
        throw new MeshException(
            "wish " + (i + 1) + " asks for piece " + w.piece() + " of " + pieces
                + "; name a piece from 1 to " + pieces + ".");
      }
      if (w.region() instanceof Region.Painted p && p.largest() >= facets) {
        throw new MeshException(
            "wish " + (i + 1) + " paints facet " + p.largest() + ", but the casting has facets 0 to "
                + (facets - 1) + "; paint the model in use.");
      }
    }
  }
}
