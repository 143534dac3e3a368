package org.castwright.solid.manifold;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The wire types the kernel uses; a type it never passes keeps the refusals of the base class. */
final class WireTypes {

  private WireTypes() {}

  /** A type that is registered but never used by this program. */
  static final class Unused extends WireType {
    Unused(String name) {
      super(name);
    }
  }

  static final class Nothing extends WireType {
    Nothing() {
      super("void");
    }

    @Override
    Object fromWire(long word) {
      return HostValues.UNDEFINED;
    }
  }

  static final class Bool extends WireType {
    Bool() {
      super("bool");
    }

    @Override
    Object fromWire(long word) {
      return (int) word != 0;
    }

    @Override
    long toWire(Object value, List<Runnable> after) {
      return (Boolean) value ? 1 : 0;
    }
  }

  /** Integers of up to 4 bytes, signed and unsigned. */
  static final class Int extends WireType {
    private final FlatMemory memory;
    private final int size;
    private final boolean signed;

    Int(String name, FlatMemory memory, int size, boolean signed) {
      super(name);
      this.memory = memory;
      this.size = size;
      this.signed = signed;
    }

    @Override
    Object fromWire(long word) {
      int shift = Long.SIZE - Byte.SIZE * size;
      return signed ? word << shift >> shift : word << shift >>> shift;
    }

    @Override
    long toWire(Object value, List<Runnable> after) {
      return ((Number) value).longValue();
    }

    @Override
    Object fromMemory(int address) {
      return fromWire(
          size == 1
              ? memory.read(address)
              : size == 2 ? memory.readShort(address) : memory.readInt(address));
    }
  }

  static final class Real extends WireType {
    private final FlatMemory memory;
    private final boolean single;

    Real(String name, FlatMemory memory, boolean single) {
      super(name);
      this.memory = memory;
      this.single = single;
    }

    boolean isSingle() {
      return single;
    }

    @Override
    Object fromWire(long word) {
      return single ? Float.intBitsToFloat((int) word) : Double.longBitsToDouble(word);
    }

    @Override
    long toWire(Object value, List<Runnable> after) {
      double v = ((Number) value).doubleValue();
      return single
          ? Integer.toUnsignedLong(Float.floatToRawIntBits((float) v))
          : Double.doubleToRawLongBits(v);
    }

    @Override
    Object fromMemory(int address) {
      return single ? (double) memory.readFloat(address) : memory.readDouble(address);
    }
  }

  /** A Java object held by number. */
  static final class HostObject extends WireType {
    private final HostValues values;
    private final FlatMemory memory;

    HostObject(String name, HostValues values, FlatMemory memory) {
      super(name);
      this.values = values;
      this.memory = memory;
    }

    @Override
    Object fromWire(long word) {
      Object value = values.get((int) word);
      values.release((int) word);
      return value;
    }

    @Override
    long toWire(Object value, List<Runnable> after) {
      return values.handle(value);
    }

    @Override
    Object fromMemory(int address) {
      return fromWire(memory.readInt(address));
    }
  }

  static final class View extends WireType {
    private final FlatMemory memory;
    private final int kind;

    View(String name, FlatMemory memory, int kind) {
      super(name);
      this.memory = memory;
      this.kind = kind;
    }

    @Override
    Object fromMemory(int address) {
      return new MemoryView(memory, kind, memory.readInt(address), memory.readInt(address + 4));
    }
  }

  /** Text, results only: the length, then the bytes. */
  static final class Text extends WireType {
    private final Bindings bindings;

    Text(Bindings bindings) {
      super("std::string");
      this.bindings = bindings;
    }

    @Override
    Object fromWire(long word) {
      int address = (int) word;
      FlatMemory memory = bindings.memory();
      byte[] bytes = memory.readBytes(address + 4, memory.readInt(address));
      bindings.free(address);
      return new String(bytes, StandardCharsets.UTF_8);
    }
  }

  /** A C++ object by address. */
  static final class Pointer extends WireType {
    private final Bindings bindings;
    private final BoundClass type;

    Pointer(String name, Bindings bindings, BoundClass type) {
      super(name);
      this.bindings = bindings;
      this.type = type;
    }

    BoundClass type() {
      return type;
    }

    @Override
    Object fromWire(long word) {
      return (int) word == 0 ? null : new NativeObject(bindings, type, (int) word);
    }

    @Override
    long toWire(Object value, List<Runnable> after) {
      NativeObject object = (NativeObject) value;
      if (object.type() != type) {
        throw new IllegalStateException("a " + object.type().name() + " is not a " + type.name());
      }
      return object.address();
    }

    @Override
    Object fromMemory(int address) {
      return fromWire(bindings.memory().readInt(address));
    }
  }

  /** A struct of doubles, arguments only, given as an array in the order of its fields. */
  static final class Struct extends WireType {
    private final Bindings bindings;
    private final int constructor;
    private final int destructor;
    private final List<StructField> fields = new ArrayList<>();

    Struct(String name, Bindings bindings, int constructor, int destructor) {
      super(name);
      this.bindings = bindings;
      this.constructor = constructor;
      this.destructor = destructor;
    }

    void add(StructField field) {
      fields.add(field);
    }

    @Override
    long toWire(Object value, List<Runnable> after) {
      double[] numbers = (double[]) value;
      long address = bindings.callSlot(constructor);
      for (int i = 0; i < fields.size(); i++) {
        StructField f = fields.get(i);
        long word = bindings.type(f.type()).toWire(numbers[i], after);
        bindings.callSlot(f.setter(), f.context(), address, word);
      }
      after.add(() -> bindings.callSlot(destructor, address));
      return address;
    }
  }

  /** One field of a struct: its type number, the slot of its setter and the setter's context. */
  record StructField(int type, int setter, int context) {}
}
