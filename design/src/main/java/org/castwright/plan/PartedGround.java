package org.castwright.plan;

import java.util.List;
import org.castwright.parting.BlockBox;
import org.castwright.parting.Parting;
import org.castwright.side.SidePiece;

/**
 * The ground of a parting. From what side pieces take their share of there is no place for anything
 * else.
 */
final class PartedGround implements Ground {

  /** Spacing of the maps of side pieces' shadows, mm. */
  private static final double CELL = 0.5;

  private final Parting parting;
  private final List<ShadowMap> sides;

  PartedGround(Parting parting, List<SidePiece> sides, BlockBox box) {
    this.parting = parting;
    double margin = Math.max(box.x1() - box.x0(), box.y1() - box.y0()) / 4;
    this.sides = sides.stream().map(s -> ShadowMap.of(s.body().mesh(), margin, CELL)).toList();
  }

  @Override
  public double heightAt(double x, double y) {
    return parting.heightAt(x, y);
  }

  @Override
  public double roofAt(double x, double y) {
    return parting.upperAt(x, y);
  }

  @Override
  public double undersideAt(double x, double y) {
    return parting.lowerAt(x, y);
  }

  /** Distance to the casting or the nearest side piece; outside a map's grid that of its rim. */
  @Override
  public double shadowDistance(double x, double y) {
    return Math.min(parting.shadowDistance(x, y), sideDistance(x, y));
  }

  @Override
  public double sideDistance(double x, double y) {
    double d = Double.POSITIVE_INFINITY;
    for (ShadowMap side : sides) {
      d = Math.min(d, side.distanceAt(x, y));
    }
    return d;
  }
}
