package org.castwright.solid.manifold;

import com.dylibso.chicory.runtime.HostFunction;
import com.dylibso.chicory.runtime.ImportValues;
import com.dylibso.chicory.runtime.Memory;
import com.dylibso.chicory.wasm.WasmModule;
import com.dylibso.chicory.wasm.types.FunctionImport;
import com.dylibso.chicory.wasm.types.FunctionType;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The functions the module imports, under the one-letter names its build gave them (version 3.5.4):
 * registration of types, classes and functions, access to host values, memory growth, abort.
 */
final class HostImports {

  /**
   * Memory doubles when it must grow, or grows by so much beyond what is there: growing copies it
   * all and makes the heap look for one large place, so it must stay rare.
   */
  private static final long MOST_SPARE_BYTES = 96L << 20;

  private static final int CALL_METHOD = 1;
  private static final int CAST = 3;
  private static final int PACKED_ARGUMENT_BYTES = 8;

  private final Bindings bindings;
  private final HostValues values;
  private final List<HostCall> calls = new ArrayList<>();
  private final Map<String, Import> imports = new HashMap<>();

  HostImports(Bindings bindings, HostValues values) {
    this.bindings = bindings;
    this.values = values;
    system();
    simpleTypes();
    compositeTypes();
    classesAndFunctions();
    hostValues();
    hostCalls();
  }

  /** The import values for an instance of {@code module}. */
  ImportValues values(WasmModule module) {
    ImportValues.Builder out = ImportValues.builder();
    for (int i = 0; i < module.importSection().importCount(); i++) {
      FunctionImport f = (FunctionImport) module.importSection().getImport(i);
      FunctionType type = module.typeSection().getType(f.typeIndex());
      Import body = imports.get(f.name());
      if (body == null) {
        throw new IllegalStateException("the module imports an unknown function " + f.name());
      }
      boolean returns = !type.returns().isEmpty();
      out.addFunction(
          new HostFunction(
              f.module(),
              f.name(),
              type,
              (instance, words) -> {
                long result = body.apply(words);
                return returns ? new long[] {result} : null;
              }));
    }
    return out.build();
  }

  private void system() {
    imports.put("l", a -> stop("the C++ code threw an exception"));
    imports.put("C", a -> stop("the C++ code aborted"));
    imports.put("D", a -> grow(Integer.toUnsignedLong((int) a[0])));
    imports.put("q", a -> 0);
    imports.put("m", a -> 0);
  }

  private void simpleTypes() {
    define("H", a -> register(a[0], new WireTypes.Nothing()));
    define("G", a -> register(a[0], new WireTypes.Bool()));
    define(
        "p",
        a -> register(a[0], new WireTypes.Int(text(a[1]), memory(), (int) a[2], (int) a[3] != 0)));
    define("z", a -> register(a[0], new WireTypes.Unused(text(a[1]))));
    define("y", a -> register(a[0], new WireTypes.Real(text(a[1]), memory(), a[2] == Float.BYTES)));
    define("F", a -> register(a[0], new WireTypes.Text(bindings)));
    define("w", a -> register(a[0], new WireTypes.Unused("std::wstring")));
    define("E", a -> register(a[0], new WireTypes.HostObject("val", values, memory())));
    define("n", a -> register(a[0], new WireTypes.HostObject("optional", values, memory())));
    define(
        "h",
        a -> {
          if (!bindings.hasType((int) a[0])) {
            register(a[0], new WireTypes.View(text(a[2]), memory(), (int) a[1]));
          }
        });
  }

  private void compositeTypes() {
    define("x", a -> register(a[0], new WireTypes.Unused(text(a[1]))));
    imports.put("d", a -> 0);
    define(
        "r",
        a -> register(a[0], new WireTypes.Struct(text(a[1]), bindings, (int) a[3], (int) a[5])));
    define(
        "k",
        a -> {
          WireTypes.Struct struct = (WireTypes.Struct) bindings.type((int) a[0]);
          struct.add(new WireTypes.StructField((int) a[6], (int) a[8], (int) a[9]));
        });
  }

  private void classesAndFunctions() {
    define(
        "j",
        a -> {
          BoundClass type = new BoundClass(text(a[10]), (int) a[12]);
          bindings.register(type);
          for (int i = 0; i < 3; i++) {
            register(a[i], new WireTypes.Pointer(type.name(), bindings, type));
          }
        });
    define(
        "i",
        a -> {
          BoundClass type = pointed(a[0]);
          type.addConstructor(function(type.name(), a[1], a[2], a[4], a[5], false));
        });
    define(
        "a",
        a -> {
          String name = bareName(text(a[1]));
          pointed(a[0]).addMethod(name, function(name, a[2], a[3], a[5], a[6], true));
        });
    define(
        "c", a -> bindings.register(function(bareName(text(a[0])), a[1], a[2], a[4], a[5], false)));
  }

  private void hostValues() {
    define("b", a -> values.release((int) a[0]));
    define("t", a -> values.retain((int) a[0]));
    imports.put("o", a -> same(values.get((int) a[0]), values.get((int) a[1])) ? 1 : 0);
    imports.put("s", a -> values.handle(text(a[0])));
    imports.put("A", a -> values.handle(new LinkedHashMap<Object, Object>()));
    imports.put("B", a -> values.handle(property(values.get((int) a[0]), values.get((int) a[1]))));
    define(
        "v",
        a -> {
          @SuppressWarnings("unchecked")
          Map<Object, Object> map = (Map<Object, Object>) values.get((int) a[0]);
          map.put(values.get((int) a[1]), values.get((int) a[2]));
        });
    define("u", a -> ((MemoryView) values.get((int) a[0])).set(values.get((int) a[1])));
  }

