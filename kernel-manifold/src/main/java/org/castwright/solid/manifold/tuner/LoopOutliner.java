package org.castwright.solid.manifold.tuner;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.objectweb.asm.commons.CodeSizeEvaluator;
import org.objectweb.asm.tree.AbstractInsnNode;
import org.objectweb.asm.tree.ClassNode;
import org.objectweb.asm.tree.LabelNode;
import org.objectweb.asm.tree.MethodNode;

/**
 * Moves the loops of large methods into methods of their own, outer loops first, and again inside
 * those while they are large. HotSpot does not compile a method of more than 8000 bytes at all, and
 * takes long over one of a few thousand.
 */
final class LoopOutliner {

  /** Methods above this many bytes are taken apart: measured, 3000 starts faster than 7900. */
  private static final int LARGE = 3000;

  /** Loops of fewer instructions stay: measured, moving only those of 300 halves the speed. */
  private static final int SHORTEST = 30;

  /** Methods above this many bytes are never compiled by HotSpot. */
  private static final int HUGE = 8000;

  /** In those loops of as few instructions are moved too, or they would stay interpreted. */
  private static final int SHORTEST_IN_HUGE = 8;

  /** Stack that new calls may need: up to {@link Cut#MOST_PARAMETER_SLOTS} and a few. */
  private static final int MORE_STACK = Cut.MOST_PARAMETER_SLOTS + 8;

  private final ClassNode code;
  private final Map<MethodNode, AbstractInsnNode> wholeLoops = new HashMap<>();
  private int moved;

  LoopOutliner(ClassNode code) {
    this.code = code;
  }

  /** Returns how many loops were moved. */
  int apply() {
    Deque<MethodNode> open = new ArrayDeque<>(code.methods);
    while (!open.isEmpty()) {
      MethodNode method = open.removeFirst();
      if (size(method) > LARGE && method.tryCatchBlocks.isEmpty()) {
        takeApart(method, open);
      }
    }
    return moved;
  }

  private void takeApart(MethodNode method, Deque<MethodNode> open) {
    method.maxStack += MORE_STACK;
    moveLoops(method, SHORTEST, open);
    if (size(method) > HUGE) {
      moveLoops(method, SHORTEST_IN_HUGE, open);
    }
  }

  private void moveLoops(MethodNode method, int shortest, Deque<MethodNode> open) {
    Set<AbstractInsnNode> refused = new HashSet<>();
    while (true) {
      MethodCode now = new MethodCode(method);
      int[] loop = nextLoop(now, shortest, refused);
      if (loop == null) {
        return;
      }
      Cut cut = Cut.of(now, loop[0], loop[1]);
      if (cut == null) {
        refused.add(now.at(loop[0]));
        continue;
      }
      CutWriter writer = new CutWriter(code.name, cut, baseName(method) + "$" + moved);
      MethodNode fresh = writer.move();
      wholeLoops.put(fresh, writer.header());
      code.methods.add(fresh);
      open.addLast(fresh);
      moved++;
    }
  }

  /** The first and last instruction of the first outermost loop worth moving, or null. */
  private int[] nextLoop(MethodCode now, int shortest, Set<AbstractInsnNode> refused) {
    TreeMap<Integer, Integer> lastBackEdge = new TreeMap<>();
    for (int i = 0; i < now.length(); i++) {
      for (LabelNode target : now.targets(i)) {
        int header = now.position(target);
        if (header <= i) {
          lastBackEdge.merge(header, i, Math::max);
        }
      }
    }
    AbstractInsnNode whole = wholeLoops.get(now.method());
    for (Map.Entry<Integer, Integer> loop : lastBackEdge.entrySet()) {
      AbstractInsnNode header = now.at(loop.getKey());
      if (loop.getValue() - loop.getKey() >= shortest
          && header != whole
          && !refused.contains(header)) {
        return new int[] {loop.getKey(), loop.getValue()};
      }
    }
    return null;
  }

  private static String baseName(MethodNode method) {
    return List.of(method.name.split("\\$", -1)).get(0);
  }

  private static int size(MethodNode method) {
    CodeSizeEvaluator size = new CodeSizeEvaluator(null);
    method.accept(size);
    return size.getMaxSize();
  }
}
