package org.castwright.survey;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** Rates directions by one depth image each. Belongs to one thread. */
final class Scorer {

  // Weights of the secondary measure, in millimeters of seam unevenness on a model whose diagonal
  // is 100 mm: a plane seam matters most, then draft, then a shallow draw (common practice, no
  // source).
  private static final double WEIGHT_UNDRAFTED = 3;
  private static final double WEIGHT_DRAW = 0.05;
  private static final double WEIGHT_STEEP = 0.2;
  private static final double BONUS_CLEAN = 0.3;
  private static final double UNIT_DIAGONAL = 100;
  // sine of 2 degrees, the nominal draft
  private static final double UNDRAFTED_SINE = 0.0348994967;

  private final TriMesh mesh;
  private final FacetTable facets;
  private final SurveyOptions options;
  private final double scale;
  private final DepthImage image = new DepthImage();

  Scorer(TriMesh mesh, FacetTable facets, SurveyOptions options) {
    this.mesh = mesh;
    this.facets = facets;
    this.options = options;
    this.scale = UNIT_DIAGONAL / mesh.bounds().diagonal();
  }

  /** The trapped volume along a direction, mm³. */
  double trapped(Vec3 d, int pixels) {
    image.look(mesh, Frame.along(d), pixels, 0);
    return image.trappedVolume();
  }

  /** The candidate with its trapped volume and its secondary measure. */
  Candidate score(Candidate c, int pixels) {
    Vec3 d = c.direction();
    double trapped = trapped(d, pixels);
    return c.scored(trapped, cost(c, Outline.of(image)));
  }

  private double cost(Candidate c, Outline outline) {
    Vec3 d = c.direction();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double[] p = image.points();
    for (int i = 2; i < mesh.xyz().length; i += 3) {
      low = Math.min(low, p[i]);
      high = Math.max(high, p[i]);
    }
    double undrafted = 0;
    for (int f = 0; f < facets.count(); f++) {
      if (Math.abs(facets.normalDot(f, d.x(), d.y(), d.z())) < UNDRAFTED_SINE) {
        undrafted += facets.area(f);
      }
    }
    return scale * (outline.flatness() + WEIGHT_DRAW * (high - low))
        + WEIGHT_UNDRAFTED * undrafted / facets.totalArea()
        + WEIGHT_STEEP * Math.max(0, outline.steepness() - options.steepDegrees())
        - (c.origin().clean() ? BONUS_CLEAN : 0);
  }
}
