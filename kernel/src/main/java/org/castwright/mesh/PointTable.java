package org.castwright.mesh;

import java.util.Arrays;

/**
 * Numbers points in the order they first appear: equal coordinates get the same number. Open
 * addressing over primitive arrays, so a million points cost no objects. Equal means equal as
 * numbers: -0 and 0 are one point (kept as 0). A coordinate that is not a number equals nothing.
 */
public final class PointTable {

  private static final int FREE = -1;
  private static final int SMALLEST = 16;

  private double[] xyz;
  private int count;
  private int[] slots;

  /** An empty table with room for the number of points expected; it grows past that by itself. */
  public PointTable(int expected) {
    int room = Math.max(SMALLEST, expected);
    xyz = new double[3 * room];
    slots = freeSlots(Integer.highestOneBit(room) * 4);
  }

  /** The number of the point, the next free number if it was not seen before. */
  public int indexOf(double px, double py, double pz) {
    double x = px + 0.0;
    double y = py + 0.0;
    double z = pz + 0.0;
    int mask = slots.length - 1;
    int slot = hash(x, y, z) & mask;
    for (int i = slots[slot]; i != FREE; i = slots[slot]) {
      if (xyz[3 * i] == x && xyz[3 * i + 1] == y && xyz[3 * i + 2] == z) {
        return i;
      }
      slot = (slot + 1) & mask;
    }
    slots[slot] = count;
    append(x, y, z);
    if (2L * count > slots.length) {
      rehash();
    }
    return count - 1;
  }

  /** How many different points there are. */
  public int size() {
    return count;
  }

  /** The points in the order of their numbers, 3 coordinates each; a copy. */
  public double[] toArray() {
    return Arrays.copyOf(xyz, 3 * count);
  }

  private void append(double x, double y, double z) {
    int at = 3 * count;
    if (at == xyz.length) {
      xyz = Arrays.copyOf(xyz, xyz.length * 2);
    }
    xyz[at] = x;
    xyz[at + 1] = y;
    xyz[at + 2] = z;
    count++;
  }

  private void rehash() {
    slots = freeSlots(slots.length * 2);
    int mask = slots.length - 1;
    for (int i = 0; i < count; i++) {
      int slot = hash(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]) & mask;
      while (slots[slot] != FREE) {
        slot = (slot + 1) & mask;
      }
      slots[slot] = i;
    }
  }

  private static int[] freeSlots(int length) {
    int[] slots = new int[length];
    Arrays.fill(slots, FREE);
    return slots;
  }

  /** Odd multipliers and shifts that carry the high bits of a double, the busy ones, down. */
  private static int hash(double x, double y, double z) {
    long h = Double.doubleToRawLongBits(x) * 0x9E3779B97F4A7C15L;
    h = (h ^ (h >>> 32)) + Double.doubleToRawLongBits(y);
    h *= 0x9E3779B97F4A7C15L;
    h = (h ^ (h >>> 32)) + Double.doubleToRawLongBits(z);
    h *= 0x9E3779B97F4A7C15L;
    return (int) (h >>> 32);
  }
}
