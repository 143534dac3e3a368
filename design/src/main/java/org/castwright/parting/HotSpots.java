package org.castwright.parting;

/** The neighborhoods, 2 to 4 mm wide, of the places where the seam still crosses itself. */
final class HotSpots {

  private static final double CELL_MM = 2;

  private final EdgeMap cells = new EdgeMap(64);

  void add(double x, double y) {
    int i = (int) Math.floor(x / CELL_MM);
    int j = (int) Math.floor(y / CELL_MM);
    for (int a = i - 1; a <= i + 1; a++) {
      for (int b = j - 1; b <= j + 1; b++) {
        cells.put(key(a, b), 1);
      }
    }
  }

  /** Adds every crossing and both ends of every doubled edge. */
  void addAll(Seam seam, Crossings crossings) {
    for (int c = 0; c < crossings.x.size(); c++) {
      add(crossings.x.get(c), crossings.y.get(c));
    }
    for (int d = 0; d < crossings.doubled.size(); d++) {
      int e = crossings.doubled.get(d);
      for (int p : new int[] {seam.planFrom(e), seam.planTo(e)}) {
        add(seam.plan[2 * p], seam.plan[2 * p + 1]);
      }
    }
  }

  boolean has(double x, double y) {
    return cells.has(key((int) Math.floor(x / CELL_MM), (int) Math.floor(y / CELL_MM)));
  }

  private static long key(int i, int j) {
    return EdgeMap.directed(i & Integer.MAX_VALUE, j & Integer.MAX_VALUE);
  }
}
