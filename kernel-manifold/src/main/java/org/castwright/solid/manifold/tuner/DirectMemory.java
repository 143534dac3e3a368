package org.castwright.solid.manifold.tuner;

import org.objectweb.asm.Opcodes;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.MethodInsnNode;
import org.objectweb.asm.tree.MethodNode;
import org.objectweb.asm.tree.TypeInsnNode;

/**
 * Lets compiled code reach the linear memory by static calls on one class instead of interface
 * calls, and takes out the question, asked in every turn of every loop, whether the thread was
 * interrupted.
 */
final class DirectMemory {

  static final String INTERFACE = "com/dylibso/chicory/runtime/Memory";
  static final String FLAT = "org/castwright/solid/manifold/FlatMemory";

  private static final String INSTANCE = "com/dylibso/chicory/runtime/Instance";
  private static final String ACCESS = "org/castwright/solid/manifold/MemoryAccess";
  private static final String SHADED = "org/castwright/solid/manifold/ManifoldWasmMachineShaded";

  private int accesses;
  private int checks;

  void apply(ClassNode code) {
    for (MethodNode method : code.methods) {
      for (AbstractInsnNode at : method.instructions.toArray()) {
        if (at instanceof MethodInsnNode call) {
          redirect(method, call);
        }
      }
    }
  }

  /**
   * Stops a build in which there was nothing to change.
   *
   * @throws IllegalStateException if so
   */
  void requireChanges() {
    if (accesses == 0 || checks == 0) {
      throw new IllegalStateException(
          "expected memory accesses and interrupt checks, found " + accesses + " and " + checks);
    }
  }

  private void redirect(MethodNode method, MethodInsnNode call) {
    if (call.owner.equals(INSTANCE) && call.name.equals("memory")) {
      call.desc = "()L" + INTERFACE + ";";
      method.instructions.insert(call, new TypeInsnNode(Opcodes.CHECKCAST, FLAT));
    } else if (call.owner.equals(SHADED) && call.name.equals("checkInterruption")) {
      method.instructions.remove(call);
      checks++;
    } else if (call.owner.equals(SHADED) && call.desc.contains(FLAT)) {
      call.owner = ACCESS;
      accesses++;
    }
  }
}
