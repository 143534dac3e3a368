package org.castwright.cli;

import org.castwright.solid.manifold.ManifoldKernel;

/** Opens the solid kernel this program ships with. */
final class Kernels {

  private Kernels() {}

  /** A kernel whose classes load on another thread while files are read. */
  static ManifoldKernel warming() {
    ManifoldKernel kernel = new ManifoldKernel();
    Thread warm = new Thread(kernel::warmUp, "warm up the solid kernel");
    warm.setDaemon(true);
    warm.start();
    return kernel;
  }
}
