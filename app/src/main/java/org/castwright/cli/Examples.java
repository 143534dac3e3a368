package org.castwright.cli;

/** What stands over the examples at the foot of each help text. */
final class Examples {

  static final String HEADING = "%nExamples:%n";

  private Examples() {}
}
