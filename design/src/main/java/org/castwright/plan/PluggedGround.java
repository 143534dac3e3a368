package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.parting.BlockBox;
import org.castwright.side.SidePiece;

/** The ground of a parting from which side pieces take their share: no place for anything else. */
final class PluggedGround implements Ground {

  /** Spacing of the maps of side pieces' shadows, mm. */
  private static final double CELL = 0.5;

  private final Ground ground;
  private final List<ShadowMap> plugs = new ArrayList<>();

  private PluggedGround(Ground ground) {
    this.ground = ground;
  }

  static Ground of(Ground ground, List<SidePiece> sides, BlockBox box) {
    if (sides.isEmpty()) {
      return ground;
    }
    PluggedGround out = new PluggedGround(ground);
    double margin = Math.max(box.x1() - box.x0(), box.y1() - box.y0()) / 4;
    for (SidePiece s : sides) {
      out.plugs.add(ShadowMap.of(s.body().mesh(), margin, CELL));
    }
    return out;
  }

  @Override
  public double heightAt(double x, double y) {
    return ground.heightAt(x, y);
  }

  @Override
  public double roofAt(double x, double y) {
    return ground.roofAt(x, y);
  }

  @Override
  public double undersideAt(double x, double y) {
    return ground.undersideAt(x, y);
  }

  /** Distance to the casting or the nearest side piece; outside a map's grid that of its rim. */
  @Override
  public double shadowDistance(double x, double y) {
    return Math.min(ground.shadowDistance(x, y), sideDistance(x, y));
  }

  @Override
  public double sideDistance(double x, double y) {
    double d = Double.POSITIVE_INFINITY;
    for (ShadowMap plug : plugs) {
      d = Math.min(d, plug.distanceAt(x, y));
    }
    return d;
  }
}
