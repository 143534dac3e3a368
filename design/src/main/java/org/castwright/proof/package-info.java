/**
 * The proof of a written mold, by a second way: it takes the bodies as they were read back from the
 * files ({@link org.castwright.proof.ProofInput}) and judges them with code of its own (exact
 * columns along each pull, a box tree, closest points, rays, a rising level) and a few operations
 * of the solid kernel. Any number of pieces leave in the order given, each along a pull of its own.
 * It never sees how the mold was planned. {@link org.castwright.proof.Proof#of} promises one {@link
 * org.castwright.proof.ProofCheck} for each thing judged, with the number measured, the limit and a
 * sentence for a person; it throws nothing for a bad mold. It does not read files, repair bodies or
 * judge draft. Millimeters, the closed-mold frame throughout; print bodies in the frame of the
 * printer.
 */
package org.castwright.proof;
