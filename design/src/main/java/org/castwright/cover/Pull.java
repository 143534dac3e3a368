package org.castwright.cover;

import org.castwright.geom.Vec3;

/**
 * One pull of the answer, in opening order.
 *
 * @param direction unit vector in the mesh's frame
 * @param fixed whether the caller asked for it
 * @param onlyAreaMm2 surface that no other of the pulls frees, mm²
 * @param onlyVolumeMm3 space near the casting that no other of the pulls frees, mm³
 * @param ownVolumeMm3 of the block it takes in this order, when each pull takes all it can, mm³
 * @param bodies in how many bodies that falls
 */
public record Pull(
    Vec3 direction,
    boolean fixed,
    double onlyAreaMm2,
    double onlyVolumeMm3,
    double ownVolumeMm3,
    int bodies) {}
