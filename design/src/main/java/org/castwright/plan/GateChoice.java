package org.castwright.plan;

import org.castwright.material.Material;

/**
 * Which end of the casting the gate joins, and why.
 *
 * @param asked by the maker
 * @param bottom whether it joins at the bottom
 * @param why in a sentence, with the source of the rule
 */
public record GateChoice(GateEnd asked, boolean bottom, String why) {

  /** What is wanted, before anybody knows whether there is room for it. */
  static GateChoice wanted(GateEnd asked, Material material) {
    Material.Filling advised = material.filling();
    String rule =
        advised == null
            ? "The table advises no end for the gate of this material; the top is the usual one"
                + " (common practice, no source)."
            : advised.words() + " (" + advised.source() + ").";
    boolean below = advised != null && advised.bottom();
    return switch (asked) {
      case TOP ->
          new GateChoice(
              asked,
              false,
              below
                  ? "Top as asked or by default; filled from below it would do better: " + rule
                  : "Top as asked or by default.");
      case BOTTOM -> new GateChoice(asked, true, "Bottom as asked.");
      case AUTO -> new GateChoice(asked, below, rule);
    };
  }

  /** At the top although the bottom was wanted. */
  GateChoice fallenBack(String because) {
    return new GateChoice(asked, false, "At the bottom it cannot be: " + because + ".");
  }
}
