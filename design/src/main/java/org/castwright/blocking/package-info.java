/**
 * Blocking out: what two opposite pieces would trap is filled in the casting, as mold makers do
 * with wax or clay in the undercuts of a pattern, so that two pieces do. It looks for the axis
 * along which least has to be filled, fills the gaps column by column with walls that have draft,
 * and tells how much went where.
 */
package org.castwright.blocking;
