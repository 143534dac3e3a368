package org.castwright.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;

/** One run of the proof: the order of the checks, and what they share. */
final class ProofRun {

  /** Distances, mm, at which the solid kernel too measures a piece past the casting. */
  private static final List<Double> KERNEL_STEPS = List.of(0.1, 2.0);

  /** The only one for bodies of more triangles than {@link #LARGE}: a boolean takes a second. */
  private static final List<Double> KERNEL_STEP_IF_LARGE = List.of(0.5);

  private static final int LARGE = 60_000;

  private static final int CASTING = 0;

  private final ProofInput input;
  private final ProofLimits limits;
  private final SolidKernel kernel;
  private final Progress progress;
  private final Kept kept;
  private final Body block;

  /** The casting, the channels if there are any, then the pieces. */
  private final List<Body> bodies = new ArrayList<>();

  private final int firstPiece;
  private Views views;
  private final List<ProofCheck> checks = new ArrayList<>();

  ProofRun(ProofInput input, SolidKernel kernel, Progress progress, Kept kept) {
    this.input = input;
    this.kept = kept;
    this.limits = input.limits();
    this.kernel = kernel;
    this.progress = progress;
    block = kept.body("block", input.block());
    bodies.add(kept.body("casting", input.casting()));
    if (!input.channelBody().isEmpty()) {
      bodies.add(kept.body("channels", input.channelBody()));
    }
    firstPiece = bodies.size();
    for (ProofInput.Piece p : input.pieces()) {
      bodies.add(kept.body(p.name(), p.mesh()));
    }
    List<Body> all = new ArrayList<>(bodies);
    all.add(block);
    kept.only(all);
  }

  List<ProofCheck> checks() {
    progress.at("checking bodies", 0);
    if (!closed()) {
      String words = "Opening, channels, keys and walls were not judged: a body is not closed.";
      checks.add(new ProofCheck("all checks made", false, 1, 0, "bodies not closed", words));
      return checks;
    }
    try (KernelSteps steps = new KernelSteps(kernel, bodies)) {
      List<OpeningCheck.Move> moves = moves(true);
      moves.forEach(m -> m.kernelSteps().forEach(t -> steps.ask(m.step(t))));
      shapes();
      look();
      double volume = block.mesh().volume();
      checks.add(DisjointCheck.of(views.first(), volume, limits));
      checks.add(BalanceCheck.of(volume, bodies, input.taken(), limits));
      progress.at("checking keys, channels and walls", 0.4);
      keys();
      channels();
      if (input.up() != null && !input.channels().isEmpty()) {
        checks.addAll(AirCheck.of(input));
      }
      checks.add(WallCheck.of(bodies.get(CASTING), tree(CASTING), block, kept.tree(block), input));
      open(steps, moves, false);
      shake();
      thin(b -> true);
    }
    progress.at("proof", 1);
    return checks;
  }

  /**
   * Only what tells whether pieces come off and where they are thin, by columns alone.
   *
   * @param changed names of the pieces that may have become thinner, when all are known to pass
   *     each other; null if nothing is known
   */
  List<ProofCheck> thinAndCaught(Set<String> changed) {
    if (bodiesClosed()) {
      try (KernelSteps none = new KernelSteps(kernel, bodies)) {
        look();
        List<OpeningCheck.Move> moves = new ArrayList<>(moves(false));
        moves.removeIf(m -> changed != null && !m.casting());
        open(none, moves, true);
        thin(b -> changed == null || changed.contains(b.name()));
      }
    }
    return checks;
  }

  private void look() {
    progress.at("looking along the pulls", 0.2);
    views = new Views(block, bodies, firstPiece, input.pieces().get(0).pull());
  }

  private boolean closed() {
    boolean all = bodiesClosed();
    for (ProofInput.Piece p : input.pieces()) {
      all &= new BodyCheck(Body.read("print file of " + p.name(), p.print())).closed(checks);
    }
    return all;
  }

  private boolean bodiesClosed() {
    boolean all = new BodyCheck(block).closed(checks);
    List<BodyCheck> found = bodies.parallelStream().map(BodyCheck::new).toList();
    for (BodyCheck b : found) {
      all &= b.closed(checks);
    }
    for (int i = 0; i < found.size(); i++) {
      if (i == CASTING || i >= firstPiece) {
        checks.add(found.get(i).onePart());
      }
    }
    return all;
  }

  private void shapes() {
    checks.addAll(bodies.parallelStream().map(BodyCheck::clean).toList());
    input.pieces().parallelStream()
        .map(
            p ->
                List.of(
                    BedCheck.of(p.name(), p.print(), p.mesh(), limits),
                    PrintCheck.sameBody(p.name(), p.mesh(), p.print()),
                    PrintCheck.standing(p.name(), p.print())))
        .toList()
        .forEach(checks::addAll);
  }

