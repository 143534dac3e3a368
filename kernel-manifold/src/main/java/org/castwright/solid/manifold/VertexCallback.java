package org.castwright.solid.manifold;

import com.dylibso.chicory.runtime.HostFunction;
import com.dylibso.chicory.runtime.ImportValues;
import com.dylibso.chicory.runtime.Instance;
import com.dylibso.chicory.runtime.TableInstance;
import com.dylibso.chicory.wasm.WasmModule;
import com.dylibso.chicory.wasm.types.FunctionImport;
import com.dylibso.chicory.wasm.types.FunctionType;
import com.dylibso.chicory.wasm.types.ImportSection;
import com.dylibso.chicory.wasm.types.Table;
import com.dylibso.chicory.wasm.types.TableLimits;
import com.dylibso.chicory.wasm.types.TypeSection;
import com.dylibso.chicory.wasm.types.ValType;
import java.util.List;

/**
 * A Java function in the function table of an instance, so that compiled code can call it. A table
 * entry belongs to a module, so the function is the import of a small module of its own. The call
 * compares the type's index in one module with its index in the other; the small module therefore
 * repeats the type up to the index it has in the large one.
 */
final class VertexCallback {

  private static final String NAME = "visit";
  private static final FunctionType TYPE =
      FunctionType.of(List.of(ValType.I32, ValType.I32), List.of());

  private VertexVisitor visitor;

  /** A table with one slot more than the module asks for. */
  static TableInstance roomierTable(Table table, int initialValue) {
    TableLimits limits = table.limits();
    TableLimits roomier =
        new TableLimits(limits.min() + 1, Math.max(limits.max(), limits.min() + 1));
    return new TableInstance(new Table(table.elementType(), roomier), initialValue);
  }

  /** Puts the function into the last slot of the table and returns the slot. */
  int install(Instance instance, TableInstance table) {
    TypeSection.Builder types = TypeSection.builder();
    int index = 0;
    types.addFunctionType(TYPE);
    while (!instance.module().typeSection().getType(index).equals(TYPE)) {
      types.addFunctionType(TYPE);
      index++;
    }
    WasmModule module =
        WasmModule.builder()
            .setTypeSection(types.build())
            .setImportSection(
                ImportSection.builder().addImport(new FunctionImport(NAME, NAME, index)).build())
            .build();
    Instance small =
        Instance.builder(module)
            .withImportValues(
                ImportValues.builder()
                    .addFunction(
                        new HostFunction(
                            NAME,
                            NAME,
                            TYPE,
                            (caller, words) -> {
                              visitor.visit((int) words[0], (int) words[1]);
                              return null;
                            }))
                    .build())
            .build();
    int slot = table.size() - 1;
    table.setRef(slot, 0, small);
    return slot;
  }

  /** Sets who is called. */
  void with(VertexVisitor next) {
    visitor = next;
  }
}
