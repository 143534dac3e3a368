package org.castwright.stretch;

import org.castwright.geom.Vec3;

/**
 * A connected part of the mold's space from which no pull leads out straight, measured along the
 * pull that leaves it with the least strain.
 *
 * @param center of the space, mm
 * @param pull the unit pull it is measured along
 * @param volume of the space, mm³
 * @param depth the longest stretch of it along the pull, mm
 * @param width how far the mold there must give way sideways, at most, mm
 * @param lipWidth what has to pass, where the strain by widths is largest, mm
 * @param throatWidth what it has to pass through there, mm
 * @param widthStrain lip width over throat width, less one; infinite if the mold reaches through
 *     the casting there, so that no stretching frees it
 * @param girthStrain the same of girths round lip and throat
 * @param limit the strain allowed
 */
public record StretchPlace(
    Vec3 center,
    Vec3 pull,
    double volume,
    double depth,
    double width,
    double lipWidth,
    double throatWidth,
    double widthStrain,
    double girthStrain,
    double limit) {

  /** The strain that leaving takes, as a share: the larger of the two. */
  public double strain() {
    return Math.max(widthStrain, girthStrain);
  }

  public boolean allowed() {
    return strain() <= limit;
  }
}
