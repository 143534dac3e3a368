package org.castwright.proof;

import java.util.Collection;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.castwright.mesh.TriMesh;
import org.castwright.mesh.Weld;

/**
 * Bodies and their box trees, made once for each mesh: looks at one mold after another share what
 * they have in common. For any number of threads.
 */
final class Kept {

  private final Map<TriMesh, TriMesh> welded = new ConcurrentHashMap<>();
  private final Map<TriMesh, Bvh> trees = new ConcurrentHashMap<>();

  /** The body of a mesh as read. */
  Body body(String name, TriMesh soup) {
    return new Body(name, welded.computeIfAbsent(soup, Weld::exact));
  }

  Bvh tree(Body body) {
    return trees.computeIfAbsent(body.mesh(), Bvh::new);
  }

  /** Drops what is of no mesh among these bodies. */
  void only(Collection<Body> bodies) {
    var meshes = bodies.stream().map(Body::mesh).toList();
    welded.values().retainAll(meshes);
    trees.keySet().retainAll(meshes);
  }
}