  /** Every piece past everything that is still there, then the casting off the last piece. */
  private List<OpeningCheck.Move> moves(boolean kernelToo) {
    List<OpeningCheck.Move> moves = new ArrayList<>();
    for (int i = firstPiece; i < bodies.size(); i++) {
      Vec3 pull = input.pieces().get(i - firstPiece).pull();
      for (int j = 0; j < bodies.size(); j++) {
        if (j < firstPiece || j > i) {
          boolean cast = j == CASTING;
          List<Double> byKernel = cast && kernelToo ? kernelSteps(i) : List.of();
          String caught = j < firstPiece ? bodies.get(i).name() : null;
          moves.add(new OpeningCheck.Move(i, pull, j, byKernel, caught));
        }
      }
    }
    int last = bodies.size() - 1;
    Vec3 lift = input.pieces().get(last - firstPiece).pull().negate();
    moves.add(new OpeningCheck.Move(CASTING, lift, last, List.of(), bodies.get(last).name()));
    return moves;
  }

  private List<Double> kernelSteps(int piece) {
    int triangles =
        bodies.get(piece).mesh().triangleCount() + bodies.get(CASTING).mesh().triangleCount();
    return triangles > LARGE ? KERNEL_STEP_IF_LARGE : KERNEL_STEPS;
  }

  /**
   * Opens the mold.
   *
   * @param failuresOnly whether what passes as a crease needs no words
   */
  private void open(KernelSteps steps, List<OpeningCheck.Move> moves, boolean failuresOnly) {
    int done = 0;
    while (done < moves.size()) {
      progress.at("opening the mold", 0.5 + 0.3 * done / moves.size());
      OpeningCheck.Move first = moves.get(done);
      int next = done + 1;
      while (next < moves.size() && moves.get(next).moving() == first.moving()) {
        next++;
      }
      int from = first.moving() == CASTING ? first.still() : first.moving();
      OpeningCheck check = new OpeningCheck(views.along(first.pull(), from), steps, limits);
      moves.subList(done, next).parallelStream()
          .map(m -> failuresOnly ? check.failures(m, title(m)) : check.of(m, title(m)))
          .toList()
          .forEach(checks::addAll);
      done = next;
    }
  }

  private String title(OpeningCheck.Move m) {
    return m.moving() == CASTING
        ? "casting off " + bodies.get(m.still()).name()
        : bodies.get(m.moving()).name() + " past " + bodies.get(m.still()).name();
  }

  private void shake() {
    ShakeCheck shake = new ShakeCheck(block, bodies, limits);
    for (int i = firstPiece; i < bodies.size(); i++) {
      double done = (double) (i - firstPiece) / input.pieces().size();
      progress.at("shaking the pieces", 0.8 + 0.1 * done);
      Vec3 pull = input.pieces().get(i - firstPiece).pull();
      checks.add(shake.of(i, pull, Views.left(bodies, firstPiece, i)));
    }
  }

  /** Wedges and thin places of pieces. */
  private void thin(Predicate<Body> which) {
    progress.at("looking for thin places", 0.9);
    // so that no two threads make one, or wait for it
    bodies.parallelStream().forEach(kept::tree);
    IntStream.range(firstPiece, bodies.size())
        .filter(i -> which.test(bodies.get(i)))
        .parallel()
        .mapToObj(this::thin)
        .toList()
        .forEach(checks::addAll);
  }

  private List<ProofCheck> thin(int i) {
    Bvh channels = firstPiece > 1 ? tree(1) : null;
    List<Bvh> others = new ArrayList<>();
    for (int j = firstPiece; j < bodies.size(); j++) {
      if (j != i) {
        others.add(tree(j));
      }
    }
    Body piece = bodies.get(i);
    Faces faces = new Faces(piece.mesh(), kept.tree(block), tree(CASTING), channels, others);
    List<ProofCheck> found = new ArrayList<>();
    found.add(WedgeCheck.of(piece, faces, views.first().columns(i), limits));
    found.addAll(List.of(ThinCheck.of(piece, faces, tree(i), limits)));
    return found;
  }

  private void keys() {
    for (ProofInput.Key k : input.keys()) {
      int first = Math.min(k.keyPiece(), k.socketPiece());
      checks.add(KeyCheck.along(k, input.pieces().get(first).pull()));
      int socket = firstPiece + k.socketPiece();
      checks.add(
          KeyCheck.gap(
              k,
              bodies.get(firstPiece + k.keyPiece()),
              tree(socket),
              views.first().columns(socket),
              limits));
    }
  }

  private void channels() {
    if (limits.gates() > 0) {
      checks.add(gates());
    }
    if (input.channels().isEmpty()) {
      return;
    }
    PullView view = views.first();
    Columns outside = new Columns(block, view.columns(CASTING).frame(), view.grid());
    ChannelCheck check =
        new ChannelCheck(view, firstPiece, outside, tree(CASTING), kept.tree(block));
    for (ProofInput.Channel c : input.channels()) {
      checks.addAll(check.of(c));
    }
  }

  private ProofCheck gates() {
    long n = input.channels().stream().filter(c -> c.kind() == ProofInput.ChannelKind.GATE).count();
    String words =
        n >= limits.gates()
            ? "There is a gate to pour through."
            : "There is no gate to pour through.";
    return new ProofCheck(
        "gate: one at least", n >= limits.gates(), n, limits.gates(), "gates", words);
  }

  private Bvh tree(int body) {
    return kept.tree(bodies.get(body));
  }
}
