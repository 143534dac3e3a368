package org.castwright.plan;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.TriMesh;

/**
 * How the model's frame becomes the mold frame: scale each model axis, read the result in {@code
 * axes}, subtract {@code origin}.
 *
 * @param scale factors above zero for the model's x, y and z
 * @param axes mold axes in the model's frame
 * @param origin of the mold frame, in mold axes before the shift
 */
public record MoldFrame(Vec3 scale, Frame axes, Vec3 origin) {

  /**
   * Coordinates are first rounded to this part of a millimeter, 15 nm, which 32-bit floats hold
   * exactly up to 256 mm: faces that were flat before the turn are flat again after it.
   */
  private static final double GRID = 65536;

  /** The model in the mold frame, on the float grid that STL files can hold. */
  public TriMesh toMold(TriMesh model) {
    TriMesh m = model.scaled(scale).toLocal(axes).translated(origin.negate());
    double[] rounded = new double[m.xyz().length];
    for (int i = 0; i < rounded.length; i++) {
      rounded[i] = Math.rint(m.xyz()[i] * GRID) / GRID;
    }
    return FloatGrid.snap(new TriMesh(rounded, m.tri()));
  }

  /** A direction of the mold frame in the model's frame. */
  public Vec3 directionToModel(Vec3 direction) {
    return axes.toWorld(direction);
  }

  /** A point of the model's frame, before scaling, in the mold frame. */
  public Vec3 pointToMold(Vec3 p) {
    Vec3 scaled = new Vec3(p.x() * scale.x(), p.y() * scale.y(), p.z() * scale.z());
    return axes.toLocal(scaled).minus(origin);
  }

  /** A point of the mold frame in the model's frame, before scaling. */
  public Vec3 pointToModel(Vec3 point) {
    Vec3 p = axes.toWorld(point.plus(origin));
    return new Vec3(p.x() / scale.x(), p.y() / scale.y(), p.z() / scale.z());
  }
}
