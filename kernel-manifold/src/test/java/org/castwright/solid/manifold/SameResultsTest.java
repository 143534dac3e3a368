package org.castwright.solid.manifold;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.dylibso.chicory.runtime.Instance;
import com.dylibso.chicory.runtime.Machine;
import java.io.IOException;
import java.lang.reflect.Constructor;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.junit.jupiter.api.Test;

/** The same operands give the same bytes: after any history, on any thread, tuned or not. */
class SameResultsTest {

  @Test
  void onTwoThreads() {
    List<TriMesh> bodies = bodies();
    try (ManifoldKernel kernel = new ManifoldKernel();
        ManifoldKernel other = new ManifoldKernel()) {
      List<TriMesh> oneByOne =
          IntStream.range(0, 60).mapToObj(i -> result(kernel, bodies, i)).toList();
      List<TriMesh> together =
          IntStream.range(0, 60).parallel().mapToObj(i -> result(other, bodies, i)).toList();
      for (int i = 0; i < 60; i++) {
        assertSame(oneByOne.get(i), together.get(i));
      }
    }
  }

  @Test
  void afterAnotherHistory() {
    List<TriMesh> bodies = bodies();
    try (ManifoldKernel kernel = new ManifoldKernel();
        ManifoldKernel other = new ManifoldKernel()) {
      List<TriMesh> forward = new ArrayList<>();
      List<TriMesh> backward = new ArrayList<>();
      for (int i = 0; i < 60; i++) {
        forward.add(result(kernel, bodies, i));
        backward.add(0, result(other, bodies, 59 - i));
      }
      for (int i = 0; i < 60; i++) {
        assertSame(forward.get(i), backward.get(i));
      }
    }
  }

  @Test
  void tunedAndUntuned() {
    Engine tuned = new Engine();
    Engine plain = new Engine(untuned());
    List<TriMesh> bodies = new ArrayList<>(bodies());
    bodies.add(Shapes.sphere(1, 120));
    bodies.add(Shapes.sphere(0.8, 120).translated(new Vec3(0.5, 0.3, 0.2)));
    for (int i = 0; i + 1 < bodies.size(); i++) {
      TriMesh a = bodies.get(i);
      TriMesh b = bodies.get(i + 1);
      assertSame(plain.difference(List.of(a, b)), tuned.difference(List.of(a, b)));
      assertSame(plain.union(List.of(a, b)), tuned.union(List.of(a, b)));
      assertSame(plain.intersection(a, b), tuned.intersection(a, b));
      assertSame(plain.hull(a.xyz()), tuned.hull(a.xyz()));
    }
    assertEquals(plain.memoryBytes(), tuned.memoryBytes());
  }

  @Test
  void nothingIsLeftBehind() {
    Engine engine = new Engine();
    int before = engine.live();
    long memory = 0;
    for (int i = 0; i < 60; i++) {
      TriMesh a = Shapes.sphere(1, 16);
      TriMesh b = a.translated(new Vec3(0.5, 0.002 * i, 0));
      assertTrue(engine.difference(List.of(a, b)).triangleCount() > 50);
      TriMesh slab = Bodies.box(-2, -2, -2, 2, 2, -0.5);
      engine.slices(a, List.of(slab, b), done -> {});
      assertThrows(
          IllegalStateException.class,
          () ->
              engine.slices(
                  a,
                  List.of(slab, b),
                  done -> {
                    throw new IllegalStateException("stopped after " + done);
                  }));
      engine.recut(List.of(a, b, slab));
      engine.common(a, Vec3.X, b);
      engine.hull(b.xyz());
      assertEquals(before, engine.live());
      // the cache keeps what a garbage collection has not found yet; it may grow until one has
      if (i == 40) {
        System.gc();
        memory = engine.memoryBytes();
      }
    }
    assertTrue(engine.memoryBytes() <= 1.5 * memory, engine.memoryBytes() + " after " + memory);
  }

  @Test
  void aBodyIsImportedOnce() {
    Engine engine = new Engine();
    TriMesh body = Shapes.sphere(1, 40);
    TriMesh tool = Shapes.cube(1);
    assertEquals(0, engine.known(List.of(body, tool)));
    engine.common(body, Vec3.X, tool);
    assertEquals(body.triangleCount() + 12, engine.known(List.of(body, tool)));
    assertEquals(0, engine.known(List.of(Shapes.cube(1))));
  }

