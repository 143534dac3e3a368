package org.castwright.mesh;

/**
 * A model that cannot be used as it is. The message is one sentence for the person at the bench:
 * what is wrong, where, and what to do.
 */
public final class MeshException extends RuntimeException {

  public MeshException(String message) {
    super(message);
  }

  public MeshException(String message, Throwable cause) {
    super(message, cause);
  }
}
