package org.castwright.solid.manifold;

/** Exports of the module, under the one-letter names its build gave them (version 3.5.4). */
final class ModuleNames {

  /** Runs the C++ static constructors, which register all bindings. */
  static final String START = "J";

  static final String MALLOC = "M";
  static final String FREE = "N";

  private ModuleNames() {}
}
