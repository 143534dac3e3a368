/**
 * From decisions to solids. Accepts a {@link org.castwright.plan.MoldPlan} and a solid kernel; cuts
 * sockets, channels and outside features from the raw halves, adds the keys, and gives back {@link
 * org.castwright.mold.Mold}: closed pieces on the float grid of STL files, the body of the
 * channels, and the volumes that a balance needs. Decides nothing about the design and writes no
 * files.
 */
package org.castwright.mold;
