package org.castwright.solid.manifold;

import com.dylibso.chicory.runtime.ConstantEvaluators;
import com.dylibso.chicory.runtime.Instance;
import com.dylibso.chicory.runtime.Memory;
import com.dylibso.chicory.wasm.types.ActiveDataSegment;
import com.dylibso.chicory.wasm.types.DataSegment;
import com.dylibso.chicory.wasm.types.MemoryLimits;
import com.dylibso.chicory.wasm.types.PassiveDataSegment;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * The linear memory of one instance as a single byte array, so that an access is one bounds check
 * and one load. Growing copies. An address outside the array throws {@link
 * IndexOutOfBoundsException}; addresses end below 2 GB.
 */
final class FlatMemory implements Memory {

  static final VarHandle SHORT = view(short[].class);
  static final VarHandle INT = view(int[].class);
  static final VarHandle LONG = view(long[].class);
  static final VarHandle FLOAT = view(float[].class);
  static final VarHandle DOUBLE = view(double[].class);

  /** As many as the tuner counts on. */
  private static final int CARRIED = 64;

  // values that tuned code brings back from a loop that became a method of its own
  final int[] carriedI = new int[CARRIED];
  final long[] carriedJ = new long[CARRIED];
  final float[] carriedF = new float[CARRIED];
  final double[] carriedD = new double[CARRIED];

  private final MemoryLimits limits;
  private DataSegment[] segments = {};

  /** All of the memory; compiled code reads and writes it directly. */
  byte[] bytes;

  FlatMemory(MemoryLimits limits) {
    this.limits = limits;
    this.bytes = new byte[limits.initialPages() * PAGE_SIZE];
  }

  private static VarHandle view(Class<?> array) {
    return MethodHandles.byteArrayViewVarHandle(array, ByteOrder.LITTLE_ENDIAN);
  }

  /** How many bytes it has now. */
  long bytes() {
    return bytes.length;
  }

  @Override
  public int pages() {
    return bytes.length / PAGE_SIZE;
  }

  /** Returns the old number of pages, or -1 if the memory or the heap has no room. */
  @Override
  public int grow(int more) {
    int old = pages();
    if (more < 0 || more > maximumPages() - old) {
      return -1;
    }
    try {
      bytes = Arrays.copyOf(bytes, (old + more) * PAGE_SIZE);
    } catch (OutOfMemoryError e) {
      return -1;
    }
    return old;
  }

  @Override
  public int initialPages() {
    return limits.initialPages();
  }

  @Override
  public int maximumPages() {
    return Math.min(limits.maximumPages(), RUNTIME_MAX_PAGES);
  }

  @Override
  public boolean shared() {
    return false;
  }

  @Override
  @Deprecated
  @SuppressWarnings("removal")
  public Object lock(int address) {
    throw new UnsupportedOperationException("this memory is for one thread");
  }

  @Override
  @Deprecated
  @SuppressWarnings("removal")
  public int waitOn(int address, int expected, long timeout) {
    throw new UnsupportedOperationException("this memory is for one thread");
  }

  @Override
  @Deprecated
  @SuppressWarnings("removal")
  public int waitOn(int address, long expected, long timeout) {
    throw new UnsupportedOperationException("this memory is for one thread");
  }

  @Override
  @Deprecated
  @SuppressWarnings("removal")
  public int notify(int address, int maxThreads) {
    throw new UnsupportedOperationException("this memory is for one thread");
  }

  @Override
  public void initialize(Instance instance, DataSegment[] data) {
    initialize(instance, data, 0);
  }

  @Override
  public void initialize(Instance instance, DataSegment[] data, int memoryIndex) {
    if (data == null) {
      return;
    }
    segments = data.clone();
    for (DataSegment segment : data) {
      if (segment instanceof ActiveDataSegment active) {
        long[] at = ConstantEvaluators.computeConstantValue(instance, active.offsetInstructions());
        write((int) at[0], active.data(), 0, active.data().length);
      }
    }
  }

  @Override
  public void initPassiveSegment(int segment, int destination, int offset, int size) {
    write(destination, segments[segment].data(), offset, size);
  }

  @Override
  public void drop(int segment) {
    segments[segment] = PassiveDataSegment.EMPTY;
  }

  @Override
  public void write(int address, byte[] data, int offset, int size) {
    System.arraycopy(data, offset, bytes, address, size);
  }

  @Override
  public byte read(int address) {
    return bytes[address];
  }

  @Override
  public byte[] readBytes(int address, int length) {
    return Arrays.copyOfRange(bytes, address, address + length);
  }

  @Override
  public void writeI32(int address, int value) {
    INT.set(bytes, address, value);
  }

  @Override
  public int readInt(int address) {
    return (int) INT.get(bytes, address);
  }

  @Override
  public void writeLong(int address, long value) {
    LONG.set(bytes, address, value);
  }

  @Override
  public long readLong(int address) {
    return (long) LONG.get(bytes, address);
  }

  @Override
  public void writeShort(int address, short value) {
    SHORT.set(bytes, address, value);
  }

  @Override
  public short readShort(int address) {
    return (short) SHORT.get(bytes, address);
  }

  @Override
  public long readU16(int address) {
    return Short.toUnsignedLong(readShort(address));
  }

  @Override
  public void writeByte(int address, byte value) {
    bytes[address] = value;
  }

  @Override
  public void writeF32(int address, float value) {
    FLOAT.set(bytes, address, value);
  }

  @Override
  public long readF32(int address) {
    return readInt(address);
  }

  @Override
  public float readFloat(int address) {
    return (float) FLOAT.get(bytes, address);
  }

  @Override
  public void writeF64(int address, double value) {
    DOUBLE.set(bytes, address, value);
  }

  @Override
  public double readDouble(int address) {
    return (double) DOUBLE.get(bytes, address);
  }

  @Override
  public long readF64(int address) {
    return readLong(address);
  }

  @Override
  public void zero() {
    Arrays.fill(bytes, (byte) 0);
  }

  @Override
  public void fill(byte value, int from, int to) {
    Arrays.fill(bytes, from, to, value);
  }

  @Override
  public void copy(int destination, int source, int size) {
    System.arraycopy(bytes, source, bytes, destination, size);
  }
}
