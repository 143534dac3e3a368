package org.castwright.proof;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * A ball of 20 mm in a cube of 40 mm, parted at a height of choice, with two tapering keys, a gate
 * and a vent from above. As from files: float coordinates, every triangle with corners of its own.
 */
final class BallMold {

  static final double BALL = 10;
  static final double HALF = 20;
  static final double KEY_RADIUS = 3;
  static final double KEY_TIP = 2;
  static final double KEY_HEIGHT = 4;
  static final double CLEARANCE = 0.2;
  static final int KEY_SIDES = 32;
  static final Vec3[] KEY_PLACES = {new Vec3(14, 14, 0), new Vec3(-14, -14, 0)};

  private final SolidKernel kernel;
  private final double seam;
  private final double keyTilt;
  private final boolean ventCut;
  private final int sides;

  BallMold(SolidKernel kernel) {
    this(kernel, 0, 0, true, 48);
  }

  /**
   * A mold.
   *
   * @param seam height of the flat seam above the ball's equator
   * @param keyTilt degrees by which keys and sockets lean
   * @param ventCut whether the vent is cut through the upper piece
   * @param sides facets round the ball
   */
  BallMold(SolidKernel kernel, double seam, double keyTilt, boolean ventCut, int sides) {
    this.kernel = kernel;
    this.seam = seam;
    this.keyTilt = keyTilt;
    this.ventCut = ventCut;
    this.sides = sides;
  }

  ProofInput input() {
    Solid ball = solid("ball", Primitives.sphere(BALL, sides));
    Solid gate = column("gate", 2, new Vec3(0, 0, 0));
    Solid vent = column("vent", 0.6, new Vec3(5, 0, 0));
    Solid channels =
        kernel.difference("channels", kernel.union("runs", List.of(gate, vent)), List.of(ball));
    List<Solid> keys = new ArrayList<>();
    List<Solid> sockets = new ArrayList<>();
    for (Vec3 place : KEY_PLACES) {
      keys.add(key("key", place, 0));
      sockets.add(key("socket", place, CLEARANCE));
    }
    Solid top = box("top", seam, HALF);
    Solid bottom = box("bottom", -HALF, seam);
    List<Solid> fromTop = new ArrayList<>(sockets);
    fromTop.add(ball);
    fromTop.addAll(ventCut ? List.of(gate, vent) : List.of(gate));
    List<Solid> low = new ArrayList<>(keys);
    low.add(bottom);
    Solid upper = kernel.difference("upper", top, fromTop);
    Solid lower = kernel.difference("lower", kernel.union("bottom", low), List.of(ball));
    double clearance = 0;
    for (int i = 0; i < keys.size(); i++) {
      Solid round = kernel.difference("round", sockets.get(i), List.of(keys.get(i)));
      clearance += kernel.intersection("gap", round, top).volume();
    }
    return new ProofInput(
        file(Primitives.box(new Vec3(-HALF, -HALF, -HALF), new Vec3(HALF, HALF, HALF))),
        file(ball.mesh()),
        file(channels.mesh()),
        List.of(piece("upper", upper, Vec3.Z), piece("lower", lower, Vec3.Z.negate())),
        List.of(
            new ProofInput.Channel(
                "gate", ProofInput.ChannelKind.GATE, new Vec3(0, 0, 9), new Vec3(0, 0, HALF), 4),
            new ProofInput.Channel(
                "vent", ProofInput.ChannelKind.VENT, new Vec3(5, 0, 8), new Vec3(5, 0, HALF), 1.2)),
        declared(),
        List.of(new ProofInput.Taken("key clearance", clearance)),
        ProofLimits.DEFAULT);
  }

  private List<ProofInput.Key> declared() {
    List<ProofInput.Key> out = new ArrayList<>();
    for (Vec3 place : KEY_PLACES) {
      Vec3 foot = new Vec3(place.x(), place.y(), seam);
      Vec3 axis = tilt().toWorld(Vec3.Z);
      String name = "key " + (out.size() + 1);
      out.add(new ProofInput.Key(name, foot, axis, KEY_RADIUS, KEY_HEIGHT, CLEARANCE, 1, 0));
    }
    return out;
  }

  /** The check of a name, which the proof must have made. */
  static ProofCheck check(Proof proof, String name) {
    return proof.checks().stream()
        .filter(c -> c.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no check " + name + "; " + proof.failures()));
  }

  private Frame tilt() {
    double a = Math.toRadians(keyTilt);
    double s = StrictMath.sin(a);
    double c = StrictMath.cos(a);
    return new Frame(new Vec3(c, 0, -s), Vec3.Y, new Vec3(s, 0, c));
  }

  /** A key grown by {@code more} square to its flank and at its tip; it starts in the bottom. */
  private Solid key(String name, Vec3 place, double more) {
    double slope = (KEY_TIP - KEY_RADIUS) / KEY_HEIGHT;
    double wider = more * Math.hypot(1, slope) / StrictMath.cos(Math.PI / KEY_SIDES);
    double low = -2;
    double high = KEY_HEIGHT + more;
    TriMesh cone =
        Primitives.frustum(
            KEY_RADIUS + slope * low + wider,
            low,
            KEY_RADIUS + slope * high + wider,
            high,
            KEY_SIDES);
    Vec3 foot = new Vec3(place.x(), place.y(), seam);
    return solid(name, turned(cone, tilt()).translated(foot));
  }

  private Solid column(String name, double radius, Vec3 at) {
    return solid(name, Primitives.frustum(radius, 2, radius, HALF, 24).translated(at));
  }

  private Solid box(String name, double low, double high) {
    return solid(name, Primitives.box(new Vec3(-HALF, -HALF, low), new Vec3(HALF, HALF, high)));
  }

  private Solid solid(String name, TriMesh mesh) {
    return kernel.solid(name, mesh);
  }

  /** A piece whose print file lies with the pull downward. */
  static ProofInput.Piece piece(String name, Solid solid, Vec3 pull) {
    TriMesh mesh = FloatGrid.snap(solid.mesh());
    TriMesh lying = mesh.toLocal(Frame.along(pull.negate()).turned(30));
    TriMesh print = lying.translated(new Vec3(0, 0, -lying.bounds().min().z()));
    return new ProofInput.Piece(name, file(mesh), pull, file(print));
  }

  /** The mesh with its axes laid along those of a frame. */
  static TriMesh turned(TriMesh mesh, Frame frame) {
    MeshBuilder m = new MeshBuilder();
    for (int i = 0; i < mesh.vertexCount(); i++) {
      Vec3 p = frame.toWorld(mesh.vertex(i));
      m.vertex(p.x(), p.y(), p.z());
    }
    return new TriMesh(m.build().xyz(), mesh.tri());
  }

  /** As a binary STL gives it back: floats, three corners a triangle. */
  static TriMesh file(TriMesh mesh) {
    TriMesh snapped = FloatGrid.snap(mesh);
    MeshBuilder m = new MeshBuilder();
    for (int corner : snapped.tri()) {
      Vec3 p = snapped.vertex(corner);
      m.vertex(p.x(), p.y(), p.z());
    }
    for (int i = 0; i < m.vertexCount(); i += 3) {
      m.triangle(i, i + 1, i + 2);
    }
    return m.build();
  }
}
