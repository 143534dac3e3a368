package org.castwright.solid.manifold;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.IntConsumer;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidException;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.SolidStatus;

/**
 * The solid kernel over Manifold. Positions go in and come out in double precision; a vertex that
 * no cut touches keeps its bits. The kernel snaps what comes closer together than about 1e-12 times
 * the largest coordinate. Results are the same bytes for the same operands, whatever was computed
 * before and by however many threads; as many operations run at once as there are processors.
 *
 * <p>Memory: an operation may use up to 2 GB in an array of the Java heap; as a rule it needs about
 * 1 kB per triangle of its operands. What a body needs is kept until its mesh is garbage.
 */
public final class ManifoldKernel implements SolidKernel {

  private static final TriMesh NOTHING = new TriMesh(new double[0], new int[0]);

  /** Facets of the balls that warm the code up: enough to visit the usual paths, a few ms. */
  private static final int WARM_UP_SIDES = 24;

  private static final int LONG_JOB_SIDES = 100;

  private final EnginePool pool;

  public ManifoldKernel() {
    this(new EnginePool(Runtime.getRuntime().availableProcessors(), Engine::new));
  }

  ManifoldKernel(EnginePool pool) {
    this.pool = pool;
  }

  /**
   * Loads the compiled code, makes the first instance and runs one small operation of each common
   * kind, about a second of work, so that the first true operation finds everything in place. For a
   * background thread while files are read; nothing depends on it, and it ends without a word when
   * the kernel is closed meanwhile.
   */
  public void warmUp() {
    warmUp(
        WARM_UP_SIDES,
        (a, b) -> {
          difference("warm-up", a, List.of(b));
          overlap(a, Vec3.X, b);
        });
  }

  /**
   * As {@link #warmUp()}, for a long job on large bodies: one of ten thousand triangles is joined
   * and split too, for some seconds of a core that such a job leaves idle, so that Java has
   * compiled most of the code when bodies of a hundred thousand come.
   */
  public void warmUpWell() {
    warmUp();
    warmUp(
        LONG_JOB_SIDES,
        (a, b) -> {
          union("warm-up", List.of(a, b));
          split(a, b);
        });
  }

  private void warmUp(int sides, BiConsumer<Solid, Solid> work) {
    try {
      TriMesh ball = Primitives.sphere(1, sides);
      TriMesh shifted = ball.translated(new Vec3(0.5, 0.25, 0.125));
      work.accept(solid("ball", ball), solid("shifted ball", shifted));
    } catch (IllegalStateException e) {
      if (!pool.closed()) {
        throw e;
      }
    }
  }

  @Override
  public Solid solid(String name, TriMesh mesh) {
    Solid solid = new Solid(name, mesh);
    SolidStatus status = status(mesh);
    if (status != SolidStatus.OK) {
      throw new SolidException(
          "acceptance", List.of(solid), status.words() + details(status, mesh));
    }
    return solid;
  }

  @Override
  public SolidStatus status(TriMesh mesh) {
    if (mesh.isEmpty()) {
      return SolidStatus.EMPTY;
    }
    if (firstNotFinite(mesh) >= 0) {
      return SolidStatus.NOT_FINITE;
    }
    if (!MeshCheck.of(mesh).closedManifold()) {
      return SolidStatus.NOT_MANIFOLD;
    }
    return mesh.volume() < 0 ? SolidStatus.INSIDE_OUT : SolidStatus.OK;
  }

  @Override
  public Solid union(String name, List<Solid> solids) {
    List<TriMesh> meshes = meshes(solids);
    if (meshes.size() < 2) {
      return new Solid(name, meshes.isEmpty() ? NOTHING : meshes.get(0));
    }
    return result("union", name, solids, meshes, engine -> engine.union(meshes));
  }

  /** Tools whose box does not meet that of {@code from} are left out without being looked at. */
  @Override
  public Solid difference(String name, Solid from, List<Solid> tools) {
    List<Solid> operands = new ArrayList<>();
    operands.add(from);
    operands.addAll(tools);
    List<TriMesh> meshes = new ArrayList<>();
    meshes.add(from.mesh());
    meshes.addAll(meeting(List.of(from), tools));
    if (meshes.size() < 2) {
      return new Solid(name, from.mesh());
    }
    return result("difference", name, operands, meshes, engine -> engine.difference(meshes));
  }

  /** Tools whose boxes meet neither that of the body nor that of what is added are left out. */
  @Override
  public Solid recut(String name, Solid body, Solid added, List<Solid> tools) {
    List<Solid> both = List.of(body, added);
    List<TriMesh> meshes = new ArrayList<>(meshes(both));
    if (meshes.size() < 2) {
      return difference(name, union(name, both), tools);
    }
    meshes.addAll(meeting(both, tools));
    if (meshes.size() == 2) {
      return union(name, both);
    }
    List<Solid> operands = new ArrayList<>(both);
    operands.addAll(tools);
    return result("recut", name, operands, meshes, engine -> engine.recut(meshes));
  }

  @Override
  public Solid intersection(String name, Solid a, Solid b) {
    if (!meet(a.mesh(), Vec3.ZERO, b.mesh())) {
      return new Solid(name, NOTHING);
    }
    List<Solid> operands = List.of(a, b);
    return result(
        "intersection",
        name,
        operands,
        meshes(operands),
        engine -> engine.intersection(a.mesh(), b.mesh()));
  }

