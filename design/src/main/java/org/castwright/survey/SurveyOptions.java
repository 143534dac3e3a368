package org.castwright.survey;

/**
 * How closely to survey.
 *
 * @param directions directions spread over the half sphere; 320 stand about 8° apart, inside the
 *     reach of the search that refines the best of them
 * @param coarsePixels columns along the longer side in the first look; 200 rank directions well
 *     enough, being half a millimeter on a model of 100 mm
 * @param finePixels columns along the longer side while a direction is refined
 * @param lookPixels columns along the longer side in the close look at the answer; the other ranked
 *     directions get half as many
 * @param refined how many of the best first looks are refined
 * @param ranked how many distinct directions to report, the best among them
 * @param apartDegrees ranked directions stand at least this far apart
 * @param releaseMm release tolerance: what is caught by no more than this, along the pull or across
 *     it, slips off; 0.05 mm is the play a printed and coated mold gives anyway (common practice,
 *     no source)
 * @param steepDegrees a seam rising more steeply than this against the plane across the pull counts
 *     against a direction, since the shut-off beside it loses its draft
 * @param simplifyAbove models with more triangles than this are searched on a simplified copy of
 *     half as many; the reported numbers still come from the full model. On a scan of 75,000
 *     triangles the copy of 25,000 leads to a pull that traps 0.03 % more, less than the noise
 * @param threads how many threads to use; the answer does not depend on it
 */
public record SurveyOptions(
    int directions,
    int coarsePixels,
    int finePixels,
    int lookPixels,
    int refined,
    int ranked,
    double apartDegrees,
    double releaseMm,
    double steepDegrees,
    int simplifyAbove,
    int threads) {

  /** The values argued for above, on all processors. */
  public static final SurveyOptions DEFAULT =
      new SurveyOptions(
          320,
          200,
          400,
          2000,
          8,
          10,
          5,
          0.05,
          60,
          50_000,
          Runtime.getRuntime().availableProcessors());

  /** Checks the ranges. */
  public SurveyOptions {
    if (directions < 1 || refined < 1 || ranked < 1 || simplifyAbove < 1 || threads < 1) {
      throw new IllegalArgumentException("a survey needs counts of at least one");
    }
    if (coarsePixels < 16 || finePixels < 16 || lookPixels < 64) {
      throw new IllegalArgumentException("a survey needs pictures of at least 16 pixels");
    }
    if (!(releaseMm > 0) || !(apartDegrees > 0) || !(steepDegrees > 0)) {
      throw new IllegalArgumentException("a survey needs tolerances above zero");
    }
  }

  /** The same with another number of threads. */
  public SurveyOptions withThreads(int n) {
    return new SurveyOptions(
        directions,
        coarsePixels,
        finePixels,
        lookPixels,
        refined,
        ranked,
        apartDegrees,
        releaseMm,
        steepDegrees,
        simplifyAbove,
        n);
  }

  /** The same with another release tolerance, mm. */
  public SurveyOptions withReleaseMm(double mm) {
    return new SurveyOptions(
        directions,
        coarsePixels,
        finePixels,
        lookPixels,
        refined,
        ranked,
        apartDegrees,
        mm,
        steepDegrees,
        simplifyAbove,
        threads);
  }

  /** The same with another limit for searching on the model itself. */
  public SurveyOptions withSimplifyAbove(int triangles) {
    return new SurveyOptions(
        directions,
        coarsePixels,
        finePixels,
        lookPixels,
        refined,
        ranked,
        apartDegrees,
        releaseMm,
        steepDegrees,
        triangles,
        threads);
  }
}
