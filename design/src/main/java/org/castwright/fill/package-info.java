/**
 * How a cavity fills: the level rises everywhere alike, air leaves only upward. Accepts the closed
 * meshes of casting and channels, where they join and where they open, and an up direction;
 * promises, exactly on those meshes, the pockets of air with place and volume, the volume below any
 * level, and what lies above the lowest mouth. Knows no plans, materials or files. Millimeters.
 */
package org.castwright.fill;
