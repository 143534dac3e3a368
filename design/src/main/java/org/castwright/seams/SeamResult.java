package org.castwright.seams;

import java.util.List;
import org.castwright.mesh.TriMesh;

/** The casting split along its seams. Arrays are not to be written into. */
public final class SeamResult {

  private final Tiling tiling;
  private final SeamLines lines;
  private final SeamMeasures measures;

  SeamResult(Tiling tiling, SeamLines lines, SeamMeasures measures) {
    this.tiling = tiling;
    this.lines = lines;
    this.measures = measures;
  }

  /** The casting's surface, its facets split so that every seam runs along edges. */
  public TriMesh mesh() {
    return tiling.mesh;
  }

  /** The piece, from 0, that forms each facet of {@link #mesh}. */
  public byte[] pieces() {
    return tiling.label;
  }

  /** The casting's facet in which each facet of {@link #mesh} lies. */
  public int[] parents() {
    return tiling.parent;
  }

  /** Seams from junction to junction, then closed ones, each kind in vertex order. */
  public List<SeamLine> lines() {
    return lines.all();
  }

  /** Vertices of {@link #mesh} where other than two seams' ends meet, in order. */
  public int[] junctions() {
    return lines.junctions();
  }

  public SeamMeasures measures() {
    return measures;
  }
}
