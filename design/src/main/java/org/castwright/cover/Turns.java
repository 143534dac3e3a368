package org.castwright.cover;

import java.util.List;

/**
 * Whether the answer hangs on exact walls: all pulls are turned a little, four ways, opposite ones
 * together; a wall that stood along its pull and now leans under it counts as caught.
 *
 * @param degrees of the turns
 * @param holds whether what stays caught after each turn keeps the tolerance, or is no more than a
 *     tenth above what stays caught without a turn
 * @param turned what stays caught after each turn, widths not measured
 */
public record Turns(double degrees, boolean holds, List<Caught> turned) {

  /** Copies the list. */
  public Turns {
    turned = List.copyOf(turned);
  }
}
