package org.castwright.solid.manifold.tuner;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.FieldInsnNode;
import org.objectweb.asm.tree.IincInsnNode;
import org.objectweb.asm.tree.InsnList;
import org.objectweb.asm.tree.InsnNode;
import org.objectweb.asm.tree.IntInsnNode;
import org.objectweb.asm.tree.JumpInsnNode;
import org.objectweb.asm.tree.LabelNode;
import org.objectweb.asm.tree.LookupSwitchInsnNode;
import org.objectweb.asm.tree.MethodInsnNode;
import org.objectweb.asm.tree.MethodNode;
import org.objectweb.asm.tree.VarInsnNode;

/**
 * Carries out a {@link Cut}. The new method takes the variables the loop needs. If there is one way
 * out and one variable to bring back, it returns that; else it leaves the variables in arrays of
 * the memory object and returns the number of the way out.
 */
final class CutWriter {

  private static final int CARRIED_RESULT = Cut.CARRIED - 1;

  private final String owner;
  private final Cut cut;
  private final MethodNode fresh;
  private final Kind result;
  private final boolean single;
  private final boolean numbered;
  private final Map<Integer, Integer> renamed = new HashMap<>();
  private final Map<LabelNode, LabelNode> labels = new HashMap<>();
  private int nextSlot;

  CutWriter(String owner, Cut cut, String name) {
    this.owner = owner;
    this.cut = cut;
    String returned = Type.getReturnType(cut.code.method().desc).getDescriptor();
    this.result = returned.equals("V") ? null : Kind.of(returned);
    this.numbered = cut.ways() > 1;
    this.single = !numbered && !cut.returns && cut.out.size() == 1;
    this.fresh =
        new MethodNode(
            Opcodes.ASM9, Opcodes.ACC_PUBLIC | Opcodes.ACC_STATIC, name, descriptor(), null, null);
  }

  /** The first instruction of the loop in the new method. */
  AbstractInsnNode header() {
    return labels.get((LabelNode) cut.code.at(cut.start));
  }

  /** Makes the new method and puts a call in place of the loop. */
  MethodNode move() {
    assignSlots();
    copyLoop();
    leaveByFall();
    leaveByJump();
    fresh.maxLocals = nextSlot + 2;
    fresh.maxStack = cut.code.method().maxStack;
    InsnList call = call();
    InsnList old = cut.code.method().instructions;
    for (int i = cut.start + 1; i <= cut.end; i++) {
      old.remove(cut.code.at(i));
    }
    old.insert(cut.code.at(cut.start), call);
    return fresh;
  }

  private String descriptor() {
    StringBuilder out = new StringBuilder("(");
    for (int v : cut.in) {
      out.append(cut.used.get(v).descriptor);
    }
    out.append('L').append(DirectMemory.FLAT).append(";L").append(Cut.INSTANCE).append(";)");
    String back = single ? cut.used.get(cut.out.get(0)).descriptor : "V";
    return out.append(numbered ? "I" : back).toString();
  }

  private void assignSlots() {
    for (int v : cut.in) {
      renamed.put(v, slots(cut.used.get(v).width));
    }
    renamed.put(cut.memory, slots(1));
    renamed.put(cut.instance, slots(1));
    for (Map.Entry<Integer, Kind> variable : cut.used.entrySet()) {
      int v = variable.getKey();
      if (!renamed.containsKey(v)) {
        Kind kind = variable.getValue();
        renamed.put(v, slots(kind.width));
        if (cut.out.contains(v)) {
          fresh.instructions.add(new InsnNode(kind.zero));
          fresh.instructions.add(new VarInsnNode(kind.store, renamed.get(v)));
        }
      }
    }
  }

  private int slots(int width) {
    int slot = nextSlot;
    nextSlot += width;
    return slot;
  }

  private void copyLoop() {
    for (int i = cut.start; i <= cut.end; i++) {
      if (cut.code.at(i) instanceof LabelNode label) {
        labels.put(label, new LabelNode());
      }
    }
    for (LabelNode exit : cut.exits) {
      labels.put(exit, new LabelNode());
    }
    for (int i = cut.start; i <= cut.end; i++) {
      if (cut.code.isReturn(i)) {
        leaveByReturn();
        continue;
      }
      AbstractInsnNode copy = cut.code.at(i).clone(labels);
      if (copy instanceof VarInsnNode at) {
        at.var = renamed.get(at.var);
      } else if (copy instanceof IincInsnNode at) {
        at.var = renamed.get(at.var);
      }
      fresh.instructions.add(copy);
    }
  }

