package org.castwright.mold;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/**
 * Takes from the pieces of a mold what is too thin to last, and what is caught: a small round
 * hollow at each thin place, as such edges are stoned off in the shop, and the lips that hold a
 * piece, as undercuts are blocked out (common practice, no source). Cast material fills what opens
 * to the cavity; the nubs are scraped off the casting.
 */
public final class Relief {

  /** Radius of a hollow at an edge, mm: past what a common nozzle can print as an edge. */
  private static final double RADIUS = 0.5;

  /** Radius of a hollow in a web, mm: about what the places stand apart. */
  private static final double WEB_RADIUS = 0.6;

  private static final int SIDES = 12;

  /** Corners of a hollow are rounded to floats, mm. */
  private static final double ROUNDING = 1e-4;

  /** A part cut off that holds no more is left out, mm³. */
  private static final double CHIP = 1;

  /** Places nearer than this share a hollow, mm. */
  private static final double SAME = 0.2;

  /** Moves along its pull at which a piece is asked what it meets, mm. */
  private static final double[] MOVES = {0.25, 0.5, 1, 2, 4, 8};

  /** Catches of a piece may stay up to this share of what may be left. */
  private static final double STAYS = 0.9;

  /** What is cast may lose no more than this by being joined to what fills hollows, mm³. */
  private static final double LOST = 0.01;

  /** How far a relief is when its hollows are cut. */
  private static final double CUT = 0.8;

  private final Mold mold;
  private final double mostMm3;
  private final SolidKernel kernel;
  private final Solid casting;
  private final Optional<Solid> channels;
  private final List<Solid> whole = new ArrayList<>();

  /** What a caught piece gives up, by its name: the same however often it is relieved. */
  private final Map<String, List<Solid>> lipsOf = new ConcurrentHashMap<>();

  /** Whether a hollow opens to what is cast, by its place. */
  private final Map<Vec3, Boolean> open = new ConcurrentHashMap<>();

  /** What became of each piece the last time, by its name. */
  private final Map<String, Less> last = new ConcurrentHashMap<>();

  private List<Solid> bodies = List.of();
  private List<Piece> pieces = List.of();

  /** What cast material fills of what is cut from pieces. */
  private final List<Solid> filled = new ArrayList<>();

  private int hollows;
  private int lips;

  /**
   * @param mold as it was cut
   * @param mostMm3 what the nubs of the casting may hold, and what of a catch may stay
   */
  public Relief(Mold mold, double mostMm3, SolidKernel kernel) {
    this.mold = mold;
    this.mostMm3 = mostMm3;
    this.kernel = kernel;
    casting = kernel.solid("casting", mold.casting());
    channels =
        mold.channels().isEmpty()
            ? Optional.empty()
            : Optional.of(kernel.solid("channels", mold.channels()));
    mold.pieces().forEach(p -> whole.add(kernel.solid(p.name(), p.mesh())));
  }

  /**
   * Relieves the mold; may be asked again with more.
   *
   * @param edges places along thin edges by the names of their pieces, mold frame
   * @param webs places in thin webs
   * @param caught names of pieces that are caught on what is cast
   * @return the mold with hollows, or none where the nubs would hold too much
   */
  public Optional<Mold> with(
      Map<String, List<Vec3>> edges,
      Map<String, List<Vec3>> webs,
      Set<String> caught,
      Progress progress) {
    progress.at("solids", 0);
    filled.clear();
    List<Less> less =
        IntStream.range(0, whole.size())
            .parallel()
            .mapToObj(i -> less(i, edges, webs, caught))
            .toList();
    progress.at("solids", CUT);
    hollows = less.stream().mapToInt(Less::hollows).sum();
    lips = less.stream().mapToInt(Less::lips).sum();
    less.forEach(l -> filled.addAll(l.filled));
    List<Solid> rest = inOne(less.stream().map(Less::body).toList());
    double taken = volume(whole) - volume(rest);
    TriMesh cast = cast();
    double nubs = cast.volume() - mold.volumes().channels();
    if (nubs < -LOST && lips > 0) {
      // films too thin for the kernel were to be cut away: hollows alone
      return with(edges, webs, Set.of(), progress);
    }
    if (hollows + lips == 0 || Math.abs(nubs) > mostMm3) {
      return Optional.empty();
    }
    progress.at("solids", 1);
    return Optional.of(mold(rest, cast, taken - nubs));
  }

  /** What is to be taken from a piece. */
  private record Asked(List<Vec3> edges, List<Vec3> webs, boolean caught) {}

