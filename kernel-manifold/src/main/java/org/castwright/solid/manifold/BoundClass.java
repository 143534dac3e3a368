package org.castwright.solid.manifold;

import java.util.HashMap;
import java.util.Map;

/** A C++ class the module has registered, with its constructors and methods by argument count. */
final class BoundClass {

  private final String name;
  private final int destructor;
  private final Map<Integer, BoundFunction> constructors = new HashMap<>();
  private final Map<String, BoundFunction> methods = new HashMap<>();

  BoundClass(String name, int destructor) {
    this.name = name;
    this.destructor = destructor;
  }

  String name() {
    return name;
  }

  /** The table slot of the destructor. */
  int destructor() {
    return destructor;
  }

  void addConstructor(BoundFunction f) {
    constructors.put(f.argumentCount(), f);
  }

  void addMethod(String method, BoundFunction f) {
    methods.put(method + "/" + f.argumentCount(), f);
  }

  BoundFunction constructor(int arguments) {
    return found(constructors.get(arguments), name, arguments);
  }

  BoundFunction method(String method, int arguments) {
    return found(methods.get(method + "/" + arguments), method, arguments);
  }

  private BoundFunction found(BoundFunction f, String what, int arguments) {
    if (f == null) {
      throw new IllegalStateException(
          "the module has no " + what + " with " + arguments + " arguments in " + name);
    }
    return f;
  }
}
