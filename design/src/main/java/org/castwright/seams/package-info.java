/**
 * Which piece forms which part of the casting, and where the seams run. Accepts a closed mesh in
 * millimeters, the pulls of the pieces in the order they leave, and the user's wishes; {@link
 * org.castwright.seams.Seams} finds by depth images what each piece may take, labels every facet by
 * minimum cuts, shortens the seams inside what stays allowed, and splits the facets at the final
 * curves. Promises that the split mesh is the same surface, exactly tiled; that equal input gives
 * equal output; and that whatever a wish or a shadow made impossible is measured and said. {@link
 * org.castwright.seams.OrderedLabels} does the like for cells of space, with the order of removal
 * built in. Does not choose pulls, does not make sheets or solids, and does not prove that a mold
 * opens.
 */
package org.castwright.seams;
