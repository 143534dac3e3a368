/**
 * How few pulls open a casting. Accepts a closed, outward-oriented mesh in millimeters; {@link
 * org.castwright.cover.Cover} puts some hundreds of pull directions on trial and promises the
 * fewest of them whose free sets cover the mold's space and the casting's facets, with a
 * certificate (least found, proved lower bound), what stays caught and where, what no direction
 * frees at all, the curve of pulls against what stays caught, and whether the answer survives small
 * turns. Rests on the cover theorem: pieces that leave one after the other along straight pulls
 * exist exactly when every point of the mold's space sees one of the pulls past the casting, and
 * then any order will do. Sampled: catches narrower than the stated width count as free, and the
 * proof on the finished solids is made elsewhere. Does not label facets, place seams or cut solids.
 */
package org.castwright.cover;
