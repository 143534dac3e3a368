package org.castwright.solid;

/** Whether a mesh can be a body, and if not, why. */
public enum SolidStatus {
  OK("closed, oriented and manifold"),
  EMPTY("it has no triangles"),
  NOT_FINITE("a coordinate is not a finite number"),
  NOT_MANIFOLD("it is not closed, oriented and manifold"),
  INSIDE_OUT("its triangles face inward"),
  FAILED("the kernel refused it");

  private final String words;

  SolidStatus(String words) {
    this.words = words;
  }

  /** The status in words, to be put after "because". */
  public String words() {
    return words;
  }
}
