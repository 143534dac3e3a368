package org.castwright.survey;

import org.castwright.geom.Vec3;

/**
 * A connected patch of surface that two rigid pieces would hold fast.
 *
 * @param center mean point of the patch, weighted by area, world frame, mm
 * @param area hidden surface, mm²
 * @param depth the most space shut in along the pull, mm
 * @param width diameter of the largest disc that fits in the catch, in the plane across the pull,
 *     mm
 * @param facets how many facets belong to it
 */
public record CaughtPlace(Vec3 center, double area, double depth, double width, int facets) {}
