package org.castwright.solid.manifold.tuner;

import org.objectweb.asm.Opcodes;
import org.objectweb.asm.tree.VarInsnNode;

/** What a local variable of compiled code can hold, and the instructions that handle it. */
enum Kind {
  INT("I", Opcodes.ILOAD, Opcodes.ISTORE, Opcodes.ICONST_0, Opcodes.IALOAD, Opcodes.IASTORE, 1),
  LONG("J", Opcodes.LLOAD, Opcodes.LSTORE, Opcodes.LCONST_0, Opcodes.LALOAD, Opcodes.LASTORE, 2),
  FLOAT("F", Opcodes.FLOAD, Opcodes.FSTORE, Opcodes.FCONST_0, Opcodes.FALOAD, Opcodes.FASTORE, 1),
  DOUBLE("D", Opcodes.DLOAD, Opcodes.DSTORE, Opcodes.DCONST_0, Opcodes.DALOAD, Opcodes.DASTORE, 2),
  OBJECT("A", Opcodes.ALOAD, Opcodes.ASTORE, Opcodes.ACONST_NULL, 0, 0, 1);

  final String descriptor;
  final int load;
  final int store;
  final int zero;
  final int arrayLoad;
  final int arrayStore;

  /** Local variable slots. */
  final int width;

  Kind(String descriptor, int load, int store, int zero, int arrayLoad, int arrayStore, int width) {
    this.descriptor = descriptor;
    this.load = load;
    this.store = store;
    this.zero = zero;
    this.arrayLoad = arrayLoad;
    this.arrayStore = arrayStore;
    this.width = width;
  }

  /** The field of the memory that carries several values of this kind out of a method. */
  String carrier() {
    return "carried" + descriptor;
  }

  static Kind of(VarInsnNode at) {
    for (Kind kind : values()) {
      if (at.getOpcode() == kind.load || at.getOpcode() == kind.store) {
        return kind;
      }
    }
    throw new IllegalStateException("unexpected instruction " + at.getOpcode());
  }

  static Kind of(String descriptor) {
    for (Kind kind : values()) {
      if (kind.descriptor.equals(descriptor)) {
        return kind;
      }
    }
    throw new IllegalStateException("unexpected type " + descriptor);
  }
}
