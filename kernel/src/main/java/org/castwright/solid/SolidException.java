package org.castwright.solid;

import java.util.List;

/** A solid operation that could not give a closed body; names the operation and its operands. */
public final class SolidException extends RuntimeException {

  private final transient List<Solid> operands;

  public SolidException(String operation, List<Solid> operands, String why) {
    super(operation + " of " + operands + " failed because " + why);
    this.operands = List.copyOf(operands);
  }

  public SolidException(String operation, List<Solid> operands, String why, Throwable cause) {
    super(operation + " of " + operands + " failed because " + why, cause);
    this.operands = List.copyOf(operands);
  }

  public List<Solid> operands() {
    return operands == null ? List.of() : operands;
  }
}
