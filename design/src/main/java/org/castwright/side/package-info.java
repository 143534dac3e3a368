/**
 * Side pieces: loose pieces of a mold, each with a pull of its own, that take the space which the
 * two main pieces shut in.
 *
 * <p>Accepts a casting whose main pieces leave along +z and -z, and the block around it. {@link
 * org.castwright.side.SidePulls} chooses the pulls that free the trapped space; {@link
 * org.castwright.side.Footprint} draws a drafted plug round each pocket; {@link
 * org.castwright.side.SidePieces} cuts the plugs so that each leaves along its pull: nothing of the
 * casting is ahead of any of its points. Side pieces leave first, in order, through the outside of
 * the block; what they take is missing from the main pieces, which then open.
 *
 * <p>Does not choose the main pull, and does not prove anything.
 */
package org.castwright.side;
