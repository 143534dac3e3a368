package org.castwright.solid.manifold;

import com.dylibso.chicory.runtime.Instance;
import com.dylibso.chicory.runtime.Machine;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.IntConsumer;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;

/**
 * Mesh booleans on one instance of the module. For one thread at a time. Meshes must be closed,
 * oriented and manifold, with finite coordinates, and not empty. A call that throws {@link
 * EngineStopped} may leave the instance {@link #isBroken()}.
 */
final class Engine {

  private static final String NO_ERROR = "NoError";
  private static final String UNION = "_manifoldUnionN";
  private static final String DIFFERENCE = "_manifoldDifferenceN";

  /** Tries to import a mesh; a million triangles take one or two. */
  private static final int MOST_TRIES = 8;

  private final Bindings bindings;
  private final ImportCache imports;

  Engine() {
    this(ManifoldWasm::create);
  }

  /** An engine that runs other compiled code than the normal one. */
  Engine(Function<Instance, Machine> machineFactory) {
    bindings = new Bindings(machineFactory);
    imports = new ImportCache(this::imported);
  }

  boolean isBroken() {
    return bindings.isBroken();
  }

  /** C++ objects and host values held, other than cached imports. */
  int live() {
    return bindings.live() - imports.size();
  }

  /** Linear memory, bytes. */
  long memoryBytes() {
    return bindings.memory().bytes();
  }

  /** How many triangles of the given meshes are here already. */
  long known(List<TriMesh> meshes) {
    return imports.known(meshes);
  }

  TriMesh union(List<TriMesh> meshes) {
    return batch(UNION, meshes);
  }

  /** The first mesh without the others. */
  TriMesh difference(List<TriMesh> meshes) {
    return batch(DIFFERENCE, meshes);
  }

  TriMesh intersection(TriMesh a, TriMesh b) {
    return batch("_manifoldIntersectionN", List.of(a, b));
  }

  /** The first two meshes in one, without the others. */
  TriMesh recut(List<TriMesh> meshes) {
    imports.prepare(meshes);
    List<NativeObject> bodies = meshes.stream().map(imports::get).toList();
    try (NativeObject joined = result(UNION, bodies.subList(0, 2))) {
      List<NativeObject> cut = new ArrayList<>(List.of(joined));
      cut.addAll(bodies.subList(2, bodies.size()));
      try (NativeObject result = result(DIFFERENCE, cut)) {
        return exported(result);
      }
    }
  }

  /** What each cutter cuts off from what the earlier ones left of a body, and the rest. */
  List<TriMesh> slices(TriMesh body, List<TriMesh> cutters, IntConsumer done) {
    List<TriMesh> all = new ArrayList<>(cutters);
    all.add(body);
    imports.prepare(all);
    List<TriMesh> out = new ArrayList<>();
    NativeObject rest = imports.get(body);
    try {
      for (int i = 0; i < cutters.size(); i++) {
        try (NativeObject parts = rest.make("_Split", imports.get(cutters.get(i)))) {
          try (NativeObject off = parts.make("get", 0)) {
            out.add(exported(off));
          }
          NativeObject left = parts.make("get", 1);
          if (i > 0) {
            rest.close();
          }
          rest = left;
        }
        done.accept(i + 1);
      }
      out.add(exported(rest));
    } finally {
      if (rest != imports.get(body)) {
        rest.close();
      }
    }
    return out;
  }

  /** What {@code moving} shifted by {@code shift} has in common with {@code still}. */
  TriMesh common(TriMesh moving, Vec3 shift, TriMesh still) {
    imports.prepare(List.of(moving, still));
    double[] t = {shift.x(), shift.y(), shift.z()};
    try (NativeObject moved = imports.get(moving).make("_Translate", t);
        NativeObject both = moved.make("intersect", imports.get(still))) {
      return exported(both);
    }
  }

  /** The convex hull of points, three doubles each. */
  TriMesh hull(double[] xyz) {
    try (NativeObject points = bindings.make("Vector_vec3")) {
      points.call("resize", xyz.length / 3, new double[3]);
      FlatMemory memory = bindings.memory();
      int address = memory.readInt(points.address());
      for (int i = 0; i < xyz.length; i++) {
        memory.writeF64(address + Double.BYTES * i, xyz[i]);
      }
      try (NativeObject hull =
          (NativeObject) bindings.callFunction("_manifoldHullPoints", points)) {
        return exported(hull);
      }
    }
  }

  private TriMesh batch(String function, List<TriMesh> meshes) {
    imports.prepare(meshes);
    try (NativeObject result = result(function, meshes.stream().map(imports::get).toList())) {
      return exported(result);
    }
  }

  private NativeObject result(String function, List<NativeObject> bodies) {
    try (NativeObject list = bindings.make("Vector_manifold")) {
      bodies.forEach(body -> list.call("push_back", body));
      return (NativeObject) bindings.callFunction(function, list);
    }
  }

  private NativeObject imported(TriMesh mesh) {
    StandIns standIns = new StandIns(mesh);
    for (int i = 0; i < MOST_TRIES; i++) {
      Map<String, Object> input =
          Map.of("numProp", 3, "vertProperties", standIns.positions(), "triVerts", mesh.tri());
      try (NativeObject rough = bindings.make("Manifold", input)) {
        requireNoError(rough);
        Map<?, ?> got = (Map<?, ?>) rough.call("_GetMeshJS", -1);
        if (standIns.accept((float[]) got.get("vertProperties"), (int[]) got.get("triVerts"))) {
          try (NativeObject fine = rough.make("setTolerance", 0.0)) {
            return placed(fine, standIns, mesh.xyz());
          }
        }
      }
    }
    throw new EngineStopped("a body lost or changed triangles on its way in");
  }

  /** The body with its true positions. */
  private NativeObject placed(NativeObject body, StandIns standIns, double[] xyz) {
    FlatMemory memory = bindings.memory();
    NativeObject exact =
        bindings.visitVertices(
            body,
            "_WarpBatch",
            (address, count) -> {
              for (int at = address, n = 0; n < count; n++, at += 3 * Double.BYTES) {
                int i = 3 * standIns.vertex(memory.readDouble(at));
                memory.writeF64(at, xyz[i]);
                memory.writeF64(at + Double.BYTES, xyz[i + 1]);
                memory.writeF64(at + 2 * Double.BYTES, xyz[i + 2]);
              }
            });
    requireNoError(exact);
    return exact;
  }

  private TriMesh exported(NativeObject body) {
    requireNoError(body);
    if (body.count("numTri") == 0) {
      return new TriMesh(new double[0], new int[0]);
    }
    Map<?, ?> mesh = (Map<?, ?>) body.call("_GetMeshJS", -1);
    int[] tri = (int[]) mesh.get("triVerts");
    try (NativeObject points = bindings.make("Vector_vec3")) {
      bindings.callFunction("_manifoldCollectVertices", points, body);
      FlatMemory memory = bindings.memory();
      int begin = memory.readInt(points.address());
      int end = memory.readInt(points.address() + Integer.BYTES);
      double[] xyz = new double[(end - begin) / Double.BYTES];
      for (int i = 0; i < xyz.length; i++) {
        xyz[i] = memory.readDouble(begin + Double.BYTES * i);
      }
      return TriangleOrder.canonical(xyz, tri);
    }
  }

  /** Forces the body to be computed. */
  private static void requireNoError(NativeObject body) {
    String status = (String) body.call("status");
    if (!status.equals(NO_ERROR)) {
      throw new EngineStopped("the kernel says " + status);
    }
  }
}
