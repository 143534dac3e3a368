package org.castwright.advice;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.pour.Elastic;
import org.castwright.pour.Plate;

/**
 * The block's walls as plates as large as the casting behind them, under the highest pressure all
 * over. The two walls across the main pull are whole: clamped and simply supported edges bound
 * their bending. The others are halved by the seam, where their edge is free.
 */
final class WallAdvice {

  /** A wall may give so much, mm; common practice, no source. */
  private static final double ALLOWED = 0.2;

  /** A wall flatter than this against the free edge is shut off by the seam's own ground. */
  private static final double FLATTEST = 0.2;

  private final PourJob job;
  private final Elastic print;
  private final double pressurePa;
  private final List<PourAdvice.Panel> panels = new ArrayList<>();

  private WallAdvice(PourJob job, double pressurePa) {
    this.job = job;
    this.pressurePa = pressurePa;
    print = job.print() == PourJob.Print.FDM ? Elastic.PLA : Elastic.PHOTOPOLYMER;
  }

  static PourAdvice.Walls of(PourJob job, double pressurePa, List<String> notes) {
    WallAdvice w = new WallAdvice(job, pressurePa);
    w.measure();
    double needed = 0;
    for (PourAdvice.Panel p : w.panels) {
      needed = Math.max(needed, p.neededMm());
      if (p.deflectionMm() > ALLOWED) {
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
        w.print.modulusMPa(), source, ALLOWED, Numbers.round(needed, 2), List.copyOf(w.panels));
  }

  private void measure() {
    Box3 c = job.casting().bounds();
    Box3 b = job.block().bounds();
    double x = c.size().x();
    double y = c.size().y();
    double z = c.size().z();
    whole("+z", x, y, b.max().z() - c.max().z());
    whole("-z", x, y, c.min().z() - b.min().z());
    halved("+x", y, z / 2, b.max().x() - c.max().x());
    halved("-x", y, z / 2, c.min().x() - b.min().x());
    halved("+y", x, z / 2, b.max().y() - c.max().y());
    halved("-y", x, z / 2, c.min().y() - b.min().y());
  }

  private void whole(String side, double a, double b, double thickness) {
    double s = Math.min(a, b);
    double l = Math.max(a, b);
    double nu = print.poisson();
    panel(side, "clamped", s, l, thickness, Plate.clamped(l / s, nu));
    panel(side, "simply supported", s, l, thickness, Plate.simple(l / s, nu));
  }

  private void panel(String side, String held, double s, double l, double thickness, Plate plate) {
    panels.add(
        new PourAdvice.Panel(
            side,
            held,
            Numbers.round(s, 2),
            Numbers.round(l, 2),
            Numbers.round(thickness, 3),
            Numbers.round(plate.deflectionMm(print, s, thickness, pressurePa), 5),
            Numbers.round(plate.stressMPa(s, thickness, pressurePa), 4),
            Numbers.round(plate.thicknessMm(print, s, ALLOWED, pressurePa), 3)));
  }

  private void halved(String side, double edge, double height, double boxed) {
    double thickness = Math.min(boxed, job.sideWallMm());
    double ratio = Math.max(FLATTEST, height / edge);
    Plate plate =
        new Plate(
            Plate.freeEdgeDeflection(ratio, print.poisson()), Double.NaN, Double.NaN, 0, 0, 0);
    panels.add(
        new PourAdvice.Panel(
            side,
            "free along the seam",
            Numbers.round(Math.min(edge, height), 2),
            Numbers.round(Math.max(edge, height), 2),
            Numbers.round(thickness, 3),
            Numbers.round(plate.deflectionMm(print, edge, thickness, pressurePa), 5),
            null,
            Numbers.round(plate.thicknessMm(print, edge, ALLOWED, pressurePa), 3)));
  }
}
