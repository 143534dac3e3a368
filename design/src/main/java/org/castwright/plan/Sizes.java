package org.castwright.plan;

import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.pour.BlockWall;
import org.castwright.pour.Elastic;
import org.castwright.pour.Liquid;

/**
 * Sizes by rule; a wall is as thick as the liquid's pressure asks if that is more. Rules are common
 * practice, no source, unless the line says otherwise: walls 3 to 5 mm round castings up to 100 mm
 * and 5 to 8 mm up to 200 mm; keys 6 to 10 mm across up to 100 mm and 10 to 16 mm above, as high as
 * half their diameter; a funnel cone of 60°, its mouth 1.8 times the throat (about 18 mm over a 10
 * mm throat on a small table-top mold).
 *
 * @param wall round the cavity, mm
 * @param keyDiameter at the sheet, mm
 * @param keyGap from a key to cavity, outside or channel, mm
 * @param gate bore of the throat, mm
 * @param mouth diameter of the funnel's mouth, mm
 * @param vent bore, mm
 */
record Sizes(
    double wall, double keyDiameter, double keyGap, double gate, double mouth, double vent) {

  private static final double DENSE = 2000;

  /** Walls are rounded up to this, mm. */
  private static final double STEP = 0.1;

  private static final double MOUTH_PER_GATE = 1.8;

  /** Half the opening angle of the funnel, degrees. */
  static final double FUNNEL_HALF_ANGLE = 30;

  /**
   * @param casting in the mold frame, y up
   */
  static Sizes of(Box3 casting, Material material, MoldOptions options) {
    double size = casting.longestSide();
    double key = Math.max(6, Math.min(16, 0.1 * size));
    // a casting smaller than the usual gate gets a gate it can be cut from
    double gate = Math.min(material.gateMm(), Math.max(3, 0.2 * size));
    double vent = Math.min(material.ventMm(), Math.max(1, 0.05 * size));
    double mouth = MOUTH_PER_GATE * gate;
    double wall = options.wallMm() > 0 ? options.wallMm() : wall(casting, material, options);
    return new Sizes(wall, key, 3, gate, mouth, vent);
  }

  /**
   * By rule, which leaves room for keys and bands, or as thick as gives way by no more than {@link
   * BlockWall#ALLOWED_MM} when the mold is full.
   */
  private static double wall(Box3 casting, Material material, MoldOptions options) {
    double rule = Math.max(4, Math.min(10, 3 + 0.025 * casting.longestSide()));
    if (material.density().kgPerM3() > DENSE) {
      rule *= 1.25;
    }
    Vec3 box = casting.size();
    double head = (options.pour() == Pour.PULL ? box.z() : box.y()) + material.headMm();
    double pressure = Liquid.pressurePa(material.density().kgPerM3(), head);
    Elastic print = Elastic.ofPrint(options.process() == PrintProcess.FDM);
    double needed = STEP * Math.ceil(BlockWall.thickestMm(box, print, pressure) / STEP);
    return Math.max(rule, needed);
  }

  /** With the bores that are asked for, whatever the rule. */
  Sizes with(Openings o) {
    double throat = o.gateMm() > 0 ? o.gateMm() : gate;
    double bore = o.ventMm() > 0 ? o.ventMm() : vent;
    return new Sizes(wall, keyDiameter, keyGap, throat, MOUTH_PER_GATE * throat, bore);
  }

  /** With gate and vents of a share of their bores. */
  Sizes narrowed(double share) {
    return new Sizes(wall, keyDiameter, keyGap, share * gate, share * mouth, share * vent);
  }

  /** Height of the funnel cone from the throat to a mouth of the diameter given, mm. */
  double funnelHeight(double mouthDiameter) {
    return (mouthDiameter - gate) / 2 / Math.tan(Math.toRadians(FUNNEL_HALF_ANGLE));
  }
}
