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

  /** The model in the mold frame, on the float grid that STL files can hold. */
  public TriMesh toMold(TriMesh model) {
    return FloatGrid.snap(model.scaled(scale).toLocal(axes).translated(origin.negate()));
  }

  /** A direction of the mold frame in the model's frame. */
  public Vec3 directionToModel(Vec3 direction) {
    return axes.toWorld(direction);
  }

  /** A point of the mold frame in the model's frame. */
  public Vec3 pointToModel(Vec3 point) {
    Vec3 p = axes.toWorld(point.plus(origin));
    return new Vec3(p.x() / scale.x(), p.y() / scale.y(), p.z() / scale.z());
  }
}
