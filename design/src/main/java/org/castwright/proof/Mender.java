package org.castwright.proof;

import java.util.Set;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;

/**
 * Looks for what small changes to the pieces of a mold would mend, as far as opening, wedges and
 * thin places go. Quick, to be asked before the proof, and again once the changes are made.
 */
public final class Mender {

  private final SolidKernel kernel;
  private final Progress progress;
  private final Kept kept = new Kept();

  public Mender(SolidKernel kernel, Progress progress) {
    this.kernel = kernel;
    this.progress = progress;
  }

  /**
   * What would mend all that fails in these; nothing if a body is not closed.
   *
   * @param changed names of the pieces that have lost something since they were asked, if that is
   *     all that happened: pieces pass each other as before, and the others are no thinner; null
   *     the first time
   * @throws Progress.CancelledException if the person has asked to stop
   */
  public Mend look(ProofInput input, Set<String> changed) {
    ProofRun run = new ProofRun(input, kernel, progress, kept);
    return Mend.of(Proof.failed(run.thinAndCaught(changed)));
  }
}
