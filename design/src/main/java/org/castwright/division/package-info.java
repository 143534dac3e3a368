/**
 * Divides the space of a mold among pieces that leave along any pulls. {@link
 * org.castwright.division.Division} accepts a closed casting, the box of the block and the pulls;
 * it gives the order in which the pieces leave and for each but the last a sheet, the height over
 * every column across its pull above which all that is left leaves with it. A cell of space goes
 * only to a piece that frees it; sheets are short, leave the casting squarely where they may, and
 * keep draft.
 */
package org.castwright.division;
