package org.castwright.solid.manifold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.dylibso.chicory.runtime.Machine;
import com.dylibso.chicory.runtime.TrapException;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidException;
import org.castwright.solid.SolidStatus;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** What is refused, and what is said about it. */
class ErrorsTest {

  private static final ManifoldKernel KERNEL = new ManifoldKernel();
  private static final TriMesh BALL = Shapes.sphere(1, 12);

  @AfterAll
  static void close() {
    KERNEL.close();
  }

  @Test
  void openMesh() {
    TriMesh open = new TriMesh(BALL.xyz(), Arrays.copyOf(BALL.tri(), BALL.tri().length - 3));
    assertEquals(SolidStatus.NOT_MANIFOLD, KERNEL.status(open));
    String said = refusal(open);
    assertTrue(said.contains("3 open edges") && said.contains("near ("), said);
  }

  @Test
  void flippedTriangle() {
    int[] tri = BALL.tri().clone();
    int swap = tri[0];
    tri[0] = tri[1];
    tri[1] = swap;
    TriMesh flipped = new TriMesh(BALL.xyz(), tri);
    assertEquals(SolidStatus.NOT_MANIFOLD, KERNEL.status(flipped));
    assertTrue(refusal(flipped).contains("3 flipped edges"));
  }

  @Test
  void notFinite() {
    for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      double[] xyz = BALL.xyz().clone();
      xyz[16] = bad;
      TriMesh mesh = new TriMesh(xyz, BALL.tri());
      assertEquals(SolidStatus.NOT_FINITE, KERNEL.status(mesh));
      assertTrue(refusal(mesh).contains("vertex 5"));
    }
  }

  @Test
  void insideOut() {
    assertEquals(SolidStatus.INSIDE_OUT, KERNEL.status(BALL.reversed()));
    assertTrue(refusal(BALL.reversed()).contains("face inward"));
  }

  @Test
  void nothing() {
    TriMesh none = new TriMesh(new double[0], new int[0]);
    assertEquals(SolidStatus.EMPTY, KERNEL.status(none));
    assertTrue(refusal(none).contains("no triangles"));
    assertEquals(SolidStatus.OK, KERNEL.status(BALL));
  }

  @Test
  void emptyResultsAreBodiesToo() {
    Solid a = KERNEL.solid("a", BALL);
    Solid far = KERNEL.solid("far", BALL.translated(new Vec3(9, 0, 0)));
    Solid none = KERNEL.intersection("none", a, far);
    assertTrue(none.isEmpty());
    assertTrue(KERNEL.difference("all", a, List.of(a)).isEmpty());
    assertEquals(a.volume(), KERNEL.union("a", List.of(a, none)).volume(), 0);
    assertEquals(a.volume(), KERNEL.difference("a", a, List.of(none, far)).volume(), 0);
    assertTrue(KERNEL.difference("none", none, List.of(a)).isEmpty());
    assertEquals(0, KERNEL.overlap(none, Vec3.ZERO, a), 0);
    assertTrue(KERNEL.union("nothing", List.of()).isEmpty());
    assertTrue(KERNEL.hull("nothing", List.of(none)).isEmpty());
    assertEquals(List.of(), KERNEL.decompose(none));
    assertTrue(KERNEL.split(none, a).inside().isEmpty());
  }

  @Test
  void aBodyThatIsNoneIsNamedByTheOperation() {
    // not through solid(), which would refuse it
    Solid open = new Solid("torn", new TriMesh(BALL.xyz(), Arrays.copyOf(BALL.tri(), 30)));
    Solid ball = KERNEL.solid("ball", BALL);
    SolidException e =
        assertThrows(SolidException.class, () -> KERNEL.difference("cut", ball, List.of(open)));
    assertTrue(e.getMessage().contains("difference \"cut\"") && e.getMessage().contains("torn"));
    assertTrue(e.getMessage().contains("NotManifold"), e.getMessage());
    assertEquals(List.of(ball, open), e.operands());
    assertEquals(ball.volume(), KERNEL.difference("none", ball, List.of()).volume(), 0);
  }

  @Test
  void anInstanceThatCrashedIsReplaced() {
    AtomicBoolean crash = new AtomicBoolean();
    AtomicInteger made = new AtomicInteger();
    EnginePool pool =
        new EnginePool(
            1,
            () -> {
              made.incrementAndGet();
              return new Engine(
                  instance -> {
                    Machine machine = ManifoldWasm.create(instance);
                    return (function, words) -> {
                      if (crash.get()) {
                        throw new TrapException("unreachable");
                      }
                      return machine.call(function, words);
                    };
                  });
            });
    try (ManifoldKernel kernel = new ManifoldKernel(pool)) {
      Solid a = kernel.solid("a", BALL);
      Solid b = kernel.solid("b", BALL.translated(new Vec3(1, 0, 0)));
      double common = kernel.overlap(a, Vec3.ZERO, b);
      crash.set(true);
      SolidException e =
          assertThrows(SolidException.class, () -> kernel.union("both", List.of(a, b)));
      assertTrue(e.getMessage().contains("union \"both\" of [a ("), e.getMessage());
      assertTrue(e.getMessage().contains("crashed (unreachable)"), e.getMessage());
      assertEquals(List.of(), pool.idle());
      crash.set(false);
      assertEquals(common, kernel.overlap(a, Vec3.ZERO, b), 0);
      assertEquals(2, made.get());
    }
  }

  @Test
  void anInstanceThatWaitsMakesRoom() {
    EnginePool pool = new EnginePool(1, Engine::new);
    try (ManifoldKernel kernel = new ManifoldKernel(pool)) {
      Solid a = kernel.solid("a", BALL);
      Solid b = kernel.solid("b", BALL.translated(new Vec3(1, 0, 0)));
      double common = kernel.overlap(a, Vec3.ZERO, b);
      assertEquals(1, pool.idle().size());
      // 16 GB, which this heap has not even without what waits
      assertThrows(OutOfMemoryError.class, () -> sum(new long[Integer.MAX_VALUE - 8]));
      assertEquals(List.of(), pool.idle());
      assertEquals(common, kernel.overlap(a, Vec3.ZERO, b), 0);
    }
  }

  private static long sum(long[] a) {
    return a[0] + a[a.length - 1];
  }

  @Test
  void aFullMemoryStopsTheInstance() {
    Bindings bindings = new Bindings(ManifoldWasm::create);
    FlatMemory memory = bindings.memory();
    assertEquals(-1, memory.grow(memory.maximumPages()));
    // asks for 2 GB less one byte in one piece
    EngineStopped e = assertThrows(EngineStopped.class, () -> bindings.allocate(Integer.MAX_VALUE));
    assertTrue(e.getMessage().contains("MB"), e.getMessage());
  }

  @Test
  void closedKernel() {
    ManifoldKernel kernel = new ManifoldKernel();
    Solid a = kernel.solid("a", BALL);
    Solid b = kernel.solid("b", BALL.translated(new Vec3(1, 0, 0)));
    kernel.close();
    kernel.close();
    assertThrows(IllegalStateException.class, () -> kernel.union("both", List.of(a, b)));
  }

  private static String refusal(TriMesh mesh) {
    SolidException e = assertThrows(SolidException.class, () -> KERNEL.solid("the model", mesh));
    assertTrue(e.getMessage().contains("the model"), e.getMessage());
    assertEquals(1, e.operands().size());
    return e.getMessage();
  }

  @Test
  void warmingUpAClosedKernelIsNoFault() {
    ManifoldKernel closed = new ManifoldKernel();
    closed.close();
    closed.warmUp();
    closed.warmUpWell();
    Solid ball = new Solid("ball", Primitives.sphere(1, 12));
    assertThrows(
        IllegalStateException.class,
        () -> closed.union("both", List.of(ball, ball)),
        "but work is");
  }
}
