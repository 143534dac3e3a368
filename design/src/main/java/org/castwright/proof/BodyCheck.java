package org.castwright.proof;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.repair.SelfCrossing;

/** Whether a file holds one sound body: closed, oriented, manifold, right side out, in one part. */
final class BodyCheck {

  private final Body body;
  private final MeshCheck m;

  BodyCheck(Body body) {
    this.body = body;
    this.m = MeshCheck.of(body.mesh());
  }

  /** Adds the check whether the mesh bounds a body; gives false if it does not. */
  boolean closed(List<ProofCheck> out) {
    double volume = body.mesh().volume();
    int faults =
        m.openEdges()
            + m.flippedEdges()
            + m.nonManifoldEdges()
            + m.nonManifoldVertices()
            + m.degenerateTriangles();
    boolean solid = m.closedManifold() && volume > 0;
    String words;
    if (!m.closedManifold()) {
      Vec3 at = body.mesh().center(m.faultTriangle());
      words = body.name() + " is no closed body: " + m.faults() + ", near " + Say.place(at) + ".";
    } else if (volume > 0) {
      words =
          body.name()
              + " is closed, oriented and manifold, and holds "
              + Say.number(volume)
              + " mm³.";
    } else {
      words = body.name() + " is inside out: its volume is " + Say.number(volume) + " mm³.";
    }
    String name = "body: " + body.name() + " closed";
    out.add(new ProofCheck(name, solid, faults, 0, "faults", words));
    return solid;
  }

  ProofCheck onePart() {
    int parts = m.components();
    String words =
        parts == 1
            ? body.name() + " is one connected body."
            : body.name() + " falls into " + parts + " separate surfaces.";
    return new ProofCheck(
        "body: " + body.name() + " in one part", parts == 1, parts, 1, "surfaces", words);
  }

  static ProofCheck clean(Body body) {
    SelfCrossing.Result r = SelfCrossing.of(body.mesh());
    String words =
        r.count() == 0
            ? "The surface of " + body.name() + " nowhere passes through itself."
            : "The surface of "
                + body.name()
                + " passes through itself at "
                + Say.count(r.count(), "pair", "pairs")
                + " of triangles, one near "
                + Say.place(r.where())
                + ".";
    String name = "body: " + body.name() + " free of crossings";
    return new ProofCheck(name, r.count() == 0, r.count(), 0, "crossings", words);
  }
}
