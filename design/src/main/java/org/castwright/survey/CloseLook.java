package org.castwright.survey;

import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/** Measures everything about one direction on the full mesh. Belongs to one thread. */
final class CloseLook {

  // catches up to this many pixels wide are measured again in tiles
  private static final double NARROW_PIXELS = 4;
  // half a step of a 32-bit float, relative: the rounding of an STL file
  private static final double FLOAT_STEP = 1.0 / (1 << 24);

  private final TriMesh mesh;
  private final FacetTable facets;
  private final int[] twin;
  private final SurveyOptions options;
  private final DepthImage image = new DepthImage();
  private final double reach;

  /**
   * @param twin from {@link EdgeTwins}
   */
  CloseLook(TriMesh mesh, FacetTable facets, int[] twin, SurveyOptions options) {
    this.mesh = mesh;
    this.facets = facets;
    this.twin = twin;
    this.options = options;
    double most = 0;
    for (double c : mesh.xyz()) {
      most = Math.max(most, Math.abs(c));
    }
    reach = most;
  }

  /** An opening and where it is caught. */
  record Seen(Opening opening, CaughtPlaces caught) {}

  /**
   * @param d the pull, its sense settled
   * @param threads for measuring narrow catches
   */
  Seen along(Vec3 d, int pixels, int threads) {
    Frame frame = Frame.along(d);
    image.look(mesh, frame, options.finePixels(), 0);
    Outline outline = Outline.of(image);
    double release = options.releaseMm();
    image.look(mesh, frame, pixels, release * NarrowLook.SHARE);
    CaughtColumns columns = new CaughtColumns(image, release);
    double width = columns.width();
    double resolution = image.raster().pixel();
    NarrowLook narrow = new NarrowLook(image.points(), mesh.tri(), columns, release);
    if (!columns.isEmpty() && width < NARROW_PIXELS * resolution && narrow.pixel() < resolution) {
      narrow.run(threads);
      width = narrow.width();
      resolution = narrow.pixel();
      columns.keepAt(narrow.columns());
    } else {
      columns.keepWiderThan(release);
    }
    CaughtPlaces caught = CaughtPlaces.none(d, facets.count());
    double depth = 0;
    if (columns.anyKept()) {
      FacetHits hits = new FacetHits(image, columns, facets.count());
      hits.run(image.points(), mesh);
      caught = CaughtPlaces.from(mesh, facets, hits, d);
      depth = deepest(columns);
    }
    return new Seen(opening(d, outline, caught.area(), depth, width, resolution), caught);
  }

  private double deepest(CaughtColumns columns) {
    double depth = 0;
    for (int c = 0; c < image.raster().columns(); c++) {
      if (columns.kept(c)) {
        depth = Math.max(depth, image.gap(c));
      }
    }
    return depth;
  }

  private Opening opening(
      Vec3 d, Outline outline, double area, double depth, double width, double resolution) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double[] p = image.points();
    for (int i = 2; i < mesh.xyz().length; i += 3) {
      low = Math.min(low, p[i]);
      high = Math.max(high, p[i]);
    }
    DraftShares draft = DraftShares.of(facets, d.x(), d.y(), d.z());
    double rounding = draft.underOne() * facets.totalArea() * reach * FLOAT_STEP;
    return new Opening(
        d,
        image.trappedVolume(),
        rounding + samplingError(image.quarters()),
        area,
        depth,
        width,
        resolution,
        width <= options.releaseMm(),
        outline.level(),
        high - outline.level(),
        outline.level() - low,
        image.shadowArea(),
        outline.flatness(),
        outline.steepness(),
        draft,
        Silhouette.loops(mesh, facets, twin, d));
  }

  /** The standard error of the mean of four estimates, each four times a quarter. */
  private static double samplingError(double[] quarters) {
    double mean = 0;
    for (double q : quarters) {
      mean += q;
    }
    double sum = 0;
    for (double q : quarters) {
      sum += (4 * q - mean) * (4 * q - mean);
    }
    return Math.sqrt(sum / 12);
  }
}
