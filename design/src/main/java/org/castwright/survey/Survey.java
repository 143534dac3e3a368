package org.castwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * Looks for the pull direction along which a model opens best.
 *
 * <ol>
 *   <li>Candidates: x, y, z, normals of large flat parts, principal axes, and an even spread; each
 *       is rated by one coarse picture.
 *   <li>The best few are refined by a pattern search on finer pictures.
 *   <li>Directions that trap equally little are ordered by how plane the seam can be, how much
 *       surface lacks draft, how deep the draw is and how steep the seam must be; clean directions
 *       stand for their neighbors.
 *   <li>The distinct best are looked at closely on the full mesh: what is caught, how wide, where.
 *       Directions that open within the release tolerance go first.
 * </ol>
 *
 * All of it is the same for any number of threads.
 */
public final class Survey {

  private static final String STAGE = "looking for the pull direction";
  private static final double COARSE_DONE = 0.4;
  private static final double SEARCH_DONE = 0.7;
  private static final double RANKED_DONE = 0.95;

  private final TriMesh mesh;
  private final SurveyOptions options;
  private final Progress progress;
  private final FacetTable facets;
  private final int[] twin;
  private final Shortlist shortlist;
  private final AtomicInteger tried = new AtomicInteger();

  private Survey(TriMesh mesh, SurveyOptions options, Progress progress) {
    if (mesh.isEmpty()) {
      throw new MeshException("The model has no triangles; load one that has a surface.");
    }
    this.mesh = mesh;
    this.options = options;
    this.progress = progress;
    twin = EdgeTwins.of(mesh);
    double volume = mesh.volume();
    if (!(volume > 0)) {
      throw new MeshException(
          "The model encloses no volume or is inside out; turn its facets outward first.");
    }
    facets = new FacetTable(mesh);
    shortlist = new Shortlist(volume);
  }

  /**
   * Finds the best pull.
   *
   * @param mesh closed, outward-oriented, mm
   * @throws MeshException if the mesh is empty, open or inside out
   */
  public static SurveyResult of(TriMesh mesh, SurveyOptions options, Progress progress) {
    return new Survey(mesh, options, progress).best();
  }

  /**
   * Looks along one given direction, whose sense is kept.
   *
   * @param mesh closed, outward-oriented, mm
   * @param direction of any length above zero
   * @throws MeshException if the mesh is empty, open or inside out
   */
  public static SurveyResult along(
      TriMesh mesh, Vec3 direction, SurveyOptions options, Progress progress) {
    Survey s = new Survey(mesh, options, progress);
    progress.at(STAGE, 0);
    CloseLook.Seen seen = s.closeLook().along(direction.unit(), options.lookPixels(), s.threads());
    progress.at(STAGE, 1);
    List<Vec3> axes = new PrincipalAxes(mesh, s.facets).axes();
    return new SurveyResult(List.of(seen.opening()), seen.caught(), axes, 1, false, 0);
  }

  private int threads() {
    return options.threads();
  }

  private CloseLook closeLook() {
    return new CloseLook(mesh, facets, twin, options);
  }

  private SurveyResult best() {
    progress.at(STAGE, 0);
    PrincipalAxes axes = new PrincipalAxes(mesh, facets);
    Clustering copy = new Clustering(mesh, 0);
    FacetTable copyFacets = facets;
    boolean simplified = mesh.triangleCount() > options.simplifyAbove();
    if (simplified) {
      copy = Clustering.to(mesh, facets.totalArea(), options.simplifyAbove() / 2);
      copyFacets = new FacetTable(copy.mesh());
    }
    List<Candidate> pool = coarse(copy.mesh(), copyFacets, axes);
    pool.addAll(search(copy.mesh(), copyFacets, pool));
    List<Candidate> chosen = shortlist.distinct(pool, options.ranked(), options.apartDegrees());
    List<Ranked> looks = looks(chosen);
    Vec3 up = looks.get(0).opening().direction();
    CloseLook.Seen seen = closeLook().along(up, options.lookPixels(), threads());
    List<Opening> openings = new ArrayList<>();
    openings.add(seen.opening());
    for (int i = 1; i < looks.size(); i++) {
      openings.add(looks.get(i).opening());
    }
    progress.at(STAGE, 1);
    return new SurveyResult(
        openings, seen.caught(), axes.axes(), tried.get(), simplified, copy.bound());
  }

