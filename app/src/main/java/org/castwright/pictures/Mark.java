package org.castwright.pictures;

import org.castwright.geom.Vec3;

/** A point in space with a short label beside it, drawn over everything. */
public record Mark(Vec3 at, String label, int rgb) {}
