package org.castwright.survey;

import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.castwright.progress.Progress;

/** Numbered jobs on a few threads, each with tools of its own. Jobs must not look at each other. */
public final class Lanes {

  private Lanes() {}

  /** One job: number {@code index}, with the thread's own tools. */
  public interface Job<T> {
    void run(T tools, int index);
  }

  /** Runs jobs 0 to {@code count - 1}; the first failure stops the rest and is thrown again. */
  public static <T> void run(int count, int threads, Supplier<T> tools, Job<T> job) {
    int lanes = Math.min(count, threads);
    if (lanes <= 1) {
      T own = tools.get();
      for (int i = 0; i < count; i++) {
        job.run(own, i);
      }
      return;
    }
    AtomicInteger next = new AtomicInteger();
    Callable<Void> lane =
        () -> {
          try {
            T own = tools.get();
            for (int i = next.getAndIncrement(); i < count; i = next.getAndIncrement()) {
              job.run(own, i);
            }
            return null;
          } catch (RuntimeException | Error e) {
            next.set(count);
            throw e;
          }
        };
    ExecutorService pool = Executors.newFixedThreadPool(lanes);
    try {
      await(pool.invokeAll(Collections.nCopies(lanes, lane)));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new Progress.CancelledException();
    } finally {
      pool.shutdownNow();
    }
  }

  private static void await(List<Future<Void>> lanes) throws InterruptedException {
    for (Future<Void> lane : lanes) {
      try {
        lane.get();
      } catch (ExecutionException e) {
        if (e.getCause() instanceof RuntimeException r) {
          throw r;
        }
        if (e.getCause() instanceof Error r) {
          throw r;
        }
        throw new IllegalStateException(e.getCause());
      }
    }
  }
}
