package org.castwright.survey;

import java.util.ArrayList;
import java.util.List;
import org.castwright.geom.Vec3;

/** The directions a survey starts from: clean ones first, then an even spread. */
final class Candidates {

  // closer than this two directions are the same up to the rounding of a scan or an STL file
  private static final double SAME_DEGREES = 0.05;

  private Candidates() {}

  static List<Candidate> of(FacetTable facets, PrincipalAxes axes, int spread) {
    List<Candidate> out = new ArrayList<>();
    add(out, Vec3.Z, Candidate.Origin.WORLD_AXIS);
    add(out, Vec3.Y, Candidate.Origin.WORLD_AXIS);
    add(out, Vec3.X, Candidate.Origin.WORLD_AXIS);
    for (Vec3 n : LargeFacets.normals(facets)) {
      add(out, n, Candidate.Origin.LARGE_FACET);
    }
    for (int k = 0; k < 3; k++) {
      add(
          out,
          axes.axes().get(k),
          axes.distinct(k) ? Candidate.Origin.PRINCIPAL_AXIS : Candidate.Origin.SPREAD);
    }
    for (Vec3 d : fibonacci(spread)) {
      add(out, d, Candidate.Origin.SPREAD);
    }
    return out;
  }

  /** Directions spread evenly over the upper half sphere along a Fibonacci spiral. */
  static List<Vec3> fibonacci(int n) {
    double turn = Math.PI * (3 - Math.sqrt(5));
    List<Vec3> out = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double z = (i + 0.5) / n;
      double r = Math.sqrt(1 - z * z);
      out.add(new Vec3(r * StrictMath.cos(turn * i), r * StrictMath.sin(turn * i), z).unit());
    }
    return out;
  }

  private static void add(List<Candidate> out, Vec3 d, Candidate.Origin origin) {
    Candidate c = new Candidate(d, origin, 0, 0);
    for (Candidate o : out) {
      if (o.degreesTo(c) < SAME_DEGREES) {
        return;
      }
    }
    out.add(c);
  }
}
