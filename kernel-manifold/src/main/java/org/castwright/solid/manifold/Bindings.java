package org.castwright.solid.manifold;

import com.dylibso.chicory.runtime.ExportFunction;
import com.dylibso.chicory.runtime.Instance;
import com.dylibso.chicory.runtime.Machine;
import com.dylibso.chicory.runtime.TableInstance;
import com.dylibso.chicory.wasm.ChicoryException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * One instance of the module with everything its C++ code registers at start (by Emscripten's
 * embind): types, classes and functions, which can then be called by name. For one thread at a
 * time. When a call throws, the instance is {@link #isBroken()} and must be dropped.
 */
final class Bindings {

  private final Map<Integer, WireType> types = new HashMap<>();
  private final Map<String, BoundClass> classes = new HashMap<>();
  private final Map<String, BoundFunction> functions = new HashMap<>();
  private final HostValues values = new HostValues();
  private final VertexCallback vertexCallback = new VertexCallback();
  private final FlatMemory memory;
  private final Machine machine;
  private final TableInstance table;
  private final ExportFunction malloc;
  private final ExportFunction free;
  private final int vertexSlot;
  private int liveObjects;
  private boolean broken;

  /**
   * Makes an instance and lets it register itself.
   *
   * @param machineFactory the compiled code to run
   */
  Bindings(Function<Instance, Machine> machineFactory) {
    HostImports imports = new HostImports(this, values);
    Instance instance =
        Instance.builder(ManifoldWasm.load())
            .withImportValues(imports.values(ManifoldWasm.load()))
            .withStart(false)
            .withMachineFactory(machineFactory)
            .withMemoryFactory(FlatMemory::new)
            .withTableFactory(VertexCallback::roomierTable)
            .build();
    memory = (FlatMemory) instance.memory();
    machine = instance.getMachine();
    table = instance.table(0);
    malloc = instance.export(ModuleNames.MALLOC);
    free = instance.export(ModuleNames.FREE);
    vertexSlot = vertexCallback.install(instance, table);
    instance.export(ModuleNames.START).apply();
  }

  FlatMemory memory() {
    return memory;
  }

  boolean isBroken() {
    return broken;
  }

  /** How many C++ objects and host values are held: the same before and after a clean operation. */
  int live() {
    return liveObjects + values.live();
  }

  void register(int id, WireType type) {
    types.put(id, type);
  }

  void register(BoundClass type) {
    classes.put(type.name(), type);
  }

  void register(BoundFunction f) {
    functions.put(f.name() + "/" + f.argumentCount(), f);
  }

  boolean hasType(int id) {
    return types.containsKey(id);
  }

  WireType type(int id) {
    WireType type = types.get(id);
    if (type == null) {
      throw new IllegalStateException("the module uses an unregistered type " + id);
    }
    return type;
  }

  void objectMade() {
    liveObjects++;
  }

  void objectGone(BoundClass type, int address) {
    liveObjects--;
    if (!broken) {
      callSlot(type.destructor(), address);
    }
  }

  /** Calls a free function by name. */
  Object callFunction(String name, Object... arguments) {
    BoundFunction f = functions.get(name + "/" + arguments.length);
    if (f == null) {
      throw new IllegalStateException(
          "the module has no " + name + " with " + arguments.length + " arguments");
    }
    return invoke(f, null, arguments);
  }

  NativeObject make(String className, Object... arguments) {
    return (NativeObject)
        invoke(classes.get(className).constructor(arguments.length), null, arguments);
  }

  Object callMethod(NativeObject self, String method, Object... arguments) {
    return invoke(self.type().method(method, arguments.length), self, arguments);
  }

  /**
   * Calls {@code method}, which visits all vertices of its object, and lets {@code visitor} see
   * them.
   */
  NativeObject visitVertices(NativeObject self, String method, VertexVisitor visitor) {
    vertexCallback.with(visitor);
    try {
      return self.make(method, vertexSlot);
    } finally {
      vertexCallback.with(null);
    }
  }

  private Object invoke(BoundFunction f, NativeObject self, Object... arguments) {
    int first = f.firstArgument();
    long[] words = new long[arguments.length + first];
    List<Runnable> after = new ArrayList<>();
    words[0] = f.context();
    if (f.method()) {
      words[1] = type(f.types().get(1)).toWire(self, after);
    }
    for (int i = 0; i < arguments.length; i++) {
      words[first + i] = type(f.types().get(first + i)).toWire(arguments[i], after);
    }
    Object result = type(f.types().get(0)).fromWire(callSlot(f.invoker(), words));
    after.forEach(Runnable::run);
    return result;
  }

  /** Calls the function in a table slot; a call that throws breaks the instance. */
  long callSlot(int slot, long... words) {
    if (broken) {
      throw new EngineStopped("its instance has stopped before");
    }
    boolean done = false;
    try {
      long[] result = machine.call(table.requiredRef(slot), words);
      done = true;
      return result == null || result.length == 0 ? 0 : result[0];
    } catch (ChicoryException | IndexOutOfBoundsException | StackOverflowError e) {
      throw new EngineStopped("the compiled code crashed (" + e.getMessage() + ")", e);
    } finally {
      broken |= !done;
    }
  }

  int allocate(int bytes) {
    return (int) malloc.apply(bytes)[0];
  }

  void free(int address) {
    free.apply(address);
  }

  /** Zero-terminated text in linear memory. */
  String text(int address) {
    int end = address;
    while (memory.read(end) != 0) {
      end++;
    }
    return new String(memory.readBytes(address, end - address), StandardCharsets.ISO_8859_1);
  }

  /** {@code count} 32-bit integers in linear memory. */
  List<Integer> ints(int count, int address) {
    List<Integer> out = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      out.add(memory.readInt(address + 4 * i));
    }
    return List.copyOf(out);
  }
}
