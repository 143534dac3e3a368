package org.castwright.plan;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * What holds the closed mold together, opens it and names its pieces. Sizes are common practice, no
 * source, except the bolt holes: clearance holes of the medium series of ISO 273 (M4 4.5, M5 5.5,
 * M6 6.6 mm, from memory).
 */
final class FeaturePlanner {

  /** How far tools reach past the outside so that they cut clean, mm. */
  static final double PAST = 1;

  private static final double SEAT_DEPTH = 1;
  static final double MARK_DEPTH = 0.6;
  static final double SLOT_WIDTH = 12;
  static final double SLOT_HEIGHT = 3;
  static final double SLOT_DEPTH = 5;
  private static final int ROUND = 32;

  private final Room room;
  private final BlockPlan block;
  private final BlockBox box;
  private final List<Feature> features = new ArrayList<>();
  private final List<double[]> bands = new ArrayList<>();
  private final List<Room.Disc> onFace = new ArrayList<>();

  FeaturePlanner(Room room, BlockPlan block) {
    this.room = room;
    this.block = block;
    this.box = block.box();
  }

  /**
   * @param channels already placed; those along the pull come out where marks would go
   */
  List<Feature> plan(Closing closing, List<Channel> channels) {
    for (Channel c : channels) {
      if (c.course() == Channel.Course.PULL) {
        onFace.add(new Room.Disc(c.outer().x(), c.outer().y(), c.mouthMm() / 2));
      }
    }
    if (block.shape() != BlockShape.BOX) {
      features.add(outside());
    }
    switch (closing) {
      case BANDS -> bandGrooves();
      case BOLTS -> bolts();
      case CLAMPS -> clampSeats();
      case NONE -> {}
    }
    prySlots();
    marks();
    return List.copyOf(features);
  }

  /** Diameter of a bolt's clear hole for a block of this size, mm. */
  static double boltHole(BlockBox box) {
    double size = Math.max(box.x1() - box.x0(), box.y1() - box.y0());
    return size < 80 ? 4.5 : size < 160 ? 5.5 : 6.6;
  }

  private Feature outside() {
    Polygon around =
        Outline.rectangle(box.x0() - PAST, box.y0() - PAST, box.x1() + PAST, box.y1() + PAST);
    return new Feature(
        "outline",
        Feature.Kind.OUTLINE,
        0,
        prisms(around.difference(block.outline()), box.z0() - PAST, box.z1() + PAST));
  }

  private void bandGrooves() {
    BandGrooves grooves = BandGrooves.of(block);
    features.addAll(grooves.features());
    bands.addAll(grooves.strips());
  }

  private void bolts() {
    double r = boltHole(box) / 2;
    List<double[]> at = Spread.pick(room.places(r, 3, 1.5), 4, 8 * r);
    for (double[] p : at) {
      TriMesh hole =
          Primitives.frustum(r, box.z0() - PAST, r, box.z1() + PAST, ROUND)
              .translated(new Vec3(p[0], p[1], 0));
      put("bolt-", Feature.Kind.BOLT_HOLE, 0, List.of(hole), p, r);
    }
  }

  private void clampSeats() {
    double r = Math.max(4, Math.min(8, block.wallMm()));
    double depth = Math.min(SEAT_DEPTH, block.wallMm() / 4);
    for (double[] p : Spread.pick(room.places(r, 1, 1.5), 4, 4 * r)) {
      Vec3 at = new Vec3(p[0], p[1], 0);
      TriMesh low = Primitives.frustum(r, box.z0() - PAST, r, box.z0() + depth, ROUND);
      TriMesh high = Primitives.frustum(r, box.z1() - depth, r, box.z1() + PAST, ROUND);
      List<TriMesh> tools = List.of(low.translated(at), high.translated(at));
      put("clamp-", Feature.Kind.CLAMP_SEAT, 0, tools, p, r);
    }
  }

  private void put(
      String name, Feature.Kind kind, int piece, List<TriMesh> tools, double[] p, double r) {
    long same = features.stream().filter(f -> f.kind() == kind).count();
    features.add(new Feature(name + (same + 1), kind, piece, tools));
    room.take(p[0], p[1], r);
    onFace.add(new Room.Disc(p[0], p[1], r));
  }

  /** One slot on each side, at the seam, where the wall is thickest. */
  private void prySlots() {
    Coordinate[] ring = block.outline().norm().getCoordinates();
    for (int side = -1; side <= 1; side += 2) {
      double[] best = null;
      for (int i = 0; i + 1 < ring.length; i++) {
        best = better(best, thickest(ring[i], ring[i + 1], side));
      }
      if (best != null) {
        addSlot(best);
      }
    }
  }

  private static double[] better(double[] a, double[] b) {
    return a == null || (b != null && b[4] > a[4] + 0.01) ? b : a;
  }