  @Test
  void anEngineThatHasABodyIsWaitedFor() throws Exception {
    AtomicInteger made = new AtomicInteger();
    EnginePool pool =
        new EnginePool(
            2,
            () -> {
              made.incrementAndGet();
              return new Engine();
            });
    List<TriMesh> large = List.of(Shapes.sphere(1, 250), Shapes.cube(1));
    Engine first = pool.run(large, engine -> used(engine, large));
    CountDownLatch taken = new CountDownLatch(1);
    Thread other =
        new Thread(
            () ->
                pool.run(
                    large,
                    engine -> {
                      taken.countDown();
                      return used(engine, large);
                    }));
    other.start();
    taken.await();
    assertEquals(first, pool.run(large, engine -> engine));
    other.join();
    assertEquals(1, made.get());
    // what no engine has does not wait
    CountDownLatch done = new CountDownLatch(1);
    other = new Thread(() -> pool.run(large, engine -> waited(done)));
    other.start();
    while (!pool.idle().isEmpty()) {
      Thread.sleep(1);
    }
    Engine second = pool.run(List.of(Shapes.cube(2)), engine -> engine);
    done.countDown();
    other.join();
    assertNotEquals(first, second);
  }

  private static Engine used(Engine engine, List<TriMesh> meshes) {
    engine.union(meshes);
    return engine;
  }

  private static boolean waited(CountDownLatch latch) {
    try {
      return latch.await(1, TimeUnit.MINUTES);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<TriMesh> bodies() {
    SplittableRandom random = new SplittableRandom(31);
    List<TriMesh> out = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      out.add(i % 3 == 2 ? Bodies.latticeBox(random) : Bodies.any(random));
    }
    return out;
  }

  private static TriMesh result(ManifoldKernel kernel, List<TriMesh> bodies, int i) {
    Solid a = kernel.solid("a", bodies.get(i % bodies.size()));
    Solid b = kernel.solid("b", bodies.get((i * 5 + i / bodies.size() + 1) % bodies.size()));
    Solid c = kernel.solid("c", bodies.get((i * 7 + 3) % bodies.size()));
    Solid most = kernel.union("most", List.of(a, b));
    return switch (i % 3) {
      case 0 -> kernel.union("all", List.of(a, b, c)).mesh();
      case 1 -> kernel.difference("rest", most, List.of(c)).mesh();
      default -> kernel.intersection("common", most, c).mesh();
    };
  }

  private static void assertSame(TriMesh expected, TriMesh actual) {
    assertArrayEquals(expected.tri(), actual.tri());
    assertArrayEquals(expected.xyz(), actual.xyz(), 0);
  }

  /** The compiled code as Chicory wrote it, before the tuner. */
  private static Function<Instance, Machine> untuned() {
    Path folder = Path.of("target", "generated-resources", "chicory-compiler");
    ClassLoader loader = new UntunedLoader(folder);
    try {
      Constructor<?> constructor =
          loader.loadClass(ManifoldWasm.class.getName() + "Machine").getConstructor(Instance.class);
      return instance -> {
        try {
          return (Machine) constructor.newInstance(instance);
        } catch (ReflectiveOperationException e) {
          throw new IllegalStateException(e);
        }
      };
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Defines the compiled classes from another folder, and nothing else. */
  private static final class UntunedLoader extends ClassLoader {
    private final Path folder;

    UntunedLoader(Path folder) {
      super(ManifoldWasm.class.getClassLoader());
      this.folder = folder;
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      if (!name.startsWith(ManifoldWasm.class.getName() + "Machine")) {
        return super.loadClass(name, resolve);
      }
      Class<?> known = findLoadedClass(name);
      if (known != null) {
        return known;
      }
      try {
        byte[] code = Files.readAllBytes(folder.resolve(name.replace('.', '/') + ".class"));
        return defineClass(name, code, 0, code.length);
      } catch (IOException e) {
        throw new ClassNotFoundException(name, e);
      }
    }
  }
}
