package org.castwright.proof;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/** Molds of three pieces in a block of 40 mm, made with the solid kernel. */
final class ManyPieces {

  static final double HALF = 20;
  static final double CLEARANCE = 0.2;
  static final Vec3 RIGHT = new Vec3(1, 1, 0).unit();
  static final Vec3 LEFT = new Vec3(-1, 1, 0).unit();

  private static final int KEY_SIDES = 32;
  private static final Vec3 KEY_FOOT = new Vec3(0, 16, 0);
  private static final double KEY_RADIUS = 2;
  private static final double KEY_TIP = 1.5;
  private static final double KEY_HEIGHT = 3;

  private final SolidKernel kernel;

  ManyPieces(SolidKernel kernel) {
    this.kernel = kernel;
  }

  /**
   * A flat cross of 24 mm with arms 8 mm wide. Two pieces leave toward its inner corners, the third
   * the other way; no two pulls are opposite. A tapering key on the second stands along the pull of
   * the first in the oblique face between them.
   */
  ProofInput cross() {
    Solid casting =
        kernel.union(
            "cross", List.of(box("a", -12, -4, -4, 12, 4, 4), box("b", -4, -12, -4, 4, 12, 4)));
    Solid right =
        kernel.difference("right", box("r", 0, 0, -HALF, HALF, HALF, HALF), List.of(casting));
    Solid left =
        kernel.difference("left", box("l", -HALF, 0, -HALF, 0, HALF, HALF), List.of(casting));
    Solid back =
        kernel.difference("back", box("k", -HALF, -HALF, -HALF, HALF, 0, HALF), List.of(casting));
    Solid key = key(0);
    Solid socket = key(CLEARANCE);
    Solid bored = kernel.difference("right", right, List.of(socket));
    Solid keyed = kernel.union("left", List.of(left, key));
    double clearance = right.volume() - bored.volume() - (keyed.volume() - left.volume());
    ProofInput.Key declared =
        new ProofInput.Key("key 1", KEY_FOOT, RIGHT, KEY_RADIUS, KEY_HEIGHT, CLEARANCE, 1, 0);
    return new ProofInput(
        block(),
        BallMold.file(casting.mesh()),
        none(),
        List.of(
            BallMold.piece("right", bored, RIGHT),
            BallMold.piece("left", keyed, LEFT),
            BallMold.piece("back", back, Vec3.Y.negate())),
        List.of(),
        List.of(declared),
        List.of(new ProofInput.Taken("key clearance", clearance)),
        ProofLimits.DEFAULT);
  }

  /**
   * A cube of 20 mm with a blind hole in one side, above the seam. A drafted core fills the hole
   * and leaves through the upper piece, which is caught by it until then.
   */
  ProofInput sideCore() {
    return sideCore(2.6, 3, 4);
  }

  /** The same with a core of these radii at its tip, at the casting and at the outside. */
  ProofInput sideCore(double tip, double mouth, double end) {
    double height = 5.5;
    Solid cube = box("cube", -10, -10, -10, 10, 10, 10);
    Solid hole = along(Primitives.frustum(tip, 0, mouth, 10, 48), Vec3.X, new Vec3(0, 0, height));
    Solid way = along(Primitives.frustum(mouth, 10, end, HALF, 48), Vec3.X, new Vec3(0, 0, height));
    Solid casting = kernel.difference("casting", cube, List.of(hole));
    Solid core = kernel.union("core", List.of(hole, way));
    Solid upper =
        kernel.difference(
            "upper", box("u", -HALF, -HALF, 0, HALF, HALF, HALF), List.of(cube, core));
    Solid lower =
        kernel.difference("lower", box("w", -HALF, -HALF, -HALF, HALF, HALF, 0), List.of(cube));
    return new ProofInput(
        block(),
        BallMold.file(casting.mesh()),
        none(),
        List.of(
            BallMold.piece("core", core, Vec3.X),
            BallMold.piece("upper", upper, Vec3.Z),
            BallMold.piece("lower", lower, Vec3.Z.negate())),
        List.of(),
        List.of(),
        List.of(),
        ProofLimits.DEFAULT);
  }

  /**
   * A cube of 20 mm with a slot of this width, 8 mm deep, in its top: two pieces, one with a fin.
   */
  ProofInput fin(double width) {
    Solid cube = box("cube", -10, -10, -10, 10, 10, 10);
    Solid slot = box("slot", -width / 2, -11, 2, width / 2, 11, 11);
    Solid casting = kernel.difference("casting", cube, List.of(slot));
    Solid upper =
        kernel.difference("upper", box("u", -HALF, -HALF, 0, HALF, HALF, HALF), List.of(casting));
    Solid lower =
        kernel.difference("lower", box("w", -HALF, -HALF, -HALF, HALF, HALF, 0), List.of(cube));
    return new ProofInput(
        block(),
        BallMold.file(casting.mesh()),
        none(),
        List.of(
            BallMold.piece("upper", upper, Vec3.Z),
            BallMold.piece("lower", lower, Vec3.Z.negate())),
        List.of(),
        List.of(),
        List.of(),
        ProofLimits.DEFAULT);
  }

  /** A cone along the pull of the first piece, grown by {@code more} square to its flank. */
  private Solid key(double more) {
    double slope = (KEY_TIP - KEY_RADIUS) / KEY_HEIGHT;
    double wider = more * Math.hypot(1, slope) / StrictMath.cos(Math.PI / KEY_SIDES);
    double low = -3;
    double high = KEY_HEIGHT + more;
    TriMesh cone =
        Primitives.frustum(
            KEY_RADIUS + slope * low + wider,
            low,
            KEY_RADIUS + slope * high + wider,
            high,
            KEY_SIDES);
    return along(cone, RIGHT, KEY_FOOT);
  }

  /** The mesh with its z axis along a direction. */
  private Solid along(TriMesh mesh, Vec3 axis, Vec3 foot) {
    return kernel.solid("turned", BallMold.turned(mesh, Frame.along(axis)).translated(foot));
  }

  private Solid box(String name, double x, double y, double z, double u, double v, double w) {
    return kernel.solid(name, Primitives.box(new Vec3(x, y, z), new Vec3(u, v, w)));
  }

  private static TriMesh block() {
    return BallMold.file(Primitives.box(new Vec3(-HALF, -HALF, -HALF), new Vec3(HALF, HALF, HALF)));
  }

  private static TriMesh none() {
    return new MeshBuilder().build();
  }

  /** The same mold with its pieces taken off in another order; keys follow their pieces. */
  static ProofInput ordered(ProofInput in, int... order) {
    List<ProofInput.Piece> pieces = new ArrayList<>();
    int[] place = new int[order.length];
    for (int i = 0; i < order.length; i++) {
      pieces.add(in.pieces().get(order[i]));
      place[order[i]] = i;
    }
    List<ProofInput.Key> keys =
        in.keys().stream()
            .map(
                k ->
                    new ProofInput.Key(
                        k.name(),
                        k.center(),
                        k.axis(),
                        k.radius(),
                        k.height(),
                        k.clearance(),
                        place[k.keyPiece()],
                        place[k.socketPiece()]))
            .toList();
    return new ProofInput(
        in.block(),
        in.casting(),
        in.channelBody(),
        pieces,
        in.channels(),
        keys,
        in.taken(),
        in.limits());
  }
}
