package org.castwright.plan;

import java.util.List;
import org.castwright.geom.Vec3;

/**
 * Places of {@link Openings} in the mold frame.
 *
 * @param gate or null
 * @param vents in the order asked
 */
record AskedPlaces(Vec3 gate, List<Vec3> vents) {

  static final AskedPlaces NONE = new AskedPlaces(null, List.of());

  static AskedPlaces of(Openings o, MoldFrame frame) {
    return new AskedPlaces(
        o.gateAt() == null ? null : frame.pointToMold(o.gateAt()),
        o.ventsAt().stream().map(frame::pointToMold).toList());
  }

  AskedPlaces onlyVents() {
    return new AskedPlaces(null, vents);
  }
}
