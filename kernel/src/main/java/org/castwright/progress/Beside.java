package org.castwright.progress;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;

/**
 * Work that is done beside the caller's, on the threads that all share.
 *
 * @param <T> what comes of it
 */
public final class Beside<T> {

  private final CompletableFuture<T> result;

  private Beside(CompletableFuture<T> result) {
    this.result = result;
  }

  /** Begins some work. */
  public static <T> Beside<T> begin(Supplier<T> work) {
    return new Beside<>(CompletableFuture.supplyAsync(work));
  }

  /** Waits for what comes of it; throws what the work threw, if that is unchecked. */
  public T get() {
    try {
      return result.join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof RuntimeException r) {
        throw r;
      }
      if (e.getCause() instanceof Error r) {
        throw r;
      }
      throw e;
    }
  }

  /** Waits until the work has ended, however it ends. */
  public void await() {
    CompletableFuture.allOf(result).exceptionally(e -> null).join();
  }
}
