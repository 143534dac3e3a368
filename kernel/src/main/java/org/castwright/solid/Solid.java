package org.castwright.solid;

import org.castwright.geom.Box3;
import org.castwright.mesh.TriMesh;

/**
 * A closed body: a mesh that a {@link SolidKernel} has accepted or made, with the name that errors
 * and reports call it by. Immutable. An empty body (no triangles) is a legal result.
 */
public final class Solid {

  private final String name;
  private final TriMesh mesh;

  /** For kernels: wraps a mesh already known to be closed, oriented and manifold. */
  public Solid(String name, TriMesh mesh) {
    this.name = name;
    this.mesh = mesh;
  }

  public String name() {
    return name;
  }

  public TriMesh mesh() {
    return mesh;
  }

  public boolean isEmpty() {
    return mesh.isEmpty();
  }

  /** mm³. */
  public double volume() {
    return mesh.volume();
  }

  /** mm². */
  public double area() {
    return mesh.area();
  }

  public Box3 bounds() {
    return mesh.bounds();
  }

  @Override
  public String toString() {
    return name + " (" + mesh.triangleCount() + " triangles)";
  }
}