  /** A piece that gave something up, and what cast material fills of that. */
  private record Less(Asked asked, Solid body, List<Solid> filled, int hollows, int lips) {}

  private Less less(
      int i, Map<String, List<Vec3>> edges, Map<String, List<Vec3>> webs, Set<String> caught) {
    Piece p = mold.pieces().get(i);
    Asked asked =
        new Asked(
            edges.getOrDefault(p.name(), List.of()),
            webs.getOrDefault(p.name(), List.of()),
            caught.contains(p.name()));
    return last.compute(
        p.name(),
        (n, before) ->
            before != null && before.asked.equals(asked) ? before : less(p, whole.get(i), asked));
  }

  private Less less(Piece p, Solid body, Asked asked) {
    List<Solid> tools = new ArrayList<>();
    List<Ball> shut = new ArrayList<>();
    balls(asked.edges, RADIUS, tools, shut);
    balls(asked.webs, WEB_RADIUS, tools, shut);
    int round = tools.size();
    if (asked.caught) {
      tools.addAll(lipsOf.computeIfAbsent(p.name(), n -> lips(body, p.pull())));
    }
    if (tools.isEmpty()) {
      return new Less(asked, body, List.of(), 0, 0);
    }
    SolidKernel.Split cut = kernel.split(body, kernel.union("hollows", tools));
    Solid rest = new Solid(body.name(), cut.outside().mesh());
    return new Less(asked, rest, filled(cut.inside(), shut), round, tools.size() - round);
  }

  /** What cast material fills of what was cut away: lips lie against what is cast. */
  private List<Solid> filled(Solid cut, List<Ball> shut) {
    return shut.isEmpty()
        ? List.of(cut)
        : kernel.decompose(cut).stream().filter(c -> !within(c.mesh(), shut)).toList();
  }

  private static boolean within(TriMesh mesh, List<Ball> balls) {
    return IntStream.range(0, mesh.vertexCount())
        .allMatch(v -> balls.stream().anyMatch(b -> b.holds(mesh.vertex(v))));
  }

  /** A hollow. */
  private record Ball(Vec3 center, double radius) {
    boolean holds(Vec3 p) {
      return p.minus(center).length() <= radius + ROUNDING;
    }
  }

  private static double volume(List<Solid> bodies) {
    return bodies.stream().mapToDouble(Solid::volume).sum();
  }

  /** Pieces with what the hollows cut off handed on or, if it is a chip, left out. */
  private List<Solid> inOne(List<Solid> cut) {
    if (cut.stream().allMatch(c -> kernel.decompose(c).size() == 1)) {
      return cut;
    }
    List<Vec3> pulls = mold.pieces().stream().map(Piece::pull).toList();
    List<Solid> cast = new ArrayList<>(List.of(casting));
    channels.ifPresent(cast::add);
    List<Solid> out = new ArrayList<>();
    for (Solid piece : Loose.handed(cut, pulls, cast, kernel)) {
      List<Solid> parts = kernel.decompose(piece);
      List<Solid> kept = new ArrayList<>();
      for (Solid part : parts) {
        (kept.isEmpty() || part.volume() > CHIP ? kept : filled).add(part);
      }
      boolean same = kept.size() == parts.size();
      out.add(same ? piece : kept.size() == 1 ? kept.get(0) : kernel.union(piece.name(), kept));
    }
    return out;
  }

  /** Hollows at some places, and those of them that do not open to what is cast. */
  private void balls(List<Vec3> places, double radius, List<Solid> tools, List<Ball> shut) {
    TriMesh shape = Primitives.sphere(radius, SIDES);
    Map<Vec3, Solid> balls = new LinkedHashMap<>();
    for (Vec3 p : places) {
      if (balls.keySet().stream().noneMatch(q -> q.minus(p).length() < SAME)) {
        balls.put(p, kernel.solid("hollow", FloatGrid.snap(shape.translated(p))));
      }
    }
    Map<Vec3, Solid> fresh = new LinkedHashMap<>(balls);
    fresh.keySet().removeAll(open.keySet());
    open.putAll(meets(fresh, radius));
    balls.forEach(
        (p, ball) -> {
          tools.add(ball);
          if (!open.get(p)) {
            shut.add(new Ball(p, radius));
          }
        });
  }

