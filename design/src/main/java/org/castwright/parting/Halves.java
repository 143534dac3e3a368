package org.castwright.parting;

import org.castwright.mesh.TriMesh;

/**
 * What either way of making the halves gives.
 *
 * @param sheet the triangles of the sheet, facing up; vertical fins included
 * @param parted the casting with the facets that the halves have
 * @param leftovers loose pieces that were given to the other half
 * @param loose bodies of the upper half that hang on nothing
 * @param lips grid nodes at which the sheet leaves the casting on the wrong side
 */
record Halves(
    TriMesh upper,
    TriMesh lower,
    TriMesh sheet,
    TriMesh parted,
    Method used,
    int leftovers,
    int loose,
    int lips) {}
