package org.castwright.division;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Beside;
import org.castwright.progress.Progress;
import org.castwright.seams.Freedom;
import org.castwright.seams.ShadowFreedom;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/** Who takes what of a mold's space: pieces in the order they leave, and the sheets between. */
public final class Division {

  /** Cells along the longest side of the block, and the least side of a cell, mm. */
  private static final int CELLS = 100;

  private static final double LEAST_CELL = 0.4;

  /** How much larger the cells are on which sheets first find their way. */
  private static final double COARSER = 2;

  /** Columns along a cell at least, and their distance at most, mm: a seam steps by as much. */
  private static final double COLUMNS = 4;

  private static final double WIDEST = 0.3;

  /** Play that a piece likes to have on its way, cells. */
  private static final double PLAY = 0.6;

  private static final int MOST_PIXELS = 2000;
  private static final double SHARED = 0.5;

  private final List<Vec3> pulls;
  private final List<Sheet> sheets;
  private final Cells cells;
  private final List<String> notes;

  private Division(List<Vec3> pulls, List<Sheet> sheets, Cells cells, List<String> notes) {
    this.notes = notes;
    this.pulls = pulls;
    this.sheets = sheets;
    this.cells = cells;
  }

  /**
   * Divides the space of a mold.
   *
   * @param casting closed mesh, with gate and vents, whose shells may overlap it, mm; may reach out
   *     of the block
   * @param block the box of the block
   * @param directions unit vectors, 1 to 8, in any order
   * @param asked what the maker asks
   * @param releaseMm width of catch that counts as free
   * @throws OrderException if the order asked leaves nothing for a piece
   */
  public static Division of(
      TriMesh casting,
      Box3 block,
      List<Vec3> directions,
      Asked asked,
      double releaseMm,
      Progress progress) {
    progress.at("division", 0);
    double cell = Math.max(LEAST_CELL, block.longestSide() / CELLS);
    double apart = Math.min(cell / COLUMNS, WIDEST);
    List<PullColumns> views =
        directions.parallelStream()
            .map(d -> new PullColumns(casting, block, d, apart, PLAY * cell))
            .toList();
    Freedom exact = ShadowFreedom.of(casting, directions, releaseMm, MOST_PIXELS);
    Beside<Surroundings> later = Beside.begin(() -> Surroundings.of(casting, block, cell, exact));
    Surroundings large = Surroundings.of(casting, block, COARSER * cell, exact);
    Shares coarse =
        Shares.coarse(
            large.cells, views, large.rubs, asked, p -> progress.at("division", SHARED * p / 2));
    Surroundings fine = later.get();
    Cells cells = fine.cells;
    Shares shares =
        Shares.fine(
            cells, views, fine.rubs, coarse, p -> progress.at("division", SHARED * (1 + p) / 2));
    Facing facing = fine.facing;
    int[] order = shares.order;
    int[] rank = new int[order.length];
    for (int i = 0; i < order.length; i++) {
      rank[order[i]] = i;
    }
    List<Vec3> pulls = new ArrayList<>();
    List<Sheet> sheets = new ArrayList<>();
    for (int n = 0; n < order.length; n++) {
      progress.at("division", SHARED + (1 - SHARED) * n / order.length);
      pulls.add(directions.get(order[n]));
      if (n + 1 < order.length) {
        List<Sheet> left = List.copyOf(sheets);
        SheetColumns ask = new SheetColumns(shares, views, exact, rank, order[n], block, left);
        Contacts contacts = new Contacts(ask.view, left, facing);
        sheets.add(new Sheet(ask.view, Membrane.of(ask, contacts)));
      }
    }
    progress.at("division", 1);
    List<String> notes = asked.order() ? coarse.firstTaken.words() : List.of();
    return new Division(List.copyOf(pulls), List.copyOf(sheets), cells, notes);
  }

  /** Cells, and what the casting says beside them. */
  private record Surroundings(Cells cells, Rubs rubs, Facing facing) {
    static Surroundings of(TriMesh casting, Box3 block, double cell, Freedom exact) {
      Cells cells = new Cells(casting, block, cell);
      return new Surroundings(cells, new Rubs(cells, casting, exact), new Facing(casting, cells));
    }
  }

  /** Pulls in the order the pieces leave. */
  public List<Vec3> pulls() {
    return pulls;
  }

  /** The sheet of every piece but the last. */
  public List<Sheet> sheets() {
    return sheets;
  }

  /** Sentences on what the order asked costs. */
  public List<String> notes() {
    return notes;
  }

  /** The piece, from 0, that holds a point of the mold's space. */
  public int pieceAt(Vec3 p) {
    for (int n = 0; n < sheets.size(); n++) {
      if (sheets.get(n).above(p) > 0) {
        return n;
      }
    }
    return sheets.size();
  }

  /** The distance from a point to the casting about, mm, to within a cell. */
  public double toCasting(Vec3 p) {
    return cells.near(p);
  }

  /**
   * Cuts a body along the sheets. What hangs on no piece then stays with the one on whose side of
   * the sheets it lies.
   *
   * @param space the block less the casting
   * @return a body for each piece, in order
   */
  public List<Solid> cut(Solid space, SolidKernel kernel, Progress progress) {
    List<Solid> slabs = new ArrayList<>();
    for (int n = 0; n < sheets.size(); n++) {
      slabs.add(kernel.solid("slab of piece " + (n + 1), sheets.get(n).slab()));
    }
    progress.at("pieces", 0);
    return kernel.slices(space, slabs, done -> progress.at("pieces", (double) done / slabs.size()));
  }
}
