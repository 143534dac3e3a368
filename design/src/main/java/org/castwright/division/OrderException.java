package org.castwright.division;

/** Pieces cannot leave in the order asked: nothing is left for one of them. */
public final class OrderException extends RuntimeException {

  OrderException(String message) {
    super(message);
  }
}
