package org.castwright.repair;

import java.util.ArrayList;
import java.util.List;
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

/** A stand-in that unites boxes whose union is a box, and notes what it was asked. */
final class BoxKernel implements SolidKernel {

  final List<Solid> united = new ArrayList<>();
  private final boolean failing;

  BoxKernel(boolean failing) {
    this.failing = failing;
  }

  @Override
  public Solid solid(String name, TriMesh mesh) {
    if (status(mesh) != SolidStatus.OK) {
      throw new SolidException("solid", List.of(), status(mesh).words());
    }
    return new Solid(name, mesh);
  }

  @Override
  public SolidStatus status(TriMesh mesh) {
    return !MeshCheck.of(mesh).closedManifold()
        ? SolidStatus.NOT_MANIFOLD
        : mesh.volume() < 0 ? SolidStatus.INSIDE_OUT : SolidStatus.OK;
  }

  @Override
  public Solid union(String name, List<Solid> solids) {
    if (failing) {
      throw new SolidException("union", solids, "it was told to fail");
    }
    united.addAll(solids);
    double[] corners = new double[6 * solids.size()];
    for (int i = 0; i < solids.size(); i++) {
      Box3 b = solids.get(i).bounds();
      double[] own = {b.min().x(), b.min().y(), b.min().z(), b.max().x(), b.max().y(), b.max().z()};
      System.arraycopy(own, 0, corners, 6 * i, 6);
    }
    Box3 all = Box3.of(corners);
    return new Solid(name, Primitives.box(all.min(), all.max()));
  }

  @Override
  public Solid difference(String name, Solid from, List<Solid> tools) {
    throw new UnsupportedOperationException();
  }

  @Override
  public Solid intersection(String name, Solid a, Solid b) {
    throw new UnsupportedOperationException();
  }

  @Override
  public Solid recut(String name, Solid body, Solid added, List<Solid> tools) {
    throw new UnsupportedOperationException();
  }

  @Override
  public List<Solid> slices(Solid body, List<Solid> cutters, IntConsumer done) {
    throw new UnsupportedOperationException();
  }

  @Override
  public Solid hull(String name, List<Solid> solids) {
    throw new UnsupportedOperationException();
  }

  @Override
  public List<Solid> decompose(Solid body) {
    throw new UnsupportedOperationException();
  }

  @Override
  public double overlap(Solid moving, Vec3 shift, Solid still) {
    throw new UnsupportedOperationException();
  }

  @Override
  public void close() {}
}
