package org.castwright.solid.manifold;

import java.util.List;

/**
 * A C++ function or method the module has registered.
 *
 * @param invoker table slot of the code that unpacks the arguments
 * @param context first argument of the invoker
 * @param types type numbers: result, then the receiver if it is a method, then the arguments
 */
record BoundFunction(String name, int invoker, int context, List<Integer> types, boolean method) {

  int firstArgument() {
    return method ? 2 : 1;
  }

  int argumentCount() {
    return types.size() - firstArgument();
  }
}
