package org.castwright.plan;

import java.util.List;
import org.castwright.cover.CoverTolerance;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.stretch.Stretch;
import org.castwright.stretch.StretchOptions;
import org.castwright.stretch.StretchResult;
import org.castwright.survey.CaughtPlaces;
import org.castwright.survey.Opening;
import org.castwright.survey.Survey;
import org.castwright.survey.SurveyOptions;
import org.castwright.survey.SurveyResult;

/**
 * Two opposite pieces that open because what is caught passes by stretching.
 *
 * @param survey along their pull
 * @param result every caught place with the strain that leaving takes there
 */
record ByStretch(SurveyResult survey, StretchResult result) {

  /** So many of the best directions are tried. */
  private static final int MOST = 4;

  /**
   * Looks for a pull along which every caught place is allowed.
   *
   * @param strain that the part which gives way takes without harm, as a share, above zero
   * @return null if there is none
   */
  static ByStretch of(
      TriMesh scaled,
      SurveyResult survey,
      double strain,
      SurveyOptions options,
      Progress progress) {
    StretchOptions d = StretchOptions.DEFAULT;
    StretchOptions o =
        new StretchOptions(d.across(), d.layers(), options.releaseMm(), d.safetyFactor());
    List<Opening> ranked = survey.ranked();
    for (int i = 0; i < Math.min(MOST, ranked.size()); i++) {
      Vec3 pull = ranked.get(i).direction();
      StretchResult r =
          Stretch.of(scaled, List.of(pull, pull.negate()), strain, o, progress.as("stretch"));
      if (r.opens()) {
        SurveyResult along =
            i == 0 ? survey : Survey.along(scaled, pull, options, progress.as("survey"));
        if (measured(along.caught(), r)) {
          return new ByStretch(along, r);
        }
      }
    }
    return null;
  }

  /** Whether every caught place but creases was wide enough to be measured. */
  private static boolean measured(CaughtPlaces caught, StretchResult r) {
    boolean[] found = new boolean[caught.places().size()];
    for (int f = 0; f < r.placeOfFacet().length; f++) {
      int place = caught.place(f);
      if (place >= 0 && place < found.length && r.placeOfFacet()[f] >= 0) {
        found[place] = true;
      }
    }
    for (int p = 0; p < found.length; p++) {
      if (!found[p] && caught.places().get(p).width() > CoverTolerance.DEFAULT.widthMm()) {
        return false;
      }
    }
    return !r.places().isEmpty();
  }
}
