package org.castwright.solid.manifold.tuner;

import java.lang.reflect.Method;
import java.util.HashSet;
import java.util.Set;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;
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

  private final Set<String> known = knownAccesses();
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
      if (!known.contains(call.name + call.desc)) {
        throw new IllegalStateException("no direct access for " + call.name + call.desc);
      }
      call.owner = ACCESS;
      accesses++;
    }
  }

  /** Names and descriptors of the methods that compiled code may be sent to. */
  private static Set<String> knownAccesses() {
    Set<String> out = new HashSet<>();
    try {
      Class<?> access = Class.forName(ACCESS.replace('/', '.'));
      for (Method method : access.getDeclaredMethods()) {
        out.add(method.getName() + Type.getMethodDescriptor(method));
      }
    } catch (ClassNotFoundException e) {
      throw new IllegalStateException("compile the kernel before tuning", e);
    }
    return out;
  }
}
