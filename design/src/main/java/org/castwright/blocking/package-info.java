/**
 * Blocking out: what two opposite pieces would trap is filled in the casting, as mold makers do
 * with wax or clay in the undercuts of a pattern, so that two pieces do. It lays the sheet in which
 * the pieces are to meet, no steeper than they can bear, fills up to it with walls that have draft,
 * and tells how much went where.
 */
package org.castwright.blocking;
