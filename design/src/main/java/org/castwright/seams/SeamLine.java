package org.castwright.seams;

/**
 * A seam between two pieces: a line of vertices of the split mesh from one junction to the next, or
 * a closed line without junctions.
 */
public final class SeamLine {

  private final int[] vertices;
  private final boolean closed;
  private final int left;
  private final int right;

  SeamLine(int[] vertices, boolean closed, int left, int right) {
    this.vertices = vertices;
    this.closed = closed;
    this.left = left;
    this.right = right;
  }

  /** Vertices in order; a closed line does not repeat its first. Not to be written into. */
  public int[] vertices() {
    return vertices;
  }

  public boolean closed() {
    return closed;
  }

  /** The piece, from 0, on the left of the line seen from outside the casting. */
  public int left() {
    return left;
  }

  /** The piece, from 0, on the right. */
  public int right() {
    return right;
  }
}
