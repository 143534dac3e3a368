package org.castwright.solid.manifold;

/** A C++ object in one instance, owned: {@link #close()} destroys it. */
final class NativeObject implements AutoCloseable {

  private final Bindings bindings;
  private final BoundClass type;
  private int address;

  NativeObject(Bindings bindings, BoundClass type, int address) {
    this.bindings = bindings;
    this.type = type;
    this.address = address;
    bindings.objectMade();
  }

  BoundClass type() {
    return type;
  }

  int address() {
    if (address == 0) {
      throw new IllegalStateException("a closed " + type.name());
    }
    return address;
  }

  Object call(String method, Object... arguments) {
    return bindings.callMethod(this, method, arguments);
  }

  /** Calls a method that gives a new object. */
  NativeObject make(String method, Object... arguments) {
    return (NativeObject) call(method, arguments);
  }

  int count(String method) {
    return ((Number) call(method)).intValue();
  }

  /** Destroys the C++ object; does nothing the second time. */
  @Override
  public void close() {
    if (address != 0) {
      int old = address;
      address = 0;
      bindings.objectGone(type, old);
    }
  }
}
