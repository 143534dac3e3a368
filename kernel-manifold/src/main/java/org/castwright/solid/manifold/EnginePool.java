package org.castwright.solid.manifold;

import java.lang.ref.SoftReference;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Semaphore;
import java.util.function.Function;
import java.util.function.Supplier;
import org.castwright.mesh.TriMesh;

/**
 * Engines on loan, one to a thread at a time and no more than there are processors; made when first
 * needed. An engine that broke does not come back, and one that waits gives its memory up where the
 * Java heap has no other room.
 */
final class EnginePool {

  private final Supplier<Engine> maker;
  private final int size;
  private final Semaphore places;
  private final Deque<SoftReference<Engine>> idle = new ArrayDeque<>();
  private boolean closed;

  EnginePool(int size, Supplier<Engine> maker) {
    this.maker = maker;
    this.size = size;
    this.places = new Semaphore(size, true);
  }

  /**
   * Runs a task on an engine, if there is a choice one that has the meshes already. Waits for a
   * free engine.
   *
   * @throws EngineStopped if the task or the making of an engine fails
   * @throws IllegalStateException if the pool is closed
   */
  <T> T run(List<TriMesh> meshes, Function<Engine, T> task) {
    places.acquireUninterruptibly();
    try {
      Engine engine = borrow(meshes);
      try {
        return task.apply(engine);
      } finally {
        giveBack(engine);
      }
    } catch (OutOfMemoryError e) {
      throw new EngineStopped("the Java heap is full; use coarser meshes or a larger heap", e);
    } finally {
      places.release();
    }
  }

  boolean closed() {
    synchronized (idle) {
      return closed;
    }
  }

  private Engine borrow(List<TriMesh> meshes) {
    synchronized (idle) {
      if (closed) {
        throw new IllegalStateException("the solid kernel is closed");
      }
      Engine best = null;
      long most = -1;
      for (Engine engine : waiting()) {
        long known = engine.known(meshes);
        if (known > most) {
          most = known;
          best = engine;
        }
      }
      if (best != null) {
        Engine taken = best;
        idle.removeIf(r -> r.refersTo(taken) || r.refersTo(null));
        return best;
      }
    }
    return maker.get();
  }

  private void giveBack(Engine engine) {
    synchronized (idle) {
      if (!closed && !engine.isBroken()) {
        idle.addFirst(new SoftReference<>(engine));
      }
    }
  }

  /** The engines not on loan. */
  List<Engine> idle() {
    synchronized (idle) {
      return waiting();
    }
  }

  private List<Engine> waiting() {
    return idle.stream().map(SoftReference::get).filter(Objects::nonNull).toList();
  }

  /** Waits for engines on loan and drops all; later tasks are refused. */
  void close() {
    places.acquireUninterruptibly(size);
    synchronized (idle) {
      closed = true;
      idle.clear();
    }
    places.release(size);
  }
}
