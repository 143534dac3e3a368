package org.castwright.plan;

import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.algorithm.MinimumAreaRectangle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Turns the model into the mold frame: z along the pull; about it so that the block is small and y,
 * up while pouring, leaves the fewest air pockets to vent.
 */
final class FramePlanner {

  /** A turned rectangle must save this share of the area; else the model's own axes are kept. */
  private static final double WORTH_TURNING = 0.03;

  private FramePlanner() {}

  /**
   * @param model as healed, unscaled
   * @param scale factors for the model's axes
   * @param pull of piece 1 in the model's frame
   * @param freely whether the mold may stand in any position about its pull
   * @param fromBelow whether the gate joins at the bottom
   */
  static MoldFrame of(TriMesh model, Vec3 scale, Vec3 pull, boolean freely, boolean fromBelow) {
    TriMesh scaled = model.scaled(scale);
    Frame frame = Frame.along(pull);
    frame = frame.turned(smallestRectangle(scaled.toLocal(frame)));
    frame = PourPosition.of(scaled, frame, freely, fromBelow);
    Box3 box = scaled.toLocal(frame).bounds();
    return new MoldFrame(scale, frame, box.center());
  }

  /** A frame whose y is an up direction of the model's frame, turned about it for a small block. */
  static MoldFrame standing(TriMesh model, Vec3 scale, Vec3 up) {
    TriMesh scaled = model.scaled(scale);
    Frame lying = Frame.along(up);
    lying = lying.turned(smallestRectangle(scaled.toLocal(lying)));
    Frame axes = new Frame(lying.v(), lying.w(), lying.u());
    return new MoldFrame(scale, axes, scaled.toLocal(axes).bounds().center());
  }

  /** The same frame turned by right angles about its pull. */
  static MoldFrame turned(TriMesh model, MoldFrame frame, int turns) {
    Frame axes = frame.axes().quarterTurned(turns);
    Box3 box = model.scaled(frame.scale()).toLocal(axes).bounds();
    return new MoldFrame(frame.scale(), axes, box.center());
  }

  /** Degrees to turn the frame by so that its axes lie along the smallest rectangle, or 0. */
  private static double smallestRectangle(TriMesh local) {
    Coordinate[] points = new Coordinate[local.vertexCount()];
    for (int i = 0; i < points.length; i++) {
      points[i] = new Coordinate(local.xyz()[3 * i], local.xyz()[3 * i + 1]);
    }
    Geometry hull = new ConvexHull(points, new GeometryFactory()).getConvexHull();
    Geometry rectangle = MinimumAreaRectangle.getMinimumRectangle(hull);
    if (rectangle.getArea() > (1 - WORTH_TURNING) * hull.getEnvelope().getArea()) {
      return 0;
    }
    Coordinate[] c = rectangle.getCoordinates();
    double angle = Math.toDegrees(StrictMath.atan2(c[1].y - c[0].y, c[1].x - c[0].x));
    return angle - 90 * Math.rint(angle / 90);
  }
}
