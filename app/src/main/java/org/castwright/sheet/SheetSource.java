package org.castwright.sheet;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.MeshReader;
import org.castwright.pipeline.ProofFolder;
import org.castwright.pipeline.Report;

/**
 * What a sheet is made from: a report and the bodies it speaks of, in the mold frame.
 *
 * @param channels gate and vents as cast material fills them; empty if there are none
 * @param pieces in the order in which they leave
 * @param seam lines where pieces part on the casting, packed coordinates, mm; may be empty
 */
public record SheetSource(
    Report report, TriMesh casting, TriMesh channels, List<Body> pieces, List<double[]> seam) {

  /** A piece in the closed mold and as it stands on the printer's bed. */
  public record Body(String name, TriMesh mesh, Vec3 pull, TriMesh print) {}

  public SheetSource {
    pieces = List.copyOf(pieces);
    seam = List.copyOf(seam);
  }

  /**
   * Reads a finished mold folder.
   *
   * @throws org.castwright.mesh.MeshException if it is none or a file is missing or damaged
   */
  public static SheetSource read(Path dir) throws IOException {
    Report r = ProofFolder.report(dir);
    List<Body> bodies = new ArrayList<>();
    for (Report.PieceFile p : r.pieces()) {
      Vec3 pull = new Vec3(p.pull().get(0), p.pull().get(1), p.pull().get(2));
      bodies.add(new Body(p.name(), mesh(dir, p.file()), pull, mesh(dir, p.printFile())));
    }
    String channels = r.channelsBody().file();
    TriMesh none = new TriMesh(new double[0], new int[0]);
    return new SheetSource(
        r,
        mesh(dir, r.casting().file()),
        channels == null ? none : mesh(dir, channels),
        bodies,
        List.of());
  }

  private static TriMesh mesh(Path dir, String file) throws IOException {
    return MeshReader.read(dir.resolve(file)).mesh();
  }
}
