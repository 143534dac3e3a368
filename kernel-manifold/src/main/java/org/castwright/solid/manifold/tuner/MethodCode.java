package org.castwright.solid.manifold.tuner;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.IincInsnNode;
import org.objectweb.asm.tree.JumpInsnNode;
import org.objectweb.asm.tree.LabelNode;
import org.objectweb.asm.tree.LookupSwitchInsnNode;
import org.objectweb.asm.tree.MethodNode;
import org.objectweb.asm.tree.TableSwitchInsnNode;
import org.objectweb.asm.tree.VarInsnNode;
import org.objectweb.asm.tree.analysis.Analyzer;
import org.objectweb.asm.tree.analysis.AnalyzerException;
import org.objectweb.asm.tree.analysis.BasicInterpreter;
import org.objectweb.asm.tree.analysis.BasicValue;
import org.objectweb.asm.tree.analysis.Frame;

/** A method as it stands: where its jumps go, how high its stack is, which variables are alive. */
final class MethodCode {

  private final MethodNode method;
  private final AbstractInsnNode[] all;
  private final Map<AbstractInsnNode, Integer> positions = new HashMap<>();
  private Frame<BasicValue>[] frames;
  private BitSet[] live;

  MethodCode(MethodNode method) {
    this.method = method;
    this.all = method.instructions.toArray();
    for (int i = 0; i < all.length; i++) {
      positions.put(all[i], i);
    }
  }

  MethodNode method() {
    return method;
  }

  int length() {
    return all.length;
  }

  AbstractInsnNode at(int i) {
    return all[i];
  }

  int position(AbstractInsnNode node) {
    return positions.get(node);
  }

  /** Where instruction {@code i} may jump to. */
  List<LabelNode> targets(int i) {
    AbstractInsnNode node = all[i];
    if (node instanceof JumpInsnNode jump) {
      return List.of(jump.label);
    }
    if (node instanceof TableSwitchInsnNode table) {
      return with(table.labels, table.dflt);
    }
    if (node instanceof LookupSwitchInsnNode lookup) {
      return with(lookup.labels, lookup.dflt);
    }
    return List.of();
  }

  private static List<LabelNode> with(List<LabelNode> labels, LabelNode last) {
    List<LabelNode> out = new ArrayList<>(labels);
    out.add(last);
    return out;
  }

  /** Whether the instruction after {@code i} may run next. */
  boolean fallsThrough(int i) {
    int op = all[i].getOpcode();
    return op != Opcodes.GOTO
        && op != Opcodes.ATHROW
        && op != Opcodes.TABLESWITCH
        && op != Opcodes.LOOKUPSWITCH
        && !isReturn(i);
  }

  boolean isReturn(int i) {
    int op = all[i].getOpcode();
    return op >= Opcodes.IRETURN && op <= Opcodes.RETURN;
  }

  boolean isReachable(int i) {
    return frame(i) != null;
  }

  /** Whether {@code i} is reached with nothing on the stack. */
  boolean hasEmptyStack(int i) {
    return i < all.length && frame(i) != null && frame(i).getStackSize() == 0;
  }

  private Frame<BasicValue> frame(int i) {
    if (frames == null) {
      try {
        frames = new Analyzer<>(new BasicInterpreter()).analyze("Code", method);
      } catch (AnalyzerException e) {
        throw new IllegalStateException("cannot follow the stack of " + method.name, e);
      }
    }
    return frames[i];
  }

  /** Whether a variable's value on reaching {@code i} may still be read. */
  boolean isLive(int i, int variable) {
    if (live == null) {
      live = liveness();
    }
    return live[i].get(variable);
  }

  /** Backward passes until nothing changes. */
  private BitSet[] liveness() {
    BitSet[] out = new BitSet[all.length + 1];
    for (int i = 0; i <= all.length; i++) {
      out[i] = new BitSet(method.maxLocals);
    }
    boolean changed = true;
    while (changed) {
      changed = false;
      for (int i = all.length - 1; i >= 0; i--) {
        BitSet next = new BitSet(method.maxLocals);
        if (fallsThrough(i)) {
          next.or(out[i + 1]);
        }
        for (LabelNode target : targets(i)) {
          next.or(out[position(target)]);
        }
        if (all[i] instanceof VarInsnNode at) {
          next.set(at.var, at.getOpcode() < Opcodes.ISTORE);
        } else if (all[i] instanceof IincInsnNode at) {
          next.set(at.var);
        }
        if (!next.equals(out[i])) {
          out[i] = next;
          changed = true;
        }
      }
    }
    return out;
  }
}
