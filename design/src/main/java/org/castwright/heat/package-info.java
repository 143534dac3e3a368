/**
 * How a casting cools or cures in its mold. {@link org.castwright.heat.HeatStudy} takes the closed
 * casting, what stands in its channels, and the box of the block in the mold frame (mm), what is
 * poured and what the mold is made of, and promises the time to demold with a band from the ranges
 * of the figures, the highest temperature and its place, whether the mold's inner wall gets softer
 * than it may, and the places that set last. It solves the heat equation on a uniform grid with the
 * latent heat of melts and the reaction heat of resins and plaster; the same input gives the same
 * numbers for any number of threads. Thermal figures stand in {@code thermal.json}, each with its
 * source; a missing one is said, never filled in. The closed forms of slabs, cylinders, spheres and
 * freezing fronts ({@link org.castwright.heat.OneTerm}, {@link org.castwright.heat.Stefan}, {@link
 * org.castwright.heat.Plank}, {@link org.castwright.heat.Chvorinov}, {@link
 * org.castwright.heat.Exotherm}) stand beside it for hand checks; {@link
 * org.castwright.heat.FreezeShut} bounds from below how long a bore or slit of melt stays open.
 * Liquid does not move, the casting does not shrink away from the wall, and radiation counts only
 * within the air's coefficient.
 */
package org.castwright.heat;
