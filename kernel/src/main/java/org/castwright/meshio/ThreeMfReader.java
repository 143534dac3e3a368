package org.castwright.meshio;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.castwright.geom.LengthUnit;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.ThreeMfPart.Body;
import org.castwright.meshio.ThreeMfPart.Use;

/**
 * 3MF by the Core Specification 1.4.0: everything the build asks for, placed and joined to one mesh
 * in the order of the build. Objects meant as support are left out. Objects in other parts of the
 * package (Production Extension 1.1.2) are followed; colors and materials are not.
 */
final class ThreeMfReader {

  static final String RELATIONS = "_rels/.rels";
  static final String RELATION_SPACE =
      "http://schemas.openxmlformats.org/package/2006/relationships";
  static final String START = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";

  /** Deeper nests of components than anybody draws; keeps the walk off the end of the stack. */
  private static final int DEEPEST = 200;

  /** More copies than a build plate holds; a nest of doublings passes it in a few lines of XML. */
  private static final int MOST_COPIES = 1_000_000;

  /** An object with its placing, and whether the placing mirrors. */
  private record Placed(TriMesh mesh, Affine placing) {}

  private final Source source;
  private final OpcZip zip;
  private final Map<String, ThreeMfPart> parts = new HashMap<>();
  private final List<Placed> placed = new ArrayList<>();
  private long vertices;
  private long triangles;
  private int copies;
  private int supports;
  private LengthUnit unit;

  ThreeMfReader(Source source) {
    this.source = source;
    this.zip = new OpcZip(source);
  }

  /** The unit the model states, millimeter if it states none; known after {@link #read}. */
  LengthUnit unit() {
    return unit;
  }

  TriMesh read() {
    ThreeMfPart root = part(startPart());
    unit = root.unit();
    for (Use item : root.items()) {
      place(root, item, Affine.IDENTITY, 0);
    }
    if (root.items().isEmpty()) {
      throw source.fault(
          root.name(), "the build is empty", "put the model on the plate and export");
    }
    if (supports > 0) {
      source.note(supports + " support objects were left out.");
    }
    if (placed.size() > 1) {
      source.note(placed.size() + " objects were joined into one mesh.");
    }
    return join();
  }

  private String startPart() {
    List<String> targets = new ArrayList<>();
    boolean found =
        zip.read(
            RELATIONS,
            stream -> {
              SafeXml in = new SafeXml(source, RELATIONS, stream);
              while (in.next()) {
                if (in.isStart()
                    && in.name().equals("Relationship")
                    && in.namespace().equals(RELATION_SPACE)
                    && START.equals(in.attribute("Type"))
                    && in.attribute("Target") != null) {
                  targets.add(in.attribute("Target"));
                }
              }
            });
    if (!found || targets.isEmpty()) {
      throw source.fault(
          RELATIONS, "the zip names no 3D model, so it is no 3MF file", Source.EXPORT_AGAIN);
    }
    return targets.get(0);
  }

  private ThreeMfPart part(String name) {
    ThreeMfPart known = parts.get(name);
    if (known != null) {
      return known;
    }
    ThreeMfPart[] read = new ThreeMfPart[1];
    if (!zip.read(name, stream -> read[0] = ThreeMfPart.read(source, name, stream))
        || read[0].unit() == null) {
      throw source.fault(name, "the model part is missing or empty", Source.EXPORT_AGAIN);
    }
    parts.put(name, read[0]);
    return read[0];
  }

  private void place(ThreeMfPart from, Use use, Affine outer, int depth) {
    ThreeMfPart part = use.part() == null ? from : part(use.part());
    Body body = part.object(use.id());
    if (body == null) {
      throw fault(from, use, "object " + use.id() + " is named but is not there");
    }
    if (depth > DEEPEST) {
      throw fault(
          from, use, "components go round in a circle or nest more than " + DEEPEST + " deep");
    }
    copies++;
    if (copies > MOST_COPIES) {
      throw fault(from, use, "components ask for more than " + MOST_COPIES + " copies");
    }
    if (body.isSupport()) {
      supports++;
      return;
    }
    Affine placing =
        use.placing() == Affine.IDENTITY
            ? outer
            : outer == Affine.IDENTITY ? use.placing() : use.placing().then(outer);
    if (body.mesh != null) {
      vertices += body.mesh.vertexCount();
      triangles += body.mesh.triangleCount();
      source.allowed(triangles, from.name() + " line " + use.line());
      // a vertex list of a size no triangles need is refused by the same measure
      source.allowed(vertices / 3, from.name() + " line " + use.line());
      placed.add(new Placed(body.mesh, placing));
    }
    for (Use inner : body.components) {
      place(part, inner, placing, depth + 1);
    }
  }

  private MeshException fault(ThreeMfPart part, Use use, String what) {
    return source.fault(part.name() + " line " + use.line(), what, Source.EXPORT_AGAIN);
  }

  private TriMesh join() {
    double[] xyz = new double[(int) (3 * vertices)];
    int[] tri = new int[(int) (3 * triangles)];
    int points = 0;
    int to = 0;
    for (Placed p : placed) {
      p.placing.apply(p.mesh.xyz(), xyz, 3 * points);
      boolean mirrored = p.placing.determinant() < 0;
      int[] t = p.mesh.tri();
      for (int i = 0; i < t.length; i += 3) {
        tri[to++] = points + t[i];
        tri[to++] = points + t[mirrored ? i + 2 : i + 1];
        tri[to++] = points + t[mirrored ? i + 1 : i + 2];
      }
      points += p.mesh.vertexCount();
    }
    requireFinite(xyz);
    return new TriMesh(xyz, tri);
  }

  private void requireFinite(double[] xyz) {
    for (double c : xyz) {
      if (!Double.isFinite(c)) {
        throw source.fault(
            "build", "a transform moves a corner out of all bounds", Source.EXPORT_AGAIN);
      }
    }
  }
}
