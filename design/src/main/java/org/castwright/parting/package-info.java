/**
 * The parting of a mold in two: from a casting that opens along +z and the block around it to two
 * closed halves that mate on one sheet.
 *
 * <p>Accepts a closed, oriented, manifold casting whose upper half is pulled along +z and a block
 * that contains it with a margin; all coordinates are exact floats. Promises two closed, oriented,
 * manifold halves that share the very triangles of the sheet, whose cavity keeps the casting's own
 * facets (split only along the seam), and whose volumes add up with the casting to the block. The
 * steps, each a class: {@link org.castwright.parting.DepthGrid} and {@link
 * org.castwright.parting.Columns} know the highest and lowest casting in every column; {@link
 * org.castwright.parting.Sides} tells which half each facet belongs to; {@link
 * org.castwright.parting.FlatTest} asks whether a plane will do; {@link
 * org.castwright.parting.BandCut} moves the seam inside bands of near-vertical wall; {@link
 * org.castwright.parting.Seam} is the border between the sides; {@link
 * org.castwright.parting.Stitch} joins facets and sheet by vertex index where the seam projects to
 * simple loops; {@link org.castwright.parting.SlabCut} cuts with a solid kernel otherwise.
 *
 * <p>Does not choose the direction, add keys, gates or vents, nor prove that the mold opens: a
 * casting with trapped space still gets two closed halves, and the statistics say how much is
 * caught.
 */
package org.castwright.parting;