  /** Which balls meet what is cast, by their centers; all are asked about at once. */
  private Map<Vec3, Boolean> meets(Map<Vec3, Solid> balls, double radius) {
    Map<Vec3, Boolean> out = new HashMap<>();
    if (balls.isEmpty()) {
      return out;
    }
    Solid all = kernel.union("hollows", List.copyOf(balls.values()));
    List<TriMesh> met = new ArrayList<>();
    met.add(kernel.intersection("hollows in the casting", all, casting).mesh());
    channels.ifPresent(c -> met.add(kernel.intersection("hollows in the channels", all, c).mesh()));
    for (Vec3 p : balls.keySet()) {
      out.put(p, met.stream().anyMatch(m -> comesWithin(m, p, radius)));
    }
    return out;
  }

  private static boolean comesWithin(TriMesh mesh, Vec3 p, double distance) {
    for (int v = 0; v < mesh.vertexCount(); v++) {
      if (mesh.vertex(v).minus(p).length() <= distance) {
        return true;
      }
    }
    return false;
  }

  /** Some of what a piece is caught with, until little enough is left at every move. */
  private List<Solid> lips(Solid body, Vec3 pull) {
    List<Solid> met = new ArrayList<>();
    for (double move : MOVES) {
      met.add(met(body, casting, pull.times(-move)));
      channels.ifPresent(c -> met.add(met(body, c, pull.times(-move))));
    }
    List<Solid> out = new ArrayList<>();
    Solid worst = worst(met);
    while (worst.volume() > STAYS * mostMm3) {
      Solid part = enough(worst, worst.volume() - STAYS * mostMm3);
      out.add(part);
      met.replaceAll(m -> m.isEmpty() ? m : kernel.difference("met", m, List.of(part)));
      worst = worst(met);
    }
    return out;
  }

  private static Solid worst(List<Solid> met) {
    return met.stream().max(Comparator.comparingDouble(Solid::volume)).orElseThrow();
  }

  /** The smallest body of some that holds enough, or the largest. */
  private Solid enough(Solid some, double volume) {
    List<Solid> parts = kernel.decompose(some);
    int best = 0;
    while (best + 1 < parts.size() && parts.get(best + 1).volume() >= volume) {
      best++;
    }
    return parts.get(best);
  }

  private Solid met(Solid body, Solid cast, Vec3 shift) {
    Solid shifted = kernel.solid("shifted", FloatGrid.snap(cast.mesh().translated(shift)));
    return kernel.intersection("met", body, shifted);
  }

  private Mold mold(List<Solid> rest, TriMesh cast, double empty) {
    List<Piece> less = new ArrayList<>();
    for (int i = 0; i < rest.size(); i++) {
      less.add(piece(i, rest.get(i)));
    }
    bodies = rest;
    pieces = less;
    double nubs = cast.volume() - mold.volumes().channels();
    Volumes v = mold.volumes();
    List<String> warnings = new ArrayList<>(mold.warnings());
    warnings.add(words(nubs));
    return new Mold(
        mold.plan(),
        pieces,
        mold.casting(),
        cast,
        new Volumes(v.block(), v.casting(), cast.volume(), v.keyClearance(), v.features() + empty),
        warnings);
  }

  /** A piece of what is left of its body; the same object if it is as it was, or as last time. */
  private Piece piece(int i, Solid rest) {
    Piece p = mold.pieces().get(i);
    if (rest == whole.get(i)) {
      return p;
    }
    if (!bodies.isEmpty() && same(rest.mesh(), bodies.get(i).mesh())) {
      return pieces.get(i);
    }
    boolean fresh = mold.plan().options().blockedOut();
    return Piece.of(p.order(), p.pull(), Rounded.piece(rest.mesh(), fresh));
  }

  private static boolean same(TriMesh a, TriMesh b) {
    return Arrays.equals(a.xyz(), b.xyz()) && Arrays.equals(a.tri(), b.tri());
  }

  private String words(double nubs) {
    List<String> what = new ArrayList<>();
    if (hollows > 0) {
      what.add(
          String.format(
              Locale.ROOT,
              "at %d place(s) where a piece would be too thin it has hollows of 1 mm",
              hollows));
    }
    if (lips > 0) {
      what.add(
          String.format(
              Locale.ROOT, "at %d place(s) where a piece would be caught it is cut back", lips));
    }
    String all = String.join("; ", what);
    return "A"
        + all.substring(1)
        + String.format(
            Locale.ROOT, ". The casting gets nubs of %.2g mm³ in all: scrape them off.", nubs);
  }

  /** What cast material fills beside the casting. */
  private TriMesh cast() {
    if (filled.isEmpty()) {
      return mold.channels();
    }
    List<Solid> all = new ArrayList<>(filled);
    channels.ifPresent(all::add);
    return Rounded.of(kernel.union("channels and nubs", all).mesh());
  }
}
