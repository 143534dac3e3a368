package org.castwright.solid;

import java.util.List;
import java.util.function.IntConsumer;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * The solid kernel: regularized boolean operations on closed bodies, double precision in and out.
 * Names given to results are used in errors. Instances are safe to use from several threads; how
 * much runs at once is up to the implementation.
 *
 * <p>Every method that takes solids throws {@link SolidException}, naming the operands, when it
 * cannot give a closed, oriented, manifold body.
 */
public interface SolidKernel extends AutoCloseable {

  /**
   * Accepts a mesh as a body.
   *
   * @throws SolidException if it is not closed, oriented and manifold, has a coordinate that is not
   *     finite, or is inside out; the message says which
   */
  Solid solid(String name, TriMesh mesh);

  /** What {@link #solid} would say, as a value. */
  SolidStatus status(TriMesh mesh);

  Solid union(String name, List<Solid> solids);

  /** {@code from} without any of {@code tools}. */
  Solid difference(String name, Solid from, List<Solid> tools);

  Solid intersection(String name, Solid a, Solid b);

  /** Both sides of a cut: the part of {@code body} inside {@code cutter} and the part outside. */
  default Split split(Solid body, Solid cutter) {
    List<Solid> parts = slices(body, List.of(cutter), done -> {});
    return new Split(parts.get(0), parts.get(1));
  }

  /**
   * {@code body} with {@code added} joined to it, without any of {@code tools}. Quicker than a
   * union and a difference: what lies between them does not leave the kernel.
   */
  Solid recut(String name, Solid body, Solid added, List<Solid> tools);

  /**
   * A body cut by one cutter after another: what each cuts off from what the earlier ones left, and
   * last the rest.
   *
   * @param done hears how many cuts are done; may throw to stop
   */
  List<Solid> slices(Solid body, List<Solid> cutters, IntConsumer done);

  /** The convex hull of the vertices of all the bodies given. */
  Solid hull(String name, List<Solid> solids);

  /** The connected bodies of a solid, largest volume first. */
  List<Solid> decompose(Solid body);

  /** The volume, mm³, that {@code moving}, shifted by {@code shift}, shares with {@code still}. */
  double overlap(Solid moving, Vec3 shift, Solid still);

  /** mm³. */
  default double volume(Solid body) {
    return body.volume();
  }

  /** mm². */
  default double area(Solid body) {
    return body.area();
  }

  @Override
  void close();

  /** The two results of {@link #split}. */
  record Split(Solid inside, Solid outside) {}
}
