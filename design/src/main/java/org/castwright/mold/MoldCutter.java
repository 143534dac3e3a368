package org.castwright.mold;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.Channel;
import org.castwright.plan.ChannelBody;
import org.castwright.plan.Feature;
import org.castwright.plan.Key;
import org.castwright.plan.MoldPlan;
import org.castwright.plan.Prism;
import org.castwright.plan.RawPiece;
import org.castwright.progress.Beside;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/** Cuts the raw pieces of a plan into finished ones; all cores work, one piece each. */
final class MoldCutter {

  /** Films may hold so much of the block; more missing is for the proof to find. */
  private static final double FILMS = 1e-5;

  /** A loose part that holds no more is a chip, mm³. */
  private static final double CHIP = 1;

  /** A chip that holds less is a flake, mm³. */
  private static final double FLAKE = 0.05;

  /** How far the cutting is when all pieces are cut. */
  private static final double CUT = 0.8;

  private final MoldPlan plan;
  private final SolidKernel kernel;
  private final Progress progress;
  private final List<String> warnings;

  MoldCutter(MoldPlan plan, SolidKernel kernel, Progress progress) {
    this.plan = plan;
    this.kernel = kernel;
    this.progress = progress;
    this.warnings = new ArrayList<>(plan.warnings());
  }

