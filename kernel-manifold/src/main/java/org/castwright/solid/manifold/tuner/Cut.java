package org.castwright.solid.manifold.tuner;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.IincInsnNode;
import org.objectweb.asm.tree.LabelNode;
import org.objectweb.asm.tree.VarInsnNode;

/**
 * A loop that can be moved out of its method: a stretch of instructions entered only at its first
 * one, left with an empty stack, that touches no objects but the memory and the instance.
 */
final class Cut {

  /** The JVM allows 255; the memory, the instance and some temporaries come on top. */
  static final int MOST_PARAMETER_SLOTS = 240;

  /** Places in each carrying array; the last is for the value of a return inside the loop. */
  static final int CARRIED = 64;

  static final String INSTANCE = "com/dylibso/chicory/runtime/Instance";

  final MethodCode code;
  final int start;
  final int end;

  /** Variables by number, with what they hold, except memory and instance. */
  final TreeMap<Integer, Kind> used = new TreeMap<>();

  /** Variables whose values the loop needs from before. */
  final List<Integer> in = new ArrayList<>();

  /** Variables the loop changes and that are needed after it. */
  final List<Integer> out = new ArrayList<>();

  /** Labels outside that the loop jumps to. */
  final List<LabelNode> exits = new ArrayList<>();

  /** Whether the loop can run off its end. */
  final boolean falls;

  /** Whether the method can return from inside the loop. */
  boolean returns;

  int memory = -1;
  int instance = -1;

  private final BitSet stored = new BitSet();

  private Cut(MethodCode code, int start, int end) {
    this.code = code;
    this.start = start;
    this.end = end;
    this.falls = code.fallsThrough(end);
  }

  /** The cut that moves instructions {@code start} to {@code end}, or null if it cannot be done. */
  static Cut of(MethodCode code, int start, int end) {
    Cut cut = new Cut(code, start, end);
    boolean possible =
        cut.entersAtStartOnly()
            && code.hasEmptyStack(start)
            && cut.findExits()
            && cut.findParameters()
            && cut.findVariables();
    return possible && cut.fits() ? cut : null;
  }

  /** How many ways lead out of the loop. */
  int ways() {
    return exits.size() + (falls ? 1 : 0) + (returns ? 1 : 0);
  }

  private boolean isInside(int i) {
    return i >= start && i <= end;
  }

  private boolean entersAtStartOnly() {
    for (int i = 0; i < code.length(); i++) {
      if (!isInside(i)) {
        for (LabelNode target : code.targets(i)) {
          int p = code.position(target);
          if (isInside(p) && p != start) {
            return false;
          }
        }
      }
    }
    return true;
  }

  private boolean findExits() {
    for (int i = start; i <= end; i++) {
      if (!code.isReachable(i)) {
        continue;
      }
      for (LabelNode target : code.targets(i)) {
        int p = code.position(target);
        if (!isInside(p) && !code.hasEmptyStack(p)) {
          return false;
        }
        if (!isInside(p) && !exits.contains(target)) {
          exits.add(target);
        }
      }
      returns |= code.isReturn(i);
    }
    return ways() > 0 && (!falls || code.hasEmptyStack(end + 1));
  }

  /** Finds where the method has its memory and its instance. */
  private boolean findParameters() {
    int slot = 0;
    for (Type type : Type.getArgumentTypes(code.method().desc)) {
      if (type.getInternalName().equals(DirectMemory.FLAT)) {
        memory = slot;
      } else if (type.getInternalName().equals(INSTANCE)) {
        instance = slot;
      }
      slot += type.getSize();
    }
    return memory >= 0 && instance >= 0;
  }

  private boolean findVariables() {
    for (int i = start; i <= end; i++) {
      AbstractInsnNode node = code.at(i);
      boolean known = true;
      if (node instanceof VarInsnNode at) {
        known = note(at.var, Kind.of(at), at.getOpcode() >= Opcodes.ISTORE);
      } else if (node instanceof IincInsnNode at) {
        known = note(at.var, Kind.INT, true);
      }
      if (!known) {
        return false;
      }
    }
    for (Map.Entry<Integer, Kind> variable : used.entrySet()) {
      int v = variable.getKey();
      if (code.isLive(start, v)) {
        in.add(v);
      }
      if (stored.get(v) && isNeededAfter(v)) {
        out.add(v);
      }
    }
    return true;
  }

  /** Notes a use of a variable; false if it is not of one known kind. */
  private boolean note(int variable, Kind kind, boolean store) {
    if (kind == Kind.OBJECT) {
      return !store && (variable == memory || variable == instance);
    }
    Kind before = used.put(variable, kind);
    if (store) {
      stored.set(variable);
    }
    return before == null || before == kind;
  }

  private boolean isNeededAfter(int variable) {
    boolean needed = falls && code.isLive(end + 1, variable);
    for (LabelNode exit : exits) {
      needed |= code.isLive(code.position(exit), variable);
    }
    return needed;
  }

  private boolean fits() {
    int slots = 0;
    for (int v : in) {
      slots += used.get(v).width;
    }
    return slots <= MOST_PARAMETER_SLOTS && out.size() < CARRIED;
  }
}
