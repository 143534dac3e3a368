package org.castwright.repair;

import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * What a look at a mesh tells, by vertex index as it stands; nothing is healed first.
 *
 * @param triangles all triangles
 * @param vertices vertices used by some triangle
 * @param shells connected pieces of surface
 * @param openEdges edges with a triangle on one side only
 * @param flippedEdges edges whose two triangles face opposite ways
 * @param nonManifoldEdges edges with more than two triangles
 * @param nonManifoldVertices vertices where surfaces only touch
 * @param degenerateTriangles triangles without area
 * @param selfIntersectingPairs pairs of triangles that meet other than by sharing corners, at most
 *     1,000,000
 * @param volume signed volume, mm³; means a volume only for a closed mesh
 * @param area mm²
 * @param box the box round it, a point at the origin for no vertices
 * @param genus handles of all shells together, -1 unless the mesh is closed and manifold
 */
public record MeshHealth(
    int triangles,
    int vertices,
    int shells,
    int openEdges,
    int flippedEdges,
    int nonManifoldEdges,
    int nonManifoldVertices,
    int degenerateTriangles,
    int selfIntersectingPairs,
    double volume,
    double area,
    Box3 box,
    int genus) {

  /** Looks at a mesh; about two seconds for a million triangles on two cores. */
  public static MeshHealth of(TriMesh mesh, Progress progress) {
    progress.at("looking at the model", 0);
    MeshCheck check = MeshCheck.of(mesh);
    int pairs = 0;
    if (!mesh.isEmpty()) {
      TriangleTree tree = new TriangleTree(mesh);
      pairs = new Crossings(tree, new int[mesh.triangleCount()], progress).count();
    }
    return new MeshHealth(
        mesh.triangleCount(),
        check.vertices(),
        check.components(),
        check.openEdges(),
        check.flippedEdges(),
        check.nonManifoldEdges(),
        check.nonManifoldVertices(),
        check.zeroAreaTriangles(),
        pairs,
        mesh.volume(),
        mesh.area(),
        mesh.vertexCount() == 0 ? new Box3(Vec3.ZERO, Vec3.ZERO) : mesh.bounds(),
        check.closedManifold() ? check.genus() : -1);
  }

  /** Whether every edge and vertex is as a closed body's; it may still meet itself. */
  public boolean closedManifold() {
    return genus >= 0;
  }
}
