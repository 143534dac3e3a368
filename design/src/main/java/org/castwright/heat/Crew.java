package org.castwright.heat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.castwright.progress.Progress;

/**
 * A few threads that stay for thousands of short sweeps over the layers of a grid. Each layer is
 * worked on by one thread alone and nothing is summed across layers, so the number of threads
 * cannot change a result.
 */
final class Crew implements AutoCloseable {

  /** Work on one layer. */
  interface Layer {
    void run(int k);
  }

  private final int threads;
  private final ExecutorService pool;

  Crew(int threads) {
    this.threads = threads;
    this.pool = threads > 1 ? Executors.newFixedThreadPool(threads) : null;
  }

  /** Works on layers {@code from} to {@code to - 1}. */
  void each(int from, int to, Layer work) {
    if (pool == null) {
      run(from, to, work);
      return;
    }
    List<Callable<Void>> parts = new ArrayList<>(threads);
    for (int t = 0; t < threads; t++) {
      int a = from + (int) ((long) (to - from) * t / threads);
      int b = from + (int) ((long) (to - from) * (t + 1) / threads);
      parts.add(
          () -> {
            run(a, b, work);
            return null;
          });
    }
    try {
      for (Future<Void> part : pool.invokeAll(parts)) {
        part.get();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new Progress.CancelledException();
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    }
  }

  private static void run(int from, int to, Layer work) {
    for (int k = from; k < to; k++) {
      work.run(k);
    }
  }

  @Override
  public void close() {
    if (pool != null) {
      pool.shutdownNow();
    }
  }
}
