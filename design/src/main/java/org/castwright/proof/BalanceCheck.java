package org.castwright.proof;

import java.util.List;

/** Whether block = pieces + casting + channels + what was declared as taken. */
final class BalanceCheck {

  private BalanceCheck() {}

  static ProofCheck of(
      double block, List<Body> bodies, List<ProofInput.Taken> taken, ProofLimits limits) {
    double left = block;
    for (Body b : bodies) {
      left -= b.mesh().volume();
    }
    for (ProofInput.Taken t : taken) {
      left -= t.volume();
    }
    double share = Math.abs(left) / block;
    boolean passed = share <= limits.balanceShare();
    String words;
    if (passed) {
      words =
          "The block of "
              + Say.number(block)
              + " mm³ is accounted for to within "
              + Say.number(Math.abs(left))
              + " mm³.";
    } else {
      words =
          Say.number(Math.abs(left))
              + " mm³ of the block "
              + (left > 0 ? "belong to no body and were not declared" : "are counted twice")
              + "; where, a sum cannot say.";
    }
    return new ProofCheck(
        "volume balance", passed, share, limits.balanceShare(), "of the block", words);
  }
}