  /** The best place on one outline edge: {@code x, y, nx, ny, room}; null when there is none. */
  private double[] thickest(Coordinate a, Coordinate b, int side) {
    double l = a.distance(b);
    // normal form runs clockwise: the outside is on the left hand
    double nx = -(b.y - a.y) / l;
    double ny = (b.x - a.x) / l;
    if (nx * side < 0.8 || l == 0) {
      return null;
    }
    double[] best = null;
    int n = (int) Math.ceil(l);
    for (int k = 0; k <= n; k++) {
      double x = a.x + (b.x - a.x) * k / n;
      double y = a.y + (b.y - a.y) * k / n;
      double free = slotRoom(x, y, nx, ny);
      if (free >= 2 && (best == null || free > best[4] + 0.01)) {
        best = new double[] {x, y, nx, ny, free};
      }
    }
    return best;
  }

  /** How deep a slot could go there, mm; 0 where one may not be. */
  private double slotRoom(double x, double y, double nx, double ny) {
    double h = SLOT_WIDTH / 2 + 1;
    boolean inBand = bands.stream().anyMatch(b -> y + h > b[0] && y - h < b[1]);
    if (inBand || y - h < box.y0() + 2 || y + h > box.y1() - 2) {
      return 0;
    }
    double inX = x - SLOT_DEPTH / 2 * nx;
    double inY = y - SLOT_DEPTH / 2 * ny;
    double cavity = room.ground().shadowDistance(inX, inY) - h;
    return Math.min(cavity, room.toTaken(inX, inY) - h);
  }

  private void addSlot(double[] s) {
    double height = room.ground().heightAt(s[0] - 0.5 * s[2], s[1] - 0.5 * s[3]);
    if (Double.isNaN(height)) {
      return;
    }
    double depth = Math.min(SLOT_DEPTH, Math.max(2, block.wallMm() - 2));
    Polygon plain = Outline.rectangle(-depth, -SLOT_WIDTH / 2, PAST, SLOT_WIDTH / 2);
    AffineTransformation turn = new AffineTransformation(s[2], -s[3], s[0], s[3], s[2], s[1]);
    TriMesh tool =
        Prism.of(
            (Polygon) turn.transform(plain), height - SLOT_HEIGHT / 2, height + SLOT_HEIGHT / 2);
    put("pry-", Feature.Kind.PRY_SLOT, 0, List.of(tool), s, SLOT_WIDTH / 2);
  }

  /** Number and pour arrow on the outer face of each piece. */
  private void marks() {
    double size = Math.max(5, Math.min(12, 0.12 * (box.y1() - box.y0())));
    Coordinate at = markPlace(0.75 * size);
    if (at == null) {
      return;
    }
    for (int piece = 1; piece <= 2; piece++) {
      Geometry digit = Glyphs.digit(piece, size);
      Geometry arrow =
          AffineTransformation.translationInstance(0.75 * size, 0).transform(Glyphs.arrow(size));
      double flip = piece == 1 ? 1 : -1;
      AffineTransformation place =
          AffineTransformation.translationInstance(-0.625 * size, -size / 2)
              .scale(flip, 1)
              .translate(at.x, at.y);
      List<TriMesh> tools = new ArrayList<>();
      for (Geometry g : List.of(digit, arrow)) {
        double z0 = piece == 1 ? box.z1() - MARK_DEPTH : box.z0() - PAST;
        double z1 = piece == 1 ? box.z1() + PAST : box.z0() + MARK_DEPTH;
        tools.addAll(prisms(place.transform(g), z0, z1));
      }
      features.add(new Feature("mark-" + piece, Feature.Kind.MARK, piece, tools));
    }
  }

  /** The free place nearest to the middle of the outer face. */
  private Coordinate markPlace(double radius) {
    Envelope e = block.outline().getEnvelopeInternal();
    Coordinate best = null;
    for (int j = 0; j <= 24; j++) {
      for (int i = 0; i <= 24; i++) {
        Coordinate c =
            new Coordinate(
                e.getMinX() + e.getWidth() * i / 24, e.getMinY() + e.getHeight() * j / 24);
        boolean nearer = best == null || c.distance(e.centre()) < best.distance(e.centre()) - 1e-9;
        if (nearer && freeOnFace(c, radius)) {
          best = c;
        }
      }
    }
    return best;
  }

  private boolean freeOnFace(Coordinate c, double radius) {
    for (double[] b : bands) {
      if (c.y + radius > b[0] - 1 && c.y - radius < b[1] + 1) {
        return false;
      }
    }
    for (Room.Disc d : onFace) {
      if (Math.hypot(c.x - d.x(), c.y - d.y()) < radius + d.radius() + 1) {
        return false;
      }
    }
    return room.toOutside(c.x, c.y) > radius + 1;
  }

  static List<TriMesh> prisms(Geometry g, double z0, double z1) {
    List<TriMesh> out = new ArrayList<>();
    for (int i = 0; i < g.getNumGeometries(); i++) {
      if (g.getGeometryN(i) instanceof Polygon p && !p.isEmpty()) {
        out.add(Prism.of(p, z0, z1));
      }
    }
    return out;
  }
}
