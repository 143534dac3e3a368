package org.castwright.advice;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.pour.BlockWall;
import org.castwright.pour.Elastic;

/** The block's walls under the highest pressure all over. */
final class WallAdvice {

  private final PourJob job;
  private final Elastic print;
  private final double pressurePa;
  private final List<PourAdvice.Panel> panels = new ArrayList<>();

  private WallAdvice(PourJob job, double pressurePa) {
    this.job = job;
    this.pressurePa = pressurePa;
    print = Elastic.ofPrint(job.print() == PourJob.Print.FDM);
  }

  static PourAdvice.Walls of(PourJob job, double pressurePa, List<String> notes) {
    WallAdvice w = new WallAdvice(job, pressurePa);
    w.measure();
    double needed = 0;
    for (PourAdvice.Panel p : w.panels) {
      needed = Math.max(needed, p.neededMm());
      if (p.deflectionMm() > BlockWall.ALLOWED_MM) {
        notes.add(
            "The wall "
                + p.side()
                + " ("
                + p.held()
                + ") gives by "
                + p.deflectionMm()
                + " mm under the liquid: back it with a board or a band.");
      }
    }
    String source =
        job.print() == PourJob.Print.FDM
            ? "printed PLA, 3 to 4 GPa in a materials database"
            : "standard photopolymer, 1.5 to 2.8 GPa, common practice, no source";
    return new PourAdvice.Walls(
        w.print.modulusMPa(),
        source,
        BlockWall.ALLOWED_MM,
        Numbers.round(needed, 2),
        List.copyOf(w.panels));
  }

  private void measure() {
    for (BlockWall w : BlockWall.of(job.casting().bounds().size(), print)) {
      double t = thickness(w);
      panels.add(
          new PourAdvice.Panel(
              w.side(),
              w.held(),
              Numbers.round(w.shortMm(), 2),
              Numbers.round(w.longMm(), 2),
              Numbers.round(t, 3),
              Numbers.round(w.plate().deflectionMm(print, w.spanMm(), t, pressurePa), 5),
              w.whole() ? Numbers.round(w.plate().stressMPa(w.spanMm(), t, pressurePa), 4) : null,
              Numbers.round(w.neededMm(print, pressurePa), 3)));
    }
  }

  private double thickness(BlockWall w) {
    Box3 c = job.casting().bounds();
    Box3 b = job.block().bounds();
    Vec3 above = b.max().minus(c.max());
    Vec3 below = c.min().minus(b.min());
    Vec3 room = w.side().startsWith("+") ? above : below;
    double boxed = w.side().endsWith("x") ? room.x() : w.side().endsWith("y") ? room.y() : room.z();
    return w.whole() ? boxed : Math.min(boxed, job.sideWallMm());
  }
}
