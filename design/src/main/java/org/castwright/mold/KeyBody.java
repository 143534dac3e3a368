package org.castwright.mold;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Frame;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.Key;
import org.castwright.plan.KeyShape;

/**
 * Meshes of a key and of its socket. The socket is the key's surface moved outward by the clearance
 * along its normal: flanks, dome and top alike.
 */
public final class KeyBody {

  private static final int SIDES = 48;
  private static final int ARC = 10;

  /** How far both reach below the sheet, so that a tilted sheet leaves no gap under them, mm. */
  private static final double LEAST_SINK = 1;

  private KeyBody() {}

  /** The bump to add to the piece that carries the key. */
  public static TriMesh key(Key k) {
    return place(k, k.shape() == KeyShape.CONE ? cone(k, 0) : dome(k, 0));
  }

  /** The hollow to take from the piece with the socket. */
  public static TriMesh socket(Key k) {
    double c = k.clearance();
    return place(k, k.shape() == KeyShape.CONE ? cone(k, c) : dome(k, c));
  }

  private static TriMesh place(Key k, double[] profile) {
    Frame frame = Frame.along(k.axis());
    // to world is to local of the transposed axes
    return Primitives.revolve(profile, SIDES).toLocal(frame.inverse()).translated(k.center());
  }

  private static double sink(Key k) {
    return LEAST_SINK + 0.25 * k.radius();
  }

  /** A frustum's flank moved by c along its normal is c / cos(draft) wider at every height. */
  private static double[] cone(Key k, double c) {
    double draft = Math.toRadians(Key.DRAFT_DEG);
    double ground = k.radius() + c / StrictMath.cos(draft);
    double top = k.height() + c;
    return new double[] {ground, -sink(k), ground, 0, ground - top * StrictMath.tan(draft), top};
  }

  /** A cap of a sphere; the moved surface is the cap of a sphere c larger about the same center. */
  private static double[] dome(Key k, double c) {
    double h = k.height();
    double sphere = (k.radius() * k.radius() + h * h) / (2 * h);
    double centerZ = h - sphere;
    double r = sphere + c;
    double groundAngle = StrictMath.asin(Math.max(-1, Math.min(1, -centerZ / r)));
    List<Double> p = new ArrayList<>();
    double ground = r * StrictMath.cos(groundAngle);
    p.add(ground);
    p.add(-sink(k));
    for (int i = 0; i <= ARC; i++) {
      double a = groundAngle + (Math.PI / 2 - groundAngle) * i / ARC;
      p.add(i == ARC ? 0 : r * StrictMath.cos(a));
      p.add(centerZ + r * StrictMath.sin(a));
    }
    return p.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
