package org.castwright.cli;

/** Exit codes of the program. */
public enum Exit {
  /** Done; a mold was proved. */
  OK(0),
  /** A fault of the program. */
  INTERNAL(1),
  /** Bad input or usage. */
  INPUT(2),
  /** The model cannot be molded as asked. */
  CAUGHT(3),
  /** The mold was written but its proof failed. */
  UNPROVED(4),
  /** Stopped by the person. */
  CANCELLED(130);

  private final int code;

  Exit(int code) {
    this.code = code;
  }

  public int code() {
    return code;
  }
}
