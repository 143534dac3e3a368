package org.castwright.solid.manifold;

import java.util.Arrays;

/**
 * Memory access as the tuned compiled code calls it: a base, a constant offset, and the memory. The
 * names are those of the calls they replace; nothing else uses them.
 */
final class MemoryAccess {

  private MemoryAccess() {}

  static byte memoryReadByte(int base, int offset, FlatMemory memory) {
    return memory.bytes[base + offset];
  }

  static short memoryReadShort(int base, int offset, FlatMemory memory) {
    return (short) FlatMemory.SHORT.get(memory.bytes, base + offset);
  }

  static int memoryReadInt(int base, int offset, FlatMemory memory) {
    return (int) FlatMemory.INT.get(memory.bytes, base + offset);
  }

  static long memoryReadLong(int base, int offset, FlatMemory memory) {
    return (long) FlatMemory.LONG.get(memory.bytes, base + offset);
  }

  static float memoryReadFloat(int base, int offset, FlatMemory memory) {
    return (float) FlatMemory.FLOAT.get(memory.bytes, base + offset);
  }

  static double memoryReadDouble(int base, int offset, FlatMemory memory) {
    return (double) FlatMemory.DOUBLE.get(memory.bytes, base + offset);
  }

  static void memoryWriteByte(int base, byte value, int offset, FlatMemory memory) {
    memory.bytes[base + offset] = value;
  }

  static void memoryWriteShort(int base, short value, int offset, FlatMemory memory) {
    FlatMemory.SHORT.set(memory.bytes, base + offset, value);
  }

  static void memoryWriteInt(int base, int value, int offset, FlatMemory memory) {
    FlatMemory.INT.set(memory.bytes, base + offset, value);
  }

  static void memoryWriteLong(int base, long value, int offset, FlatMemory memory) {
    FlatMemory.LONG.set(memory.bytes, base + offset, value);
  }

  static void memoryWriteFloat(int base, float value, int offset, FlatMemory memory) {
    FlatMemory.FLOAT.set(memory.bytes, base + offset, value);
  }

  static void memoryWriteDouble(int base, double value, int offset, FlatMemory memory) {
    FlatMemory.DOUBLE.set(memory.bytes, base + offset, value);
  }

  static void memoryCopy(int to, int from, int size, FlatMemory memory) {
    System.arraycopy(memory.bytes, from, memory.bytes, to, size);
  }

  static void memoryFill(int from, byte value, int size, FlatMemory memory) {
    Arrays.fill(memory.bytes, from, from + size, value);
  }

  static int memoryPages(FlatMemory memory) {
    return memory.pages();
  }
}
