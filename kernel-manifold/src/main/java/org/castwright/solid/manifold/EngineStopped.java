package org.castwright.solid.manifold;

/**
 * The compiled code gave up: abort, a C++ exception, or no memory. The state of the instance is
 * unknown afterwards; it must not be used again. The message completes "failed because".
 */
final class EngineStopped extends RuntimeException {

  EngineStopped(String message) {
    super(message);
  }

  EngineStopped(String message, Throwable cause) {
    super(message, cause);
  }
}
