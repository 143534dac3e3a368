package org.castwright.division;

import java.util.ArrayList;
import java.util.List;

/** The orders in which pieces may leave, each with some pieces at their places. */
final class Orders {

  /** With more pieces than this to be placed only turns of one order are tried. */
  private static final int ALL = 5;

  private Orders() {}

  /**
   * Orders to try.
   *
   * @param places for each piece its place, from 0, or -1
   * @return piece numbers in the order they leave
   */
  static List<int[]> of(List<Integer> places) {
    List<Integer> loose = new ArrayList<>();
    int[] frame = new int[places.size()];
    for (int at = 0; at < frame.length; at++) {
      frame[at] = places.indexOf(at);
      if (places.get(at) < 0) {
        loose.add(at);
      }
    }
    List<List<Integer>> ways = new ArrayList<>();
    if (loose.size() > ALL) {
      for (int turn = 0; turn < loose.size(); turn++) {
        List<Integer> way = new ArrayList<>(loose.subList(turn, loose.size()));
        way.addAll(loose.subList(0, turn));
        ways.add(way);
      }
    } else {
      permute(loose, 0, ways);
    }
    return ways.stream().map(way -> filled(frame, way)).toList();
  }

  private static void permute(List<Integer> a, int from, List<List<Integer>> out) {
    if (from == a.size()) {
      out.add(a);
      return;
    }
    for (int i = from; i < a.size(); i++) {
      List<Integer> b = new ArrayList<>(a);
      b.set(from, a.get(i));
      b.set(i, a.get(from));
      permute(b, from + 1, out);
    }
  }

  private static int[] filled(int[] frame, List<Integer> way) {
    int[] out = frame.clone();
    int next = 0;
    for (int at = 0; at < out.length; at++) {
      if (out[at] < 0) {
        out[at] = way.get(next++);
      }
    }
    return out;
  }
}
