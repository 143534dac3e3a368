package org.castwright.seams;

import java.util.List;
import java.util.function.UnaryOperator;
import org.castwright.geom.Vec3;
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
            "wish "
                + (i + 1)
                + " asks for piece "
                + w.piece()
                + " of "
                + pieces
                + "; name a piece from 1 to "
                + pieces
                + ".");
      }
      int painted = largest(w.region());
      if (painted >= facets) {
        throw new MeshException(
            "wish "
                + (i + 1)
                + " paints facet "
                + painted
                + ", but the casting has facets 0 to "
                + (facets - 1)
                + "; paint the model in use.");
      }
    }
  }

  private static int largest(Region region) {
    if (region instanceof Region.Placed p) {
      return largest(p.region());
    }
    return region instanceof Region.Painted p ? p.largest() : -1;
  }

  /**
   * The same wishes for a casting that stands in another frame.
   *
   * @param toWishes carries a point from the casting's frame to the one the wishes were made in
   */
  public Wishes placed(UnaryOperator<Vec3> toWishes) {
    return new Wishes(
        all.stream()
            .map(w -> new Wish(new Region.Placed(w.region(), toWishes), w.mark(), w.piece()))
            .toList());
  }
}
