package org.castwright.repair;

import java.util.Arrays;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.castwright.progress.Progress;

/**
 * The pairs of triangles of a mesh that meet other than by sharing corners, as {@link
 * TriangleCrossing} judges or another. Searched on all cores in fixed parts, so the count is always
 * the same.
 */
final class Crossings {

  /** Counting stops here, roughly: past this the model is beyond reading the number. */
  static final int CAP = 1_000_000;

  private static final int PARTS = 64;

  /** Judges two triangles whose boxes meet; one for each thread at a time. */
  @FunctionalInterface
  interface Judge {
    boolean meet(int f, int g);
  }

  private final TriangleTree tree;
  private final Supplier<Judge> judges;
  private final int[] shellOf;
  private final int[] counts = new int[PARTS];
  private final int[][] firsts = new int[PARTS][];
  private final long[][] pairs = new long[PARTS][];
  private final Progress progress;

  /**
   * @param shellOf a label for each triangle; pairs of labels that meet are collected
   */
  Crossings(TriangleTree tree, int[] shellOf, Progress progress) {
    this(tree, shellOf, progress, () -> new TriangleCrossing(tree.xyz, tree.tri)::meet);
  }

  /** As judges of another mind find them. */
  Crossings(TriangleTree tree, int[] shellOf, Progress progress, Supplier<Judge> judges) {
    this.tree = tree;
    this.judges = judges;
    this.shellOf = shellOf;
    this.progress = progress;
    int step = (tree.size() + PARTS - 1) / PARTS;
    IntStream.range(0, PARTS)
        .parallel()
        .forEach(
            p -> search(p, Math.min(tree.size(), p * step), Math.min(tree.size(), (p + 1) * step)));
  }

  /** How many pairs meet, at most {@link #CAP}. */
  int count() {
    long sum = 0;
    for (int c : counts) {
      sum += c;
    }
    return (int) Math.min(CAP, sum);
  }

  /** One pair that meets, always the same; empty for none. */
  int[] first() {
    for (int[] first : firsts) {
      if (first != null) {
        return first.clone();
      }
    }
    return new int[0];
  }

  /** The pairs of different labels that meet, the lower in the high half; sorted. */
  long[] labelPairs() {
    return Arrays.stream(pairs).flatMapToLong(LongStream::of).sorted().distinct().toArray();
  }

  private void search(int part, int from, int to) {
    progress.at("looking for crossings", (double) part / PARTS);
    Judge judge = judges.get();
    double[] box = new double[6];
    int[] stack = new int[4 * (tree.depth() + 2)];
    long[] found = new long[16];
    int size = 0;
    for (int i = from; i < to && counts[part] < CAP; i++) {
      int f = tree.order[i];
      tree.boxOf(f, box);
      int depth = push(stack, 0, 0, 0, tree.size(), 0);
      while (depth > 0) {
        int level = stack[--depth];
        int end = stack[--depth];
        int begin = stack[--depth];
        int node = stack[--depth];
        if (end <= i + 1 || !tree.overlaps(node, box)) {
          continue;
        }
        if (!tree.isLeaf(level)) {
          int cut = TriangleTree.cut(begin, end);
          depth = push(stack, depth, 2 * node + 2, cut, end, level + 1);
          depth = push(stack, depth, 2 * node + 1, begin, cut, level + 1);
          continue;
        }
        for (int j = Math.max(begin, i + 1); j < end; j++) {
          int g = tree.order[j];
          if (boxesMeet(box, g) && judge.meet(f, g)) {
            counts[part]++;
            firsts[part] = firsts[part] == null ? new int[] {f, g} : firsts[part];
            if (shellOf[f] != shellOf[g]) {
              found = size == found.length ? Arrays.copyOf(found, 2 * size) : found;
              size = note(found, size, shellOf[f], shellOf[g]);
            }
          }
        }
      }
    }
    pairs[part] = Arrays.copyOf(found, size);
  }

  private boolean boxesMeet(double[] box, int g) {
    for (int k = 0; k < 3; k++) {
      double a = tree.xyz[3 * tree.tri[3 * g] + k];
      double b = tree.xyz[3 * tree.tri[3 * g + 1] + k];
      double c = tree.xyz[3 * tree.tri[3 * g + 2] + k];
      if (Math.min(a, Math.min(b, c)) > box[3 + k] || Math.max(a, Math.max(b, c)) < box[k]) {
        return false;
      }
    }
    return true;
  }

  private static int note(long[] found, int size, int s, int t) {
    long pair = ((long) Math.min(s, t) << 32) | Math.max(s, t);
    if (size > 0 && found[size - 1] == pair) {
      return size;
    }
    found[size] = pair;
    return size + 1;
  }

  private static int push(int[] stack, int depth, int node, int from, int to, int level) {
    stack[depth] = node;
    stack[depth + 1] = from;
    stack[depth + 2] = to;
    stack[depth + 3] = level;
    return depth + 4;
  }
}
