/**
 * What to weigh, print and pay: parts of a mix by weight and volume, plaster by additive volumes,
 * slip by its law of growth, batches within pot life, print volume, mass and time by simple rates,
 * cost from the user's own prices. Pure numbers with records; never a price or a rate of its own
 * that is not named. Masses g or kg as named, volumes ml (1 ml = 1 cm³), times in the unit named.
 * Knows no meshes, plans or files.
 */
package org.castwright.batch;
