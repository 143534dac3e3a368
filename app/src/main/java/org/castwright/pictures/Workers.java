package org.castwright.pictures;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/** Shares numbered jobs that write to separate places among a few threads. */
final class Workers {

  private Workers() {}

  /**
   * Does jobs {@code 0 .. jobs - 1}, each once. Every thread makes its own consumer, which may
   * therefore keep buffers.
   */
  static void run(int threads, int jobs, Supplier<IntConsumer> maker) {
    AtomicInteger next = new AtomicInteger();
    AtomicReference<Throwable> failure = new AtomicReference<>();
    Runnable work =
        () -> {
          try {
            IntConsumer job = maker.get();
            for (int i = next.getAndIncrement(); i < jobs; i = next.getAndIncrement()) {
              job.accept(i);
            }
          } catch (RuntimeException | Error e) {
            failure.compareAndSet(null, e);
            next.set(jobs);
          }
        };
    List<Thread> others = new ArrayList<>();
    for (int i = 1; i < Math.min(threads, jobs); i++) {
      Thread t = new Thread(work, "picture-" + i);
      t.start();
      others.add(t);
    }
    work.run();
    join(others);
    if (failure.get() instanceof Error e) {
      throw e;
    } else if (failure.get() instanceof RuntimeException e) {
      throw e;
    }
  }

  private static void join(List<Thread> threads) {
    boolean interrupted = false;
    for (Thread t : threads) {
      while (t.isAlive()) {
        try {
          t.join();
        } catch (InterruptedException e) {
          interrupted = true;
        }
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
