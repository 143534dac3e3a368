package org.castwright.parting;

/** How the two halves are made. */
public enum Method {
  /** Stitch where the seam allows it, else boolean. Only asked for, never the method used. */
  AUTO,
  /** Facets of one side and the sheet beside the casting, joined by vertex index. */
  STITCH,
  /** A block cut by a sheet that runs through the casting, then the casting taken away. */
  BOOLEAN
}
