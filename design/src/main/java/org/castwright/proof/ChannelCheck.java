package org.castwright.proof;

import java.util.List;
import java.util.Locale;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;

/**
 * Whether a gate or vent joins the cavity, reaches the outside and is open between: points of its
 * axis and of a ring half a radius from it lie in no piece.
 */
final class ChannelCheck {

  private static final int ALONG = 64;
  private static final int ROUND = 8;

  /** Distance at which an end still touches, mm. */
  private static final double TOUCH = 0.05;

  private final PullView view;
  private final int firstPiece;
  private final Columns block;
  private final Bvh castingTree;
  private final Bvh blockTree;

  /**
   * @param view in which body 0 is the casting and the pieces start at {@code firstPiece}
   */
  ChannelCheck(PullView view, int firstPiece, Columns block, Bvh castingTree, Bvh blockTree) {
    this.view = view;
    this.firstPiece = firstPiece;
    this.block = block;
    this.castingTree = castingTree;
    this.blockTree = blockTree;
  }

  List<ProofCheck> of(ProofInput.Channel channel) {
    String title = channel.kind().name().toLowerCase(Locale.ROOT) + ": " + channel.name();
    return List.of(joins(title, channel), reaches(title, channel), open(title, channel));
  }

  private ProofCheck joins(String title, ProofInput.Channel c) {
    double away = view.columns(0).holds(c.inner()) ? 0 : castingTree.closest(c.inner()).distance();
    boolean passed = away <= TOUCH;
    String words =
        passed
            ? c.name() + " joins the cavity at " + Say.place(c.inner()) + "."
            : c.name()
                + " ends "
                + Say.number(away)
                + " mm short of the cavity at "
                + Say.place(c.inner())
                + ".";
    return new ProofCheck(title + " joins the cavity", passed, away, TOUCH, "mm", words);
  }

  private ProofCheck reaches(String title, ProofInput.Channel c) {
    double deep = block.holds(c.outer()) ? blockTree.closest(c.outer()).distance() : 0;
    boolean passed = deep <= TOUCH;
    String words =
        passed
            ? c.name() + " reaches the outside at " + Say.place(c.outer()) + "."
            : c.name()
                + " ends "
                + Say.number(deep)
                + " mm inside the block at "
                + Say.place(c.outer())
                + ".";
    return new ProofCheck(title + " reaches the outside", passed, deep, TOUCH, "mm", words);
  }

  private ProofCheck open(String title, ProofInput.Channel c) {
    int closed = 0;
    int tried = 0;
    Vec3 where = Vec3.ZERO;
    String by = "";
    int stretches = c.axis().size() - 1;
    int along = Math.max(2, ALONG / stretches);
    for (int s = 0; s < stretches; s++) {
      Vec3 from = c.axis().get(s);
      Vec3 axis = c.axis().get(s + 1).minus(from);
      Frame frame = Frame.along(axis);
      for (int i = 1; i < along; i++) {
        Vec3 foot = from.plus(axis.times((double) i / along));
        for (int k = 0; k <= ROUND; k++) {
          Vec3 p = k == ROUND ? foot : foot.plus(ring(frame, k).times(c.diameter() / 4));
          int piece = pieceAt(p);
          tried++;
          if (piece >= 0 && closed++ == 0) {
            where = p;
            by = view.columns(piece).name();
          }
        }
      }
    }
    double share = (double) closed / tried;
    String words =
        closed == 0
            ? c.name() + " is open from the cavity to the outside."
            : c.name()
                + " is blocked by "
                + by
                + " near "
                + Say.place(where)
                + ", at "
                + Say.number(100 * share)
                + " % of the points tried.";
    return new ProofCheck(title + " open", closed == 0, share, 0, "share blocked", words);
  }

  private int pieceAt(Vec3 p) {
    for (int i = firstPiece; i < view.size(); i++) {
      if (view.columns(i).holds(p)) {
        return i;
      }
    }
    return -1;
  }

  private static Vec3 ring(Frame frame, int k) {
    double a = 2 * Math.PI * k / ROUND;
    return frame.u().times(StrictMath.cos(a)).plus(frame.v().times(StrictMath.sin(a)));
  }
}
