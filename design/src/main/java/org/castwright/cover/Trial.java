package org.castwright.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntConsumer;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.survey.Lanes;

/**
 * All directions on trial with the samples each frees. Column {@code 2 i} is axis {@code i}, column
 * {@code 2 i + 1} its opposite.
 */
final class Trial {

  private final TriMesh mesh;
  private final Samples samples;
  private final Lean lean;
  private final double width;
  private final int threads;
  private final List<Vec3> axes = new ArrayList<>();
  private long[][] bits = new long[0][];

  /** Samples that some direction frees. */
  private final long[] any;

  private final double surface;
  private final double space;
  private CoverTable table;

  Trial(TriMesh mesh, CoverOptions options) {
    this.mesh = mesh;
    this.threads = options.threads();
    samples = Samples.of(mesh, options.cells());
    any = new long[FreeBits.words(samples.count())];
    width = options.tolerance().widthMm();
    lean = new Lean(mesh, shade().width());
    surface = Arrays.stream(samples.areas()).sum();
    space = Arrays.stream(samples.volumes()).sum();
    table = CoverTable.of(bits, new double[0], new double[0]);
  }

  Shade shade() {
    return new Shade(mesh, width);
  }

  TriMesh mesh() {
    return mesh;
  }

  Samples samples() {
    return samples;
  }

  /** All surface on trial, mm². */
  double surface() {
    return surface;
  }

  /** All space on trial, mm³. */
  double space() {
    return space;
  }

  Lean lean() {
    return lean;
  }

  int threads() {
    return threads;
  }

  int columns() {
    return bits.length;
  }

  CoverTable table() {
    return table;
  }

  Vec3 direction(int column) {
    Vec3 axis = axes.get(column / 2);
    // from zero, so that no component becomes -0
    return column % 2 == 0 ? axis : Vec3.ZERO.minus(axis);
  }

  List<Vec3> directions(int[] set) {
    return Arrays.stream(set).mapToObj(this::direction).toList();
  }

  boolean free(int column, int sample) {
    return FreeBits.get(bits[column], sample);
  }

  /** Whether some direction on trial frees a sample. */
  boolean freeByAny(int sample) {
    return FreeBits.get(any, sample);
  }

  /** Looks along more axes; {@code done} hears how many are finished. */
  void add(List<Vec3> more, IntConsumer done) {
    int first = axes.size();
    axes.addAll(more);
    bits = Arrays.copyOf(bits, 2 * axes.size());
    int[] count = {0};
    Lanes.run(
        more.size(),
        threads,
        this::shade,
        (shade, i) -> {
          long[][] two = FreeBits.along(more.get(i), samples, shade, lean);
          bits[2 * (first + i)] = two[0];
          bits[2 * (first + i) + 1] = two[1];
          synchronized (count) {
            done.accept(++count[0]);
          }
        });
    for (long[] b : Arrays.asList(bits).subList(2 * first, bits.length)) {
      Arrays.setAll(any, k -> any[k] | b[k]);
    }
    table = CoverTable.of(bits, samples.areas(), samples.volumes());
  }

  /** The samples that no column of a set frees but some candidate does, ascending. */
  int[] left(int[] set) {
    return uncovered(set, any);
  }

  /** The samples that no candidate frees, ascending. */
  int[] never() {
    long[] none = new long[any.length];
    Arrays.setAll(none, k -> ~any[k]);
    return uncovered(new int[0], none);
  }

  /** Of some samples those that no column of a set frees. */
  private int[] uncovered(int[] set, long[] of) {
    int[] out = new int[samples.count()];
    int n = 0;
    for (int k = 0; k < of.length; k++) {
      long free = 0;
      for (int j : set) {
        free |= bits[j][k];
      }
      for (long b = of[k] & ~free; b != 0; b &= b - 1) {
        int s = k * Long.SIZE + Long.numberOfTrailingZeros(b);
        if (s < samples.count()) {
          out[n++] = s;
        }
      }
    }
    return Arrays.copyOf(out, n);
  }

  /** Area and volume of samples, width not measured. */
  Caught sum(int[] list) {
    double area = 0;
    double volume = 0;
    for (int s : list) {
      if (samples.isCell(s)) {
        volume += samples.weight(s);
      } else {
        area += samples.weight(s);
      }
    }
    return new Caught(area, volume, 0);
  }
}
