package org.castwright.cli;

import org.castwright.plan.MoldOptions;
import org.castwright.solid.manifold.ManifoldKernel;

/** Opens the solid kernel this program ships with. */
final class Kernels {

  private Kernels() {}

  /** A kernel whose classes load on another thread while files are read. */
  static ManifoldKernel warming() {
    ManifoldKernel kernel = new ManifoldKernel();
    start(kernel::warmUp);
    return kernel;
  }

  /** One that is got ready well for a mold of many pieces, which keeps it busy for long. */
  static ManifoldKernel warmingFor(MoldOptions options) {
    if (options.pieces() == 2) {
      return warming();
    }
    ManifoldKernel kernel = new ManifoldKernel();
    start(kernel::warmUpWell);
    return kernel;
  }

  private static void start(Runnable warmUp) {
    Thread warm = new Thread(warmUp, "warm up the solid kernel");
    warm.setDaemon(true);
    warm.start();
  }
}
