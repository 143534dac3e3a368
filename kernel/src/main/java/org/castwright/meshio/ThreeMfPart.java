package org.castwright.meshio;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.castwright.geom.LengthUnit;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.TriMesh;

/** One model part of a 3MF package: its unit, its objects, and what it asks to have built. */
final class ThreeMfPart {

  static final String CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
  private static final String PRODUCTION =
      "http://schemas.microsoft.com/3dmanufacturing/production/2015/06";

  /** Extensions that may be required: core itself, parts in other files, and mere looks. */
  private static final Set<String> KNOWN =
      Set.of(
          CORE,
          PRODUCTION,
          "http://schemas.microsoft.com/3dmanufacturing/material/2015/02",
          "http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07");

  /**
   * A use of an object.
   *
   * @param part the model part the object is in, null for this one
   */
  record Use(String part, int id, Affine placing, int line) {}

  /** An object: a mesh or a list of other objects. Filled while the part is read. */
  static final class Body {
    final int id;
    final String type;
    final int line;
    final List<Use> components = new ArrayList<>();
    TriMesh mesh;

    Body(int id, String type, int line) {
      this.id = id;
      this.type = type;
      this.line = line;
    }

    boolean isSupport() {
      return type.equals("support") || type.equals("solidsupport");
    }
  }

  private final Source source;
  private final String name;
  private final SafeXml in;
  private LengthUnit unit;
  private final Map<Integer, Body> objects = new HashMap<>();
  private final List<Use> items = new ArrayList<>();
  private Body body;
  private MeshBuilder mesh;
  private long triangles;

  private ThreeMfPart(Source source, String name, InputStream stream) {
    this.source = source;
    this.name = name;
    this.in = new SafeXml(source, name, stream);
  }

  static ThreeMfPart read(Source source, String name, InputStream stream) {
    ThreeMfPart p = new ThreeMfPart(source, name, stream);
    p.parse();
    return p;
  }

  String name() {
    return name;
  }

  LengthUnit unit() {
    return unit;
  }

  /** The object with that number, null if there is none. */
  Body object(int id) {
    return objects.get(id);
  }

  List<Use> items() {
    return items;
  }

  private void parse() {
    while (in.next()) {
      if (unit == null) {
        root();
      } else if (in.namespace().equals(CORE)) {
        if (in.isStart()) {
          start();
        } else {
          end();
        }
      }
    }
  }

  private void root() {
    if (!in.name().equals("model") || !in.namespace().equals(CORE)) {
      throw in.fault("it does not begin with <model> of 3MF", Source.EXPORT_AGAIN);
    }
    String required = in.attribute("requiredextensions");
    for (String prefix : required == null ? new String[0] : required.trim().split("\\s+", -1)) {
      String space = prefix.isEmpty() ? CORE : in.namespaceOf(prefix);
      if (space == null || !KNOWN.contains(space)) {
        throw in.fault(
            "the model needs the 3MF extension "
                + SafeXml.quote(space == null ? prefix : space)
                + ", which is not read here",
            "export the model as a plain mesh");
      }
    }
    String word = in.attribute("unit");
    unit =
        switch (word == null ? "millimeter" : word) {
          case "micron" -> LengthUnit.MICRON;
          case "millimeter" -> LengthUnit.MILLIMETER;
          case "centimeter" -> LengthUnit.CENTIMETER;
          case "inch" -> LengthUnit.INCH;
          case "foot" -> LengthUnit.FOOT;
          case "meter" -> LengthUnit.METER;
          default -> throw in.fault("unknown unit " + SafeXml.quote(word), Source.EXPORT_AGAIN);
        };
  }

  private void start() {
    switch (in.name()) {
      case "vertex" -> vertex();
      case "triangle" -> triangle();
      case "object" -> object();
      case "mesh" -> mesh = new MeshBuilder();
      case "component" -> {
        if (body == null) {
          throw in.fault("a <component> stands outside an <object>", Source.EXPORT_AGAIN);
        }
        body.components.add(use());
      }
      case "item" -> items.add(use());
      default -> {}
    }
  }

  private void end() {
    switch (in.name()) {
      case "mesh" -> {
        if (body != null && mesh != null) {
          body.mesh = mesh.build();
        }
        mesh = null;
      }
      case "object" -> body = null;
      default -> {}
    }
  }

  private void object() {
    String type = in.attribute("type");
    body = new Body(in.index("id"), type == null ? "model" : type, in.line());
    if (objects.put(body.id, body) != null) {
      throw in.fault("two objects have the number " + body.id, Source.EXPORT_AGAIN);
    }
  }

  private void vertex() {
    if (mesh == null) {
      throw in.fault("a <vertex> stands outside a <mesh>", Source.EXPORT_AGAIN);
    }
    mesh.vertex(in.number("x"), in.number("y"), in.number("z"));
  }

  private void triangle() {
    if (mesh == null) {
      throw in.fault("a <triangle> stands outside a <mesh>", Source.EXPORT_AGAIN);
    }
    mesh.triangle(corner("v1"), corner("v2"), corner("v3"));
    triangles++;
    if (triangles > source.limits().maxTriangles()) {
      source.allowed(triangles, name + " line " + in.line());
    }
  }

  private int corner(String attribute) {
    int v = in.index(attribute);
    if (v >= mesh.vertexCount()) {
      throw in.fault(
          "a triangle names vertex "
              + v
              + " but vertices run from 0 to "
              + (mesh.vertexCount() - 1),
          Source.EXPORT_AGAIN);
    }
    return v;
  }

  private Use use() {
    String text = in.attribute("transform");
    Affine placing = text == null ? Affine.IDENTITY : Affine.parse(text);
    if (placing == null || placing.determinant() == 0 || Double.isNaN(placing.determinant())) {
      throw in.fault(
          "the transform " + SafeXml.quote(text) + " is not twelve numbers that keep a volume",
          Source.EXPORT_AGAIN);
    }
    return new Use(in.attribute(PRODUCTION, "path"), in.index("objectid"), placing, in.line());
  }
}
