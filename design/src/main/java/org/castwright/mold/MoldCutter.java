package org.castwright.mold;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;
import org.castwright.geom.Vec3;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.Channel;
import org.castwright.plan.Feature;
import org.castwright.plan.Key;
import org.castwright.plan.MoldPlan;
import org.castwright.plan.Prism;
import org.castwright.progress.Progress;
import org.castwright.side.SidePiece;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/** Cuts the raw halves of a plan into finished pieces; both cores work, one half each. */
final class MoldCutter {

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
    Solid keys = union("keys", plan.keys().stream().map(KeyBody::key).toList());
    Solid sockets = union("sockets", plan.keys().stream().map(KeyBody::socket).toList());
    Solid bores = union("channels", bores());
    Solid features = union("features", tools(false));
    Solid outside = union("outline", tools(true));
    List<Solid> plugs = plan.sides().stream().map(SidePiece::body).toList();
    Solid upperRaw = plan.main().upper();
    Solid lowerRaw = plan.main().lower();

    CompletableFuture<Solid> upper =
        later(
            () -> kernel.difference("piece-1", upperRaw, some(bores, features, outside, sockets)));
    CompletableFuture<Solid> lower =
        later(
            () -> {
              Solid keyed =
                  keys.isEmpty()
                      ? lowerRaw
                      : kernel.union("piece-2 with keys", List.of(lowerRaw, keys));
              return kernel.difference("piece-2", keyed, some(bores, features, outside));
            });
    CompletableFuture<Volumes> volumes =
        later(() -> volumes(upperRaw, keys, sockets, bores, features));
    CompletableFuture<TriMesh> channels = later(() -> channelBody(bores));
    Solid one = join(upper);
    progress.at("solids", 0.6);
    Solid two = join(lower);
    TriMesh channelMesh = join(channels);
    Volumes v = join(volumes);
    progress.at("solids", 1);
    Volumes all =
        new Volumes(v.block(), v.casting(), channelMesh.volume(), v.keyClearance(), v.features());
    List<Solid> bodies = new ArrayList<>();
    for (Solid plug : plugs) {
      bodies.add(
          kernel.difference("piece-" + (bodies.size() + 1), plug, some(bores, features, outside)));
    }
    bodies.addAll(handOver(one, two));
    return finish(bodies, channelMesh, all);
  }

  private Mold finish(List<Solid> bodies, TriMesh channels, Volumes volumes) {
    List<Piece> pieces = new ArrayList<>();
    int sides = plan.sides().size();
    for (int i = 0; i < bodies.size(); i++) {
      TriMesh mesh = Crumbs.swept(FloatGrid.snap(bodies.get(i).mesh()));
      Vec3 pull =
          i < sides
              ? plan.sides().get(i).pull()
              : i == sides ? MoldPlan.PULL : MoldPlan.PULL.negate();
      pieces.add(Piece.of(i + 1, pull, mesh));
    }
    return new Mold(plan, pieces, plan.main().casting(), channels, volumes, warnings);
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
    Solid casting = kernel.solid("casting", plan.main().casting());
    return FloatGrid.snap(kernel.difference("channels", inside, List.of(casting)).mesh());
  }

  private Volumes volumes(Solid upperRaw, Solid keys, Solid sockets, Solid bores, Solid features) {
    double gaps = 0;
    for (Key k : plan.keys()) {
      gaps = Math.max(gaps, k.clearance());
    }
    double clearance =
        gaps > 0
            ? kernel.overlap(sockets, Vec3.ZERO, upperRaw)
                - kernel.overlap(keys, Vec3.ZERO, upperRaw)
            : 0;
    double cut = 0;
    if (!features.isEmpty()) {
      Solid inBlock = kernel.intersection("features in the block", features, blockBody());
      cut = kernel.difference("features alone", inBlock, some(bores)).volume();
    }
    return new Volumes(plan.block().volume(), plan.main().casting().volume(), 0, clearance, cut);
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

  private static <T> CompletableFuture<T> later(Supplier<T> work) {
    return CompletableFuture.supplyAsync(work);
  }

  private static <T> T join(CompletableFuture<T> f) {
    try {
      return f.join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof RuntimeException r) {
        throw r;
      }
      throw e;
    }
  }
}
