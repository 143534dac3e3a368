package org.castwright.cli;

import java.util.function.Consumer;
import org.castwright.plan.MoldOptions;
import org.castwright.solid.manifold.ManifoldKernel;

/** Opens the solid kernel this program ships with. */
final class Kernels {

  private Kernels() {}

  /** A kernel whose classes load on another thread while files are read. */
  static ManifoldKernel warming() {
    return warming(ManifoldKernel::warmUp);
  }

  /** The same, got ready well for a mold of many pieces, which keeps it busy for long. */
  static ManifoldKernel warmingFor(MoldOptions options) {
    return options.pieces() == 2 ? warming() : warming(ManifoldKernel::warmUpWell);
  }

  private static ManifoldKernel warming(Consumer<ManifoldKernel> warmUp) {
    ManifoldKernel kernel = new ManifoldKernel();
    Thread warm = new Thread(() -> warmUp.accept(kernel), "warm up the solid kernel");
    warm.setDaemon(true);
    warm.start();
    return kernel;
  }
}