  private void hostCalls() {
    imports.put(
        "g",
        a -> {
          calls.add(new HostCall(bindings.ints((int) a[0], (int) a[1]), (int) a[2]));
          return calls.size() - 1L;
        });
    imports.put("f", this::hostCall);
    define(
        "e",
        a -> {
          @SuppressWarnings("unchecked")
          List<Runnable> after = (List<Runnable>) values.get((int) a[0]);
          after.forEach(Runnable::run);
          values.release((int) a[0]);
        });
  }

  /** Compiled code calls a method of a host value, or turns a C++ value into a host value. */
  private long hostCall(long[] a) {
    HostCall call = calls.get((int) a[0]);
    Object[] arguments = new Object[call.types().size() - 1];
    for (int i = 0; i < arguments.length; i++) {
      arguments[i] =
          bindings.type(call.types().get(i + 1)).fromMemory((int) a[4] + PACKED_ARGUMENT_BYTES * i);
    }
    Object result;
    if (call.kind() == CAST) {
      result = arguments[0];
    } else if (call.kind() == CALL_METHOD) {
      result = method((MemoryView) values.get((int) a[1]), text(a[2]), arguments);
    } else {
      throw new EngineStopped("it asked for an unknown host call " + call.kind());
    }
    WireType type = bindings.type(call.types().get(0));
    List<Runnable> after = new ArrayList<>();
    long word = type.toWire(result, after);
    if (!after.isEmpty()) {
      memory().writeI32((int) a[3], values.handle(after));
    }
    // results of host calls travel as doubles, whole numbers too
    if (type instanceof WireTypes.Real real) {
      return real.isSingle()
          ? Double.doubleToRawLongBits((double) Float.intBitsToFloat((int) word))
          : word;
    }
    return Double.doubleToRawLongBits((double) Integer.toUnsignedLong((int) word));
  }

  private static Object method(MemoryView view, String name, Object[] arguments) {
    if (name.equals("slice")) {
      return view.copy();
    }
    if (name.equals("set")) {
      view.set(arguments[0]);
      return HostValues.UNDEFINED;
    }
    throw new EngineStopped("it called an unknown method " + name);
  }

  private static Object property(Object owner, Object key) {
    if (owner instanceof Map<?, ?> map) {
      return map.containsKey(key) ? map.get(key) : HostValues.UNDEFINED;
    }
    if (owner instanceof int[] ints && key.equals("length")) {
      return ints.length;
    }
    if (owner instanceof float[] floats && key.equals("length")) {
      return floats.length;
    }
    throw new EngineStopped("it asked for an unknown property " + key);
  }

  private static boolean same(Object a, Object b) {
    boolean noA = a == null || a == HostValues.UNDEFINED;
    boolean noB = b == null || b == HostValues.UNDEFINED;
    return (noA || noB) ? (noA && noB) : a.equals(b);
  }

  /** Never reports failure to the C++ code, which would write through a null pointer. */
  private long grow(long wanted) {
    Memory memory = memory();
    long old = (long) memory.pages() * Memory.PAGE_SIZE;
    long most = (long) memory.maximumPages() * Memory.PAGE_SIZE;
    if (wanted <= most) {
      long spare = Math.min(old, MOST_SPARE_BYTES);
      long roomy = Math.min(most, Math.max(wanted, old + spare));
      if (memory.grow(pages(roomy - old)) >= 0 || memory.grow(pages(wanted - old)) >= 0) {
        return 1;
      }
    }
    throw new EngineStopped(
        "it needs "
            + (wanted >> 20)
            + " MB, more than one operation may have (2047 MB, and what the Java heap has left);"
            + " use coarser meshes or a larger heap");
  }

  private static int pages(long bytes) {
    return (int) ((bytes + Memory.PAGE_SIZE - 1) / Memory.PAGE_SIZE);
  }

  private static long stop(String why) {
    throw new EngineStopped(why);
  }

  private void define(String name, Definition body) {
    imports.put(
        name,
        a -> {
          body.accept(a);
          return 0;
        });
  }

  private void register(long id, WireType type) {
    bindings.register((int) id, type);
  }

  private BoundClass pointed(long type) {
    return ((WireTypes.Pointer) bindings.type((int) type)).type();
  }

  private BoundFunction function(
      String name, long count, long types, long invoker, long context, boolean method) {
    return new BoundFunction(
        name, (int) invoker, (int) context, bindings.ints((int) count, (int) types), method);
  }

  private FlatMemory memory() {
    return bindings.memory();
  }

  private String text(long address) {
    return bindings.text((int) address);
  }

  /** Some names come with an argument list behind them. */
  private static String bareName(String name) {
    int i = name.indexOf('(');
    return (i < 0 ? name : name.substring(0, i)).trim();
  }

  private interface Import {
    long apply(long[] words);
  }

  private interface Definition {
    void accept(long[] words);
  }

  /** A way to call the host: result type, then argument types, and what kind of call it is. */
  private record HostCall(List<Integer> types, int kind) {}
}