  /** Rates all candidates by one coarse picture each. */
  private List<Candidate> coarse(TriMesh copy, FacetTable copyFacets, PrincipalAxes axes) {
    List<Candidate> start = Candidates.of(facets, axes, options.directions());
    Candidate[] rated = new Candidate[start.size()];
    AtomicInteger done = new AtomicInteger();
    Lanes.run(
        rated.length,
        threads(),
        () -> new Scorer(copy, copyFacets, options),
        (scorer, i) -> {
          rated[i] = scorer.score(start.get(i), options.coarsePixels());
          progress.at(STAGE, COARSE_DONE * done.incrementAndGet() / rated.length);
        });
    tried.addAndGet(rated.length);
    return new ArrayList<>(List.of(rated));
  }

  /** Refines the best: all of them with large steps, then the better half with small ones. */
  private List<Candidate> search(TriMesh copy, FacetTable copyFacets, List<Candidate> pool) {
    List<Candidate> starts =
        shortlist.distinct(pool, options.refined(), options.apartDegrees()).stream()
            .filter(c -> c.trapped() > shortlist.floor())
            .toList();
    double half = PatternSearch.FIRST_STEP / 2;
    int coarse = options.coarsePixels();
    List<Candidate> walked = walk(copy, copyFacets, starts, coarse, PatternSearch.FIRST_STEP, half);
    walked = shortlist.ordered(walked, Candidate::trapped, c -> 0);
    int kept = (walked.size() + 1) / 2;
    List<Candidate> fine =
        walk(
            copy,
            copyFacets,
            walked.subList(0, kept),
            options.finePixels(),
            half / 2,
            PatternSearch.LAST_STEP);
    List<Candidate> out = new ArrayList<>(fine);
    out.addAll(walked.subList(kept, walked.size()));
    progress.at(STAGE, SEARCH_DONE);
    return out;
  }

  private List<Candidate> walk(
      TriMesh copy,
      FacetTable copyFacets,
      List<Candidate> from,
      int pixels,
      double step,
      double last) {
    Candidate[] out = new Candidate[from.size()];
    Lanes.run(
        out.length,
        threads(),
        () -> new Scorer(copy, copyFacets, options),
        (scorer, i) -> {
          progress.at(STAGE, COARSE_DONE);
          PatternSearch search = new PatternSearch(scorer, pixels, shortlist.floor());
          Candidate start = scorer.score(from.get(i), pixels);
          out[i] = scorer.score(search.from(start, step, last), options.finePixels());
          tried.addAndGet(search.looks());
        });
    return List.of(out);
  }

  private record Ranked(Opening opening, double cost) {}

  /** Looks closely at each and puts them in order, those that open first. */
  private List<Ranked> looks(List<Candidate> chosen) {
    Ranked[] seen = new Ranked[chosen.size()];
    AtomicInteger done = new AtomicInteger();
    Vec3 center = Sense.centerOfVolume(mesh);
    Lanes.run(
        seen.length,
        threads(),
        this::closeLook,
        (look, i) -> {
          Candidate c = chosen.get(i);
          Vec3 d = Sense.of(mesh, facets, center, c.direction());
          seen[i] = new Ranked(look.along(d, options.lookPixels() / 2, 1).opening(), c.cost());
          double share = (double) done.incrementAndGet() / seen.length;
          progress.at(STAGE, SEARCH_DONE + (RANKED_DONE - SEARCH_DONE) * share);
        });
    List<Ranked> out = new ArrayList<>();
    for (boolean free : new boolean[] {true, false}) {
      List<Ranked> group = new ArrayList<>();
      for (Ranked r : seen) {
        if (r.opening().free() == free) {
          group.add(r);
        }
      }
      out.addAll(shortlist.ordered(group, r -> r.opening().trappedVolume(), Ranked::cost));
    }
    return out;
  }
}
