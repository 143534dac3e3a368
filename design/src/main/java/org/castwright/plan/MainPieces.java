package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.parting.Parting;
import org.castwright.parting.PartingOptions;
import org.castwright.progress.Progress;
import org.castwright.side.SidePiece;
import org.castwright.side.SidePieces;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * The two main pieces before keys, channels and features are cut, each without what side pieces
 * take.
 *
 * @param parting the seam surface between them
 * @param upper leaves along +z
 * @param lower leaves along -z
 * @param casting with the facets the pieces have along the seam
 */
public record MainPieces(Parting parting, Solid upper, Solid lower, TriMesh casting) {

  /** How far side pieces reach out of the block while the seam round them is found, mm. */
  static final double REACH = 3;

  /**
   * Block round the casting with its side pieces while the seam is found, beyond their reach, mm.
   */
  private static final double AROUND = 4;

  /** Without side pieces. */
  static MainPieces of(
      TriMesh casting, BlockBox box, PartingOptions o, SolidKernel kernel, Progress p) {
    Parting parting = Parting.of(casting, box, o, kernel, p);
    return new MainPieces(parting, parting.upper(), parting.lower(), parting.casting());
  }

  /**
   * With side pieces that reach {@link #REACH} out of the block. Where nothing is trapped between
   * the casting and its side pieces, the seam runs round all of them; else it is that of the
   * casting alone and the side pieces are cut out.
   */
  static MainPieces of(
      TriMesh casting,
      List<SidePiece> reaching,
      BlockBox box,
      PartingOptions o,
      SolidKernel kernel,
      Progress p) {
    Solid block = kernel.solid("block", box.mesh());
    Parting alone = Parting.of(casting, box, o, kernel, p);
    List<Solid> plugs = reaching.stream().map(SidePiece::body).toList();
    if (!alone.flat()) {
      List<Solid> bodies = new ArrayList<>(plugs);
      bodies.add(kernel.solid("casting", casting));
      TriMesh all = FloatGrid.snap(kernel.union("casting with side pieces", bodies).mesh());
      if (SidePieces.trapped(all, o.releaseMm()) <= SidePieces.NOTHING) {
        Parting parting = Parting.of(all, grown(box, REACH + AROUND), o, kernel, p);
        return new MainPieces(
            parting,
            kernel.intersection("upper half", parting.upper(), block),
            kernel.intersection("lower half", parting.lower(), block),
            casting);
      }
    }
    return new MainPieces(
        alone,
        kernel.difference("upper half", alone.upper(), plugs),
        kernel.difference("lower half", alone.lower(), plugs),
        alone.casting());
  }

  static BlockBox grown(BlockBox b, double by) {
    return new BlockBox(
        b.x0() - by, b.y0() - by, b.x1() + by, b.y1() + by, b.z0() - by, b.z1() + by);
  }
}
