package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.mesh.FacetDistance;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;

/**
 * Stands a mold up whose pieces leave along any pulls, and places its channels: the best way up in
 * which no channel holds a piece, or, where a place for the gate is asked for, one in which it can
 * be had near by.
 */
final class Stands {

  /** Least room beside the casting for seams and keys, mm; common practice, no source. */
  private static final double LEAST_SIDE = 8;

  /** What it costs in pockets of air that the gate is off by the casting's longest side. */
  private static final double OFF = 60;

  /** What it costs in pockets of air to have no funnel. */
  private static final double FUNNEL = 1;

  /** Pulls closer to one line than this (sine) have nothing between them. */
  private static final double ONE_LINE = 0.2;

  /** Facets nearer than this share of the longest side tell which way the casting faces. */
  private static final double ABOUT = 0.03;

  private static final String INSTEAD =
      AskedChannels.NO_WAY + "; it stands where it would without being asked for";

  private final TriMesh model;
  private final Vec3 scale;
  private final List<Vec3> pulls;
  private final MoldOptions options;
  private final Material material;

  /**
   * @param model as healed, unscaled
   * @param scale factors for its axes
   * @param pulls unit vectors in its frame
   */
  Stands(TriMesh model, Vec3 scale, List<Vec3> pulls, MoldOptions options, Material material) {
    this.model = model;
    this.scale = scale;
    this.pulls = pulls;
    this.options = options;
    this.material = material;
  }

  /** A mold stood up, with its channels. */
  record Stand(
      Standing.Up up,
      MoldFrame frame,
      TriMesh casting,
      Sizes sizes,
      BlockPlan block,
      PourPlan pour) {}

  /** A way up, before its channels are planned. */
  private record Draft(
      Standing.Up up,
      MoldFrame frame,
      TriMesh casting,
      Sizes sizes,
      BlockPlan block,
      UprightChannels channels) {

    Stand planned(GateChoice end) {
      return new Stand(up, frame, casting, sizes, block, channels.plan(end));
    }
  }

  /**
   * The best.
   *
   * @param end for the plan's record
   */
  Stand best(GateChoice end) {
    Openings o = options.openings();
    TriMesh scaled = model.scaled(scale);
    if (o.gateAt() != null) {
      Stand gated = gated(scaled, end);
      if (gated != null) {
        return gated;
      }
    }
    for (Standing.Up up : Standing.ways(scaled, pulls)) {
      Draft draft = draft(up, up.pull() >= 0);
      AskedPlaces asked = AskedPlaces.of(o, draft.frame);
      if (!asked.vents().isEmpty()) {
        draft.channels.ask(asked.onlyVents(), releases(draft));
      }
      Stand stand = draft.planned(end);
      if (!draft.channels.caught()) {
        if (asked.gate() != null) {
          stand.pour.warnings().add(0, AskedChannels.told("gate", asked.gate(), INSTEAD));
        }
        return stand;
      }
    }
    throw new IllegalStateException("no way up without a pull along it");
  }

  /** The way up that brings the gate nearest to its place for least, or null. */
  private Stand gated(TriMesh scaled, GateChoice end) {
    double size = scaled.bounds().longestSide();
    Stand best = null;
    double least = Double.POSITIVE_INFINITY;
    for (Standing.Up up : Standing.all(scaled, pulls, toward(outward(scaled)))) {
      if (!up.releases() || up.score() >= least) {
        break;
      }
      Releases releases = releases(draft(up, false));
      for (boolean narrow : up.pull() >= 0 ? new boolean[] {true} : new boolean[] {false, true}) {
        double cost = up.score() + (narrow && up.pull() < 0 ? FUNNEL : 0);
        if (cost >= least) {
          continue;
        }
        Draft draft = draft(up, narrow);
        AskedPlaces asked = AskedPlaces.of(options.openings(), draft.frame);
        cost += OFF * draft.channels.ask(asked, releases.copy()) / size;
        Stand stand = cost < least ? draft.planned(end) : null;
        if (stand != null && (up.pull() < 0 || !draft.channels.caught())) {
          best = stand;
          least = cost;
        }
      }
    }
    return best;
  }

  /**
   * Ways up that bring a place uppermost, or nearly, and that lie between two pulls, whose pieces
   * then part a channel.
   *
   * @param outward the way the casting faces there
   */
  private List<Vec3> toward(Vec3 outward) {
    List<Vec3> out = new ArrayList<>(List.of(outward));
    for (int i = 0; i < pulls.size(); i++) {
      for (int j = i + 1; j < pulls.size(); j++) {
        Vec3 a = pulls.get(i);
        Vec3 b = pulls.get(j);
        Vec3 n = a.cross(b);
        if (n.length() < ONE_LINE) {
          continue;
        }
        Vec3 flat = outward.minus(n.unit().times(outward.dot(n.unit())));
        if (a.cross(flat).dot(n) > 0 && flat.cross(b).dot(n) > 0) {
          out.add(flat.unit());
        }
      }
    }
    return out;
  }

  /** The way the casting faces about the gate's place, a unit vector of the model's frame. */
  private Vec3 outward(TriMesh scaled) {
    Vec3 at = options.openings().gateAt();
    Vec3 p = new Vec3(at.x() * scale.x(), at.y() * scale.y(), at.z() * scale.z());
    double nearest = Double.POSITIVE_INFINITY;
    for (int f = 0; f < scaled.triangleCount(); f++) {
      nearest = Math.min(nearest, FacetDistance.of(scaled, f, p));
    }
    double about = nearest + ABOUT * scaled.bounds().longestSide();
    Vec3 sum = Vec3.ZERO;
    for (int f = 0; f < scaled.triangleCount(); f++) {
      double d = FacetDistance.of(scaled, f, p);
      if (d < about) {
        sum = sum.plus(scaled.areaVector(f).times(1 - d / about));
      }
    }
    return sum.length() > 0 ? sum.unit() : Vec3.Z;
  }

  /**
   * @param narrow whether channels narrow upward
   */
  private Draft draft(Standing.Up up, boolean narrow) {
    MoldFrame frame = FramePlanner.standing(model, scale, up.direction());
    TriMesh casting = frame.toMold(model);
    Sizes sizes = Sizes.of(casting.bounds(), material, options);
    BlockPlan block = block(casting.bounds(), sizes);
    UprightChannels channels = new UprightChannels(casting, block.box(), sizes, narrow);
    return new Draft(up, frame, casting, sizes, block, channels);
  }

  private Releases releases(Draft draft) {
    List<Vec3> local = new ArrayList<>();
    pulls.forEach(p -> local.add(draft.frame.axes().toLocal(p)));
    Box3 box = draft.block.box().mesh().bounds();
    return new Releases(draft.casting, box, local, options.releaseMm());
  }

  private static BlockPlan block(Box3 c, Sizes sizes) {
    double side = Math.max(LEAST_SIDE, sizes.wall());
    double top = Math.max(side, 4 + sizes.funnelHeight(sizes.mouth()));
    BlockBox box =
        new BlockBox(
            BlockPlanner.out(c.min().x() - side, -1),
            BlockPlanner.out(c.min().y() - side, -1),
            BlockPlanner.out(c.max().x() + side, 1),
            BlockPlanner.out(c.max().y() + top, 1),
            BlockPlanner.out(c.min().z() - side, -1),
            BlockPlanner.out(c.max().z() + side, 1));
    return new BlockPlan(
        BlockShape.BOX,
        Outline.rectangle(box.x0(), box.y0(), box.x1(), box.y1()),
        box,
        sizes.wall());
  }
}
