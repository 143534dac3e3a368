package org.castwright.side;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.survey.TrappedSpace;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;

/**
 * What two plugs free at most, whatever their pulls, so that a search for more need not begin. A
 * plug frees no point that its pull does not and none far from the outline of its pockets; both are
 * granted too much rather than too little.
 */
final class PlugReach {

  /** How far the flanks of a plug stand out from its pockets' outline at most, mm. */
  private static final double BESIDE = 5;

  private final List<BitSet> plugs;

  private PlugReach(List<BitSet> plugs) {
    this.plugs = plugs;
  }

  /**
   * @param stride every how many-th point of the space is looked at
   * @param frees for each pull which of those it frees
   */
  static PlugReach of(TrappedSpace space, int stride, List<Vec3> pulls, boolean[][] frees) {
    List<BitSet> plugs =
        IntStream.range(0, frees.length)
            .parallel()
            .mapToObj(k -> plugs(space, stride, pulls.get(k), frees[k]))
            .flatMap(List::stream)
            .sorted(Comparator.comparingInt(BitSet::cardinality).reversed())
            .toList();
    return new PlugReach(plugs);
  }

  private static List<BitSet> plugs(TrappedSpace space, int stride, Vec3 pull, boolean[] frees) {
    int[] freed = IntStream.range(0, frees.length).filter(i -> frees[i]).toArray();
    int[] points = Arrays.stream(freed).map(i -> i * stride).toArray();
    double[] own = space.points(points, Frame.along(pull));
    List<BitSet> out = new ArrayList<>();
    for (Footprint plug : Footprint.of(own, PlugCutter.SHARED, 0)) {
      IndexedPointInAreaLocator near = new IndexedPointInAreaLocator(plug.outline().buffer(BESIDE));
      BitSet in = new BitSet(frees.length);
      for (int j = 0; j < freed.length; j++) {
        if (near.locate(new Coordinate(own[3 * j], own[3 * j + 1])) != Location.EXTERIOR) {
          in.set(freed[j]);
        }
      }
      out.add(in);
    }
    return out;
  }

  /** The most points that one plug frees, or two. */
  int most(int number) {
    int best = plugs.isEmpty() ? 0 : plugs.get(0).cardinality();
    for (int a = 0; number > 1 && a < plugs.size(); a++) {
      int alone = plugs.get(a).cardinality();
      // those that follow free no more
      for (int b = a + 1; b < plugs.size(); b++) {
        if (alone + plugs.get(b).cardinality() <= best) {
          break;
        }
        BitSet both = (BitSet) plugs.get(a).clone();
        both.or(plugs.get(b));
        best = Math.max(best, both.cardinality());
      }
    }
    return best;
  }
}
