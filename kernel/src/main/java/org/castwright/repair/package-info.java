/**
 * From a mesh as it was read to a body that can be cast. {@link org.castwright.repair.Repair}
 * accepts any indexed triangles and promises a closed, outward-oriented, manifold mesh without
 * overlapping parts or enclosed voids, or one sentence that says what stands in the way. Every
 * change is told as a {@link org.castwright.repair.HealingStep}; a sound mesh comes back untouched.
 * The steps, in order: weld exact duplicates; weld near duplicates along open edges; drop
 * degenerate and duplicate triangles; turn triangles to agree with their neighbors; drop walls and
 * fins of no thickness; split edges and vertices where surfaces only touch; close holes; turn
 * shells outward; drop specks; unite overlapping parts; fill or refuse voids; and, when asked for
 * and needed, rebuild the surface. {@link org.castwright.repair.MeshHealth} only looks. A surface
 * that passes through itself within one shell is counted and left, unless a rebuild was asked for.
 * Nothing here smooths, simplifies or scales.
 */
package org.castwright.repair;