  Mold cut() {
    progress.at("solids", 0);
    Solid bores = union("channels", bores());
    Solid features = union("features", tools(false));
    Solid outside = union("outline", tools(true));
    int n = plan.pieces().size();
    List<Solid> keys = new ArrayList<>();
    List<Solid> sockets = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      int order = i + 1;
      keys.add(union("keys of piece " + order, bodies(k -> k.keyPiece() == order, true)));
      sockets.add(union("sockets of piece " + order, bodies(k -> k.socketPiece() == order, false)));
    }
    Beside<Double> cutAway = Beside.begin(() -> featuresAlone(features, bores));
    Beside<TriMesh> channels = Beside.begin(() -> channelBody(bores));
    AtomicInteger done = new AtomicInteger();
    double[] clearances = new double[n];
    // this thread cuts too, beside those of the pool
    List<Solid> bodies =
        IntStream.range(0, n)
            .parallel()
            .mapToObj(
                i -> {
                  clearances[i] = clearance(i, sockets.get(i));
                  List<Solid> tools = some(bores, features, outside, sockets.get(i));
                  Solid piece = piece(i, keys.get(i), tools);
                  progress.at("solids", CUT * done.incrementAndGet() / n);
                  return piece;
                })
            .toList();
    TriMesh channelMesh = channels.get();
    double vanished = 0;
    if (n == 2) {
      bodies = handOver(bodies.get(0), bodies.get(1));
    } else {
      double before = volume(bodies);
      bodies = new ArrayList<>(handedOn(bodies, channelMesh));
      // films between pieces, thinner than the kernel tells apart, are in neither of them then
      vanished = Math.min(before - volume(bodies), FILMS * plan.block().volume());
      channelMesh = withChips(channelMesh, bodies);
    }
    Volumes volumes =
        new Volumes(
            plan.block().volume(),
            plan.parted().volume(),
            channelMesh.volume(),
            Arrays.stream(clearances).sum(),
            cutAway.get() + vanished);
    progress.at("solids", 1);
    return finish(bodies, channelMesh, volumes);
  }

  private Solid piece(int i, Solid keys, List<Solid> tools) {
    String name = "piece-" + (i + 1);
    Solid raw = plan.pieces().get(i).body();
    return kernel.recut(name, raw, keys, tools);
  }

  private static double volume(List<Solid> bodies) {
    return bodies.stream().mapToDouble(Solid::volume).sum();
  }

  private List<TriMesh> bodies(Predicate<Key> which, boolean key) {
    return plan.keys().stream().filter(which).map(key ? KeyBody::key : KeyBody::socket).toList();
  }

  private Mold finish(List<Solid> bodies, TriMesh channels, Volumes volumes) {
    List<Piece> pieces = new ArrayList<>();
    for (int i = 0; i < bodies.size(); i++) {
      TriMesh mesh = Rounded.piece(bodies.get(i).mesh(), plan.options().blockedOut());
      pieces.add(Piece.of(i + 1, plan.pieces().get(i).pull(), mesh));
    }
    return new Mold(plan, pieces, plan.parted(), channels, volumes, warnings);
  }

  /** What hangs on no piece goes to one that it can leave with. */
  private List<Solid> handedOn(List<Solid> bodies, TriMesh channels) {
    List<Vec3> pulls = plan.pieces().stream().map(RawPiece::pull).toList();
    List<Solid> cast = new ArrayList<>(List.of(kernel.solid("casting", plan.parted())));
    if (!channels.isEmpty()) {
      cast.add(kernel.solid("channels", channels));
    }
    return Loose.handed(bodies, pulls, cast, kernel);
  }

  /** Chips that hang on no piece are left out, for cast material to fill. */
  private TriMesh withChips(TriMesh channelMesh, List<Solid> bodies) {
    List<Solid> chips = new ArrayList<>();
    for (int i = 0; i < bodies.size(); i++) {
      List<Solid> parts = kernel.decompose(bodies.get(i));
      List<Solid> kept = new ArrayList<>();
      for (Solid part : parts) {
        (kept.isEmpty() || part.volume() > CHIP ? kept : chips).add(part);
      }
      if (kept.size() < parts.size()) {
        String name = bodies.get(i).name();
        bodies.set(i, kept.size() == 1 ? kept.get(0) : kernel.union(name, kept));
      }
    }
    if (chips.isEmpty()) {
      return channelMesh;
    }
    double volume = chips.stream().mapToDouble(Solid::volume).sum();
    warnings.add(
        String.format(
            Locale.ROOT,
            "%d chip(s) of the mold, %.2g mm³ in all, hang on no piece and are left out: scrape as"
                + " many nubs off the casting.",
            chips.size(),
            volume));
    // flakes are too thin for a body of their own; the proof's balance still counts what they hold
    chips.removeIf(chip -> chip.volume() < FLAKE);
    if (chips.isEmpty()) {
      return channelMesh;
    }
    if (!channelMesh.isEmpty()) {
      chips.add(kernel.solid("channels", channelMesh));
    }
    return Rounded.of(kernel.union("channels and chips", chips).mesh());
  }

  /** Crumbs that are not joined to their own piece go to the other one, when they join that. */
  private List<Solid> handOver(Solid one, Solid two) {
    List<Solid> a = kernel.decompose(one);
    List<Solid> b = kernel.decompose(two);
    if (a.size() <= 1 && b.size() <= 1) {
      return List.of(one, two);
    }
    List<Solid> first = new ArrayList<>(List.of(a.get(0)));
    List<Solid> second = new ArrayList<>(List.of(b.get(0)));
    double moved = 0;
    for (Solid crumb : a.subList(1, a.size())) {
      second.add(crumb);
      moved += crumb.volume();
    }
    for (Solid crumb : b.subList(1, b.size())) {
      first.add(crumb);
      moved += crumb.volume();
    }
    warnings.add(
        String.format(
            Locale.ROOT,
            "%d loose part(s) of a piece, %.3g mm³ in all, were handed to the other piece.",
            a.size() + b.size() - 2,
            moved));
    return List.of(kernel.union("piece-1", first), kernel.union("piece-2", second));
  }

  private List<TriMesh> bores() {
    List<TriMesh> all = new ArrayList<>();
    for (Channel c : plan.pour().channels()) {
      all.addAll(ChannelBody.of(c));
    }
    return all;
  }

  private List<TriMesh> tools(boolean outline) {
    List<TriMesh> all = new ArrayList<>();
    for (Feature f : plan.features()) {
      if ((f.kind() == Feature.Kind.OUTLINE) == outline) {
        all.addAll(f.tools());
      }
    }
    return all;
  }

  private Solid blockBody() {
    return kernel.solid(
        "block",
        Prism.of(plan.block().outline(), plan.block().box().z0(), plan.block().box().z1()));
  }

  /** Gate and vents as cast material fills them: inside the block, outside the casting. */
  private TriMesh channelBody(Solid bores) {
    if (bores.isEmpty()) {
      return bores.mesh();
    }
    Solid inside = kernel.intersection("channels in the block", bores, blockBody());
    Solid casting = kernel.solid("casting", plan.parted());
    return Rounded.of(kernel.difference("channels", inside, List.of(casting)).mesh());
  }

  /** What of a raw piece its sockets take beyond the keys that go into them, mm³. */
  private double clearance(int i, Solid sockets) {
    if (sockets.isEmpty()) {
      return 0;
    }
    Solid raw = plan.pieces().get(i).body();
    int order = i + 1;
    Solid filled = union("keys into piece " + order, bodies(k -> k.socketPiece() == order, true));
    return kernel.overlap(sockets, Vec3.ZERO, raw) - kernel.overlap(filled, Vec3.ZERO, raw);
  }

  /** What features take of the block beside gate and vents, mm³. */
  private double featuresAlone(Solid features, Solid bores) {
    if (features.isEmpty()) {
      return 0;
    }
    Solid inBlock = kernel.intersection("features in the block", features, blockBody());
    return kernel.difference("features alone", inBlock, some(bores)).volume();
  }

  private Solid union(String name, List<TriMesh> meshes) {
    if (meshes.isEmpty()) {
      return new Solid(name, new TriMesh(new double[0], new int[0]));
    }
    List<Solid> solids = new ArrayList<>();
    for (TriMesh m : meshes) {
      solids.add(kernel.solid(name + "-" + (solids.size() + 1), m));
    }
    return solids.size() == 1 ? solids.get(0) : kernel.union(name, solids);
  }

  private static List<Solid> some(Solid... solids) {
    List<Solid> out = new ArrayList<>();
    for (Solid s : solids) {
      if (!s.isEmpty()) {
        out.add(s);
      }
    }
    return out;
  }
}
