package org.castwright.mold;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.TriMesh;

/**
 * How a piece stands on the printer's bed. Its cavity looks against its pull, so the pull goes
 * down: exactly, if the piece ends in a flat face there; otherwise as near as the largest flat face
 * allows that the piece can stand on.
 *
 * @param axes of the printer in the mold frame, the third pointing up
 * @param foot what the piece stands on
 */
public record PrintPose(Frame axes, Foot foot) {

  /** What a piece stands on. */
  public enum Foot {
    /** A flat face square to the pull, the cavity straight up. */
    OUTER_FACE,
    /** Another flat face. */
    FLAT_FACE,
    /** Points or a line only. */
    NONE
  }

  /** The least share of the piece's outline, seen from above, that must lie on the bed. */
  private static final double SHARE = 0.2;

  /** Cosine to the pull: faces that lean up to 75° from it still keep the cavity from the bed. */
  private static final double OUTWARD = 0.26;

  /**
   * A facet turned this little (cosine, half a degree) from the bed and this near it, mm, lies on
   * it.
   */
  private static final double FLAT = 0.99996;

  private static final double NEAR = 0.01;

  /** The faces tried are those of the largest facets, so many. */
  private static final int TRIED = 200;

  /** Heights above the bed that only rounding makes, mm. */
  private static final double ROUNDING = 1e-9;

  /**
   * The pose of a piece.
   *
   * @param mesh in the closed mold, mold frame
   * @param pull unit direction in which it leaves
   */
  public static PrintPose of(TriMesh mesh, Vec3 pull) {
    if (stands(mesh, pull)) {
      return new PrintPose(Frame.along(pull.negate()), Foot.OUTER_FACE);
    }
    List<Vec3> faces = faces(mesh).stream().filter(d -> stands(mesh, d)).toList();
    for (double least : new double[] {OUTWARD, -OUTWARD}) {
      Vec3 best =
          faces.stream()
              .filter(d -> d.dot(pull) > least)
              .max(Comparator.comparingDouble(d -> contact(mesh, d)))
              .orElse(null);
      if (best != null) {
        return new PrintPose(Frame.along(best.negate()), Foot.FLAT_FACE);
      }
    }
    return new PrintPose(Frame.along(pull.negate()), Foot.NONE);
  }

  /** The piece standing on z = 0, centered on the bed, with float coordinates. */
  public TriMesh apply(TriMesh mesh) {
    TriMesh turned = mesh.toLocal(axes);
    Box3 b = turned.bounds();
    // whole floats keep the moved coordinates exact to the last digits of the piece itself
    Vec3 shift = new Vec3(-Math.rint(b.center().x()), -Math.rint(b.center().y()), -b.min().z());
    TriMesh standing = turned.translated(shift);
    double[] xyz = standing.xyz();
    for (int i = 2; i < xyz.length; i += 3) {
      if (xyz[i] < ROUNDING) {
        xyz[i] = 0;
      }
    }
    return FloatGrid.snap(standing);
  }

  private static boolean stands(TriMesh mesh, Vec3 down) {
    Vec3 size = mesh.toLocal(Frame.along(down)).bounds().size();
    return contact(mesh, down) >= SHARE * size.x() * size.y();
  }

  /** The area, mm², that lies on a plane below which there is nothing. */
  private static double contact(TriMesh mesh, Vec3 down) {
    double lowest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < mesh.vertexCount(); i++) {
      lowest = Math.max(lowest, mesh.vertex(i).dot(down));
    }
    double area = 0;
    int[] t = mesh.tri();
    for (int f = 0; f < mesh.triangleCount(); f++) {
      if (mesh.vertex(t[3 * f]).dot(down) < lowest - NEAR) {
        continue;
      }
      Vec3 a = mesh.areaVector(f);
      if (a.dot(down) > FLAT * a.length()) {
        area += a.length();
      }
    }
    return area;
  }

  /** Normals of the largest facets, each once. */
  private static List<Vec3> faces(TriMesh mesh) {
    double[] areas = new double[mesh.triangleCount()];
    Arrays.setAll(areas, f -> mesh.areaVector(f).length());
    double[] sorted = areas.clone();
    Arrays.sort(sorted);
    double least = sorted[Math.max(0, sorted.length - TRIED)];
    List<Vec3> out = new ArrayList<>();
    IntStream.range(0, areas.length)
        .filter(f -> areas[f] >= least && areas[f] > 0)
        .boxed()
        .sorted(Comparator.comparingDouble(f -> -areas[f]))
        .limit(TRIED)
        .map(f -> mesh.areaVector(f).unit())
        .filter(n -> out.stream().noneMatch(o -> o.dot(n) > FLAT))
        .forEachOrdered(out::add);
    return out;
  }
}
