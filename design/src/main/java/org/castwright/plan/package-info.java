/**
 * The decisions: everything about a mold that can be decided before a solid is cut. Accepts a
 * healed model, a material and {@link org.castwright.plan.MoldOptions}; asks the survey how the
 * model opens and the parting room for the seam; then places block, keys, gate, vents and closing
 * features. The result, {@link org.castwright.plan.MoldPlan}, is plain data in the mold frame.
 *
 * <p>The mold frame: z is the pull of piece 1 (the upper piece), y is up while pouring, the origin
 * is the center of the casting's box. All lengths in millimeters.
 *
 * <p>Does no booleans of its own and writes no files.
 */
package org.castwright.plan;
