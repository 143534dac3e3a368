package org.castwright.proof;

import java.util.ArrayList;
import java.util.List;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;

/**
 * Whether a written mold is a mold, judged on the bodies read back.
 *
 * @param passed whether every check passed
 * @param checks in the order they were made
 */
public record Proof(boolean passed, List<ProofCheck> checks) {

  public Proof {
    checks = List.copyOf(checks);
  }

  /**
   * Judges a mold. If a body is not closed the checks that need closed bodies are left out and the
   * proof says so in a failed check.
   *
   * @throws Progress.CancelledException if the person has asked to stop
   */
  public static Proof of(ProofInput input, SolidKernel kernel, Progress progress) {
    List<ProofCheck> checks = new ProofRun(input, kernel, progress, new Kept()).checks();
    return new Proof(checks.stream().allMatch(ProofCheck::passed), checks);
  }

  /** The checks that did not pass. */
  public List<ProofCheck> failures() {
    return failed(checks);
  }

  static List<ProofCheck> failed(List<ProofCheck> checks) {
    List<ProofCheck> out = new ArrayList<>(checks);
    out.removeIf(ProofCheck::passed);
    return out;
  }
}