  private void leaveByReturn() {
    if (result != null) {
      int temporary = slots(result.width);
      fresh.instructions.add(new VarInsnNode(result.store, temporary));
      carry(fresh.instructions, result, CARRIED_RESULT, temporary);
    }
    returnNumber(fresh.instructions, returnNumber());
  }

  private void leaveByFall() {
    if (cut.falls) {
      leave(fallNumber());
    }
  }

  private void leaveByJump() {
    for (int i = 0; i < cut.exits.size(); i++) {
      fresh.instructions.add(labels.get(cut.exits.get(i)));
      leave(i);
    }
  }

  /** Way numbers: jumps first, then running off the end, then returning. */
  private int fallNumber() {
    return cut.exits.size();
  }

  private int returnNumber() {
    return cut.exits.size() + 1;
  }

  private void leave(int number) {
    InsnList to = fresh.instructions;
    if (single) {
      int v = cut.out.get(0);
      Kind kind = cut.used.get(v);
      to.add(new VarInsnNode(kind.load, renamed.get(v)));
      to.add(new InsnNode(Type.getType(kind.descriptor).getOpcode(Opcodes.IRETURN)));
      return;
    }
    for (int i = 0; i < cut.out.size(); i++) {
      int v = cut.out.get(i);
      carry(to, cut.used.get(v), i, renamed.get(v));
    }
    returnNumber(to, number);
  }

  private void returnNumber(InsnList to, int number) {
    if (numbered) {
      to.add(new IntInsnNode(Opcodes.SIPUSH, number));
      to.add(new InsnNode(Opcodes.IRETURN));
    } else {
      to.add(new InsnNode(Opcodes.RETURN));
    }
  }

  private void carry(InsnList to, Kind kind, int place, int slot) {
    carrier(to, kind, place, renamed.get(cut.memory));
    to.add(new VarInsnNode(kind.load, slot));
    to.add(new InsnNode(kind.arrayStore));
  }

  private void fetch(InsnList to, Kind kind, int place) {
    carrier(to, kind, place, cut.memory);
    to.add(new InsnNode(kind.arrayLoad));
  }

  private static void carrier(InsnList to, Kind kind, int place, int memory) {
    to.add(new VarInsnNode(Opcodes.ALOAD, memory));
    to.add(
        new FieldInsnNode(
            Opcodes.GETFIELD, DirectMemory.FLAT, kind.carrier(), "[" + kind.descriptor));
    to.add(new IntInsnNode(Opcodes.SIPUSH, place));
  }

  /** What stands in place of the loop, behind its first label. */
  private InsnList call() {
    InsnList to = new InsnList();
    for (int v : cut.in) {
      to.add(new VarInsnNode(cut.used.get(v).load, v));
    }
    to.add(new VarInsnNode(Opcodes.ALOAD, cut.memory));
    to.add(new VarInsnNode(Opcodes.ALOAD, cut.instance));
    to.add(new MethodInsnNode(Opcodes.INVOKESTATIC, owner, fresh.name, fresh.desc, false));
    for (int i = 0; i < cut.out.size(); i++) {
      Kind kind = cut.used.get(cut.out.get(i));
      if (!single) {
        fetch(to, kind, i);
      }
      to.add(new VarInsnNode(kind.store, cut.out.get(i)));
    }
    goOn(to);
    return to;
  }

  /** Continues where the loop was left. */
  private void goOn(InsnList to) {
    LabelNode after = new LabelNode();
    LabelNode returning = new LabelNode();
    List<LabelNode> ways = new ArrayList<>(cut.exits);
    List<Integer> numbers = new ArrayList<>();
    if (cut.falls) {
      ways.add(after);
    }
    if (cut.returns) {
      ways.add(returning);
    }
    for (int i = 0; i < ways.size(); i++) {
      numbers.add(ways.get(i) == returning ? returnNumber() : i);
    }
    LabelNode last = ways.remove(ways.size() - 1);
    if (ways.isEmpty()) {
      to.add(new JumpInsnNode(Opcodes.GOTO, last));
    } else {
      int[] keys = numbers.subList(0, ways.size()).stream().mapToInt(n -> n).toArray();
      to.add(new LookupSwitchInsnNode(last, keys, ways.toArray(new LabelNode[0])));
    }
    if (cut.returns) {
      to.add(returning);
      if (result != null) {
        fetch(to, result, CARRIED_RESULT);
      }
      to.add(new InsnNode(Type.getReturnType(cut.code.method().desc).getOpcode(Opcodes.IRETURN)));
    }
    if (cut.falls) {
      to.add(after);
    }
  }
}
