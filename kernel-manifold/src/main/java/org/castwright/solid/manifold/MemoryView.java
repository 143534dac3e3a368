package org.castwright.solid.manifold;

/**
 * A stretch of linear memory seen as numbers of one kind.
 *
 * @param kind the number of the element kind in the module's bindings
 */
record MemoryView(FlatMemory memory, int kind, int length, int address) {

  private static final int INT8 = 0;
  private static final int UINT8 = 1;
  private static final int INT32 = 4;
  private static final int UINT32 = 5;
  private static final int FLOAT32 = 6;
  private static final int FLOAT64 = 7;

  /** A copy as the Java array of the same kind. */
  Object copy() {
    switch (kind) {
      case INT8:
      case UINT8:
        return memory.readBytes(address, length);
      case INT32:
      case UINT32:
        int[] ints = new int[length];
        for (int i = 0; i < length; i++) {
          ints[i] = memory.readInt(address + 4 * i);
        }
        return ints;
      case FLOAT32:
        float[] floats = new float[length];
        for (int i = 0; i < length; i++) {
          floats[i] = memory.readFloat(address + 4 * i);
        }
        return floats;
      case FLOAT64:
        double[] doubles = new double[length];
        for (int i = 0; i < length; i++) {
          doubles[i] = memory.readDouble(address + 8 * i);
        }
        return doubles;
      default:
        throw new EngineStopped("it passed an array of unknown kind " + kind);
    }
  }

  /** Overwrites the stretch with an array of its length and kind. */
  void set(Object source) {
    if (source instanceof int[] ints) {
      for (int i = 0; i < ints.length; i++) {
        memory.writeI32(address + 4 * i, ints[i]);
      }
    } else if (source instanceof float[] floats) {
      for (int i = 0; i < floats.length; i++) {
        memory.writeF32(address + 4 * i, floats[i]);
      }
    } else {
      throw new EngineStopped("it asked for an array of kind " + kind);
    }
  }
}