  /** Cutters whose boxes do not meet that of the body cut nothing off. */
  @Override
  public List<Solid> slices(Solid body, List<Solid> cutters, IntConsumer done) {
    List<Solid> operands = new ArrayList<>(List.of(body));
    operands.addAll(cutters);
    List<TriMesh> tools = meeting(List.of(body), cutters);
    List<TriMesh> parts =
        tools.isEmpty()
            ? List.of(body.mesh())
            : run(
                "split",
                operands,
                meshes(operands),
                engine -> engine.slices(body.mesh(), tools, done));
    Iterator<TriMesh> part = parts.iterator();
    List<Solid> out = new ArrayList<>();
    for (Solid cutter : cutters) {
      TriMesh off = meet(body.mesh(), Vec3.ZERO, cutter.mesh()) ? part.next() : NOTHING;
      out.add(checked("split", body.name() + " inside " + cutter.name(), operands, off));
    }
    String rest = body.name() + " outside " + cutters.get(cutters.size() - 1).name();
    out.add(checked("split", rest, operands, part.next()));
    return out;
  }

  /** The hull of bodies that lie in one plane, or of none, is empty. */
  @Override
  public Solid hull(String name, List<Solid> solids) {
    List<TriMesh> meshes = meshes(solids);
    double[] points = Points.of(meshes);
    return result("hull", name, solids, List.of(), engine -> engine.hull(points));
  }

  /** A body with voids inside stays one body; an island in a void is a body of its own. */
  @Override
  public List<Solid> decompose(Solid body) {
    List<TriMesh> parts = Pieces.of(body.mesh());
    if (parts.size() == 1) {
      return List.of(body);
    }
    List<Solid> out = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      out.add(new Solid(body.name() + " part " + (i + 1), parts.get(i)));
    }
    return List.copyOf(out);
  }

  /** Zero without any work if the boxes do not meet. */
  @Override
  public double overlap(Solid moving, Vec3 shift, Solid still) {
    if (!meet(moving.mesh(), shift, still.mesh())) {
      return 0;
    }
    List<Solid> operands = List.of(moving, still);
    TriMesh common =
        run(
            "overlap",
            operands,
            meshes(operands),
            engine -> engine.common(moving.mesh(), shift, still.mesh()));
    return checked("overlap", "overlap", operands, common).volume();
  }

  @Override
  public void close() {
    pool.close();
  }

  private Solid result(
      String operation,
      String name,
      List<Solid> operands,
      List<TriMesh> meshes,
      Function<Engine, TriMesh> task) {
    TriMesh mesh = run(operation + " \"" + name + "\"", operands, meshes, task);
    return checked(operation + " \"" + name + "\"", name, operands, mesh);
  }

  private <T> T run(
      String operation, List<Solid> operands, List<TriMesh> meshes, Function<Engine, T> task) {
    try {
      return pool.run(meshes, task);
    } catch (EngineStopped e) {
      throw new SolidException(operation, operands, e.getMessage(), e);
    }
  }

  private static Solid checked(String operation, String name, List<Solid> operands, TriMesh mesh) {
    MeshCheck check = MeshCheck.of(mesh);
    if (!check.closedManifold()) {
      throw new SolidException(operation, operands, "the result has " + check.faults());
    }
    if (firstNotFinite(mesh) >= 0) {
      throw new SolidException(operation, operands, "the result has a vertex at infinity");
    }
    return new Solid(name, mesh);
  }

  /** The meshes that are not empty. */
  private static List<TriMesh> meshes(List<Solid> solids) {
    return solids.stream().map(Solid::mesh).filter(m -> !m.isEmpty()).toList();
  }

  /** The meshes of those tools whose boxes meet that of one of the bodies. */
  private static List<TriMesh> meeting(List<Solid> bodies, List<Solid> tools) {
    return meshes(tools).stream()
        .filter(tool -> bodies.stream().anyMatch(b -> meet(b.mesh(), Vec3.ZERO, tool)))
        .toList();
  }

  /** Whether the boxes of two meshes, one of them shifted, have a point in common. */
  private static boolean meet(TriMesh a, Vec3 shift, TriMesh b) {
    if (a.isEmpty() || b.isEmpty()) {
      return false;
    }
    Box3 p = a.bounds();
    Box3 q = b.bounds();
    return p.min().x() + shift.x() <= q.max().x()
        && p.min().y() + shift.y() <= q.max().y()
        && p.min().z() + shift.z() <= q.max().z()
        && p.max().x() + shift.x() >= q.min().x()
        && p.max().y() + shift.y() >= q.min().y()
        && p.max().z() + shift.z() >= q.min().z();
  }

  private static int firstNotFinite(TriMesh mesh) {
    double[] xyz = mesh.xyz();
    for (int i = 0; i < xyz.length; i++) {
      if (!Double.isFinite(xyz[i])) {
        return i / 3;
      }
    }
    return -1;
  }

  private static String details(SolidStatus status, TriMesh mesh) {
    switch (status) {
      case NOT_FINITE:
        return ": vertex " + firstNotFinite(mesh);
      case NOT_MANIFOLD:
        MeshCheck check = MeshCheck.of(mesh);
        Vec3 p = mesh.vertex(mesh.tri()[3 * check.faultTriangle()]);
        return String.format(
            Locale.ROOT,
            ": it has %s, the first near (%.3f, %.3f, %.3f) mm; repair it first",
            check.faults(),
            p.x(),
            p.y(),
            p.z());
      case INSIDE_OUT:
        return "; reverse them first";
      default:
        return "";
    }
  }
}
