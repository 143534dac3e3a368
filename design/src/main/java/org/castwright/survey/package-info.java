/**
 * How a closed mesh opens along a straight pull. Accepts a closed, outward-oriented mesh in
 * millimeters; {@link org.castwright.survey.Survey} tries some hundreds of pull directions with
 * depth images and promises the same answer for any number of threads: the best direction, what two
 * rigid pieces pulled along it and against it would still catch, where, how wide and how deep, and
 * a ranked list of other directions. The measure is the trapped volume: the space between the
 * highest and the lowest surface of each column that is not solid; it is zero exactly when every
 * column is one run of solid, that is when two pieces open (Ahn et al., "Separating an object from
 * its cast", CAD 34(8), 2002). Sampled, so a catch thinner than the stated resolution can slip
 * through; the proof on the finished solids is made elsewhere. Does not place a seam, does not
 * think of more than two pieces, and does not repair a mesh.
 */
package org.castwright.survey;
