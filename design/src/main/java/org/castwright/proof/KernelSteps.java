package org.castwright.proof;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.castwright.geom.Vec3;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidException;
import org.castwright.solid.SolidKernel;

/**
 * Overlaps that the solid kernel measures on a thread of its own while the columns are computed
 * here. Each step is one boolean of whole bodies, the dearest thing in the proof, so there are few.
 */
final class KernelSteps implements AutoCloseable {

  private final SolidKernel kernel;
  private final List<Body> bodies;
  private final Solid[] solids;
  private final Map<Step, Future<Double>> asked = new HashMap<>();
  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread t = new Thread(task, "proof kernel steps");
            t.setDaemon(true);
            return t;
          });

  KernelSteps(SolidKernel kernel, List<Body> bodies) {
    this.kernel = kernel;
    this.bodies = bodies;
    this.solids = new Solid[bodies.size()];
  }

  /** Body number {@code moving} shifted, against body number {@code still}. */
  record Step(int moving, Vec3 shift, int still) {}

  void ask(Step step) {
    asked.computeIfAbsent(step, s -> worker.submit(() -> overlap(s)));
  }

  /**
   * The volume shared, mm³, waiting for it if need be.
   *
   * @throws SolidException if the kernel could not tell
   */
  double answer(Step step) {
    try {
      return asked.get(step).get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof SolidException s) {
        throw s;
      }
      throw new IllegalStateException("the solid kernel failed during the proof", e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted during the proof", e);
    }
  }

  @Override
  public void close() {
    worker.shutdownNow();
  }

  private double overlap(Step s) {
    return kernel.overlap(solid(s.moving), s.shift, solid(s.still));
  }

  private Solid solid(int i) {
    if (solids[i] == null) {
      solids[i] = kernel.solid(bodies.get(i).name(), bodies.get(i).mesh());
    }
    return solids[i];
  }
}
