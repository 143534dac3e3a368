package org.castwright.solid.manifold;

import java.lang.ref.SoftReference;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.Supplier;
import org.castwright.mesh.TriMesh;

/**
 * Engines on loan, one to a thread at a time and no more than there are processors; made when first
 * needed. An engine that broke does not come back, and one that waits gives its memory up where the
 * Java heap has no other room.
 */
final class EnginePool {

  /** What it takes to bring a triangle in, about: measured with bodies of 70,000. */
  private static final long NANOS_PER_TRIANGLE = 6000;

  /** Fewer triangles are brought in sooner than waited for. */
  private static final long WORTH_WAITING = 5000;

  private final Supplier<Engine> maker;
  private final int size;
  private final Semaphore places;
  private final Deque<SoftReference<Engine>> idle = new ArrayDeque<>();
  private final Set<Engine> lent = new HashSet<>();
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
    Engine engine = chosen(meshes);
    Engine taken = engine == null ? maker.get() : engine;
    synchronized (idle) {
      lent.add(taken);
    }
    return taken;
  }

  /**
   * The engine that has most of the meshes. If that is on loan it may be waited for, but no longer
   * than another would take to bring the meshes in.
   *
   * @return null if none is there
   */
  private Engine chosen(List<TriMesh> meshes) {
    long begin = System.nanoTime();
    synchronized (idle) {
      while (true) {
        if (closed) {
          throw new IllegalStateException("the solid kernel is closed");
        }
        Engine best = knowsMost(waiting(), meshes);
        long saved = known(knowsMost(lent, meshes), meshes) - known(best, meshes);
        long left = saved * NANOS_PER_TRIANGLE - (System.nanoTime() - begin);
        if (saved < WORTH_WAITING || left <= 0) {
          return take(best);
        }
        try {
          TimeUnit.NANOSECONDS.timedWait(idle, left);
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
          return take(best);
        }
      }
    }
  }

  private Engine take(Engine engine) {
    idle.removeIf(r -> r.refersTo(engine) || r.refersTo(null));
    return engine;
  }

  private static Engine knowsMost(Collection<Engine> engines, List<TriMesh> meshes) {
    return engines.stream().max(Comparator.comparingLong(e -> e.known(meshes))).orElse(null);
  }

  private static long known(Engine engine, List<TriMesh> meshes) {
    return engine == null ? 0 : engine.known(meshes);
  }

  private void giveBack(Engine engine) {
    synchronized (idle) {
      lent.remove(engine);
      if (!closed && !engine.isBroken()) {
        idle.addFirst(new SoftReference<>(engine));
      }
      idle.notifyAll();
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
