package org.castwright.solid.manifold;

import java.util.Arrays;

/**
 * Java objects that compiled code holds by number, with reference counts. Numbers are even; those
 * below ten are the constants every instance knows, as the bindings of the module expect.
 */
final class HostValues {

  /** The value of a property that is not there. */
  static final Object UNDEFINED = new Object();

  private static final int UNDEFINED_HANDLE = 2;
  private static final int NULL_HANDLE = 4;
  private static final int TRUE_HANDLE = 6;
  private static final int FALSE_HANDLE = 8;
  private static final int CONSTANTS = 5;

  private Object[] values = new Object[64];
  private int[] references = new int[64];
  private int[] free = new int[64];
  private int freeCount;
  private int used = CONSTANTS;

  int handle(Object value) {
    if (value == UNDEFINED) {
      return UNDEFINED_HANDLE;
    }
    if (value == null) {
      return NULL_HANDLE;
    }
    if (value instanceof Boolean b) {
      return b ? TRUE_HANDLE : FALSE_HANDLE;
    }
    int i = freeCount > 0 ? free[--freeCount] : used++;
    if (i >= values.length) {
      values = Arrays.copyOf(values, 2 * i);
      references = Arrays.copyOf(references, 2 * i);
      free = Arrays.copyOf(free, 2 * i);
    }
    values[i] = value;
    references[i] = 1;
    return 2 * i;
  }

  Object get(int handle) {
    switch (handle) {
      case UNDEFINED_HANDLE:
        return UNDEFINED;
      case NULL_HANDLE:
        return null;
      case TRUE_HANDLE:
        return true;
      case FALSE_HANDLE:
        return false;
      default:
        return values[handle / 2];
    }
  }

  void retain(int handle) {
    if (handle >= 2 * CONSTANTS) {
      references[handle / 2]++;
    }
  }

  void release(int handle) {
    if (handle >= 2 * CONSTANTS && --references[handle / 2] == 0) {
      values[handle / 2] = null;
      free[freeCount++] = handle / 2;
    }
  }

  /** How many values compiled code holds now. */
  int live() {
    return used - CONSTANTS - freeCount;
  }
}
