package org.castwright.web;

/** A request that is not served: a status of HTTP and one sentence for a person. */
final class Refused extends RuntimeException {

  private static final long serialVersionUID = 1;

  private final int status;

  Refused(int status, String words) {
    super(words);
    this.status = status;
  }

  int status() {
    return status;
  }
}
