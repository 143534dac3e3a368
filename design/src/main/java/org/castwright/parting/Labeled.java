package org.castwright.parting;

import org.castwright.mesh.TriMesh;

/**
 * A casting with the side of every facet, {@link Sides#UPPER} or {@link Sides#LOWER}. Shared
 * arrays, not to be written into once the seam is made.
 */
@SuppressWarnings("ArrayRecordComponent") // never compared; hot loops read it
record Labeled(TriMesh mesh, byte[] side) {}
