package org.castwright.solid.manifold;

import java.util.List;

/** How values of one C++ type cross between Java and compiled code. */
abstract class WireType {

  private final String name;

  WireType(String name) {
    this.name = name;
  }

  final String name() {
    return name;
  }

  /** The Java value of a result word. */
  Object fromWire(long word) {
    throw unsupported("return");
  }

  /**
   * The argument word of a Java value.
   *
   * @param after what to run once the call is over
   */
  long toWire(Object value, List<Runnable> after) {
    throw unsupported("pass");
  }

  /** The Java value packed at an address. */
  Object fromMemory(int address) {
    throw unsupported("unpack");
  }

  private IllegalStateException unsupported(String verb) {
    return new IllegalStateException("cannot " + verb + " a " + name);
  }
}
