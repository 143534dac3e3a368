package org.castwright.meshio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StlWriterTest {

  private static byte[] bytes(TriMesh m, String header) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      StlWriter.write(out, m, header);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    return out.toByteArray();
  }

  @Test
  void sizeFollowsTheLayout() {
    // STL layout: 80 header + 4 count + 50 a triangle (3D Systems, StereoLithography Interface
    // Specification, 1988); a cube has 12 triangles, so 684 bytes
    assertEquals(684, bytes(Shapes.cube(10), "cube").length);
    TriMesh torus = Shapes.torus(30, 10, 20, 10);
    assertEquals(84 + 50 * 400, bytes(torus, "").length);
  }

  @Test
  void normalsAreUnitAndPointOutward() {
    ByteBuffer b = ByteBuffer.wrap(bytes(Shapes.cube(10), "cube")).order(ByteOrder.LITTLE_ENDIAN);
    assertEquals(12, b.getInt(80));
    for (int f = 0; f < 12; f++) {
      double length = 0;
      double outward = 0;
      for (int k = 0; k < 3; k++) {
        float n = b.getFloat(84 + 50 * f + 4 * k);
        length += n * n;
        outward += n * b.getFloat(84 + 50 * f + 12 + 4 * k);
      }
      assertEquals(1, length, 1e-6);
      // every face of a centered cube of side 10 is 5 away
      assertEquals(5, outward, 1e-6);
    }
  }

  @Test
  void sameInputSameBytes() {
    TriMesh m = Shapes.torus(30, 10, 20, 10);
    assertArrayEquals(bytes(m, "x"), bytes(m, "x"));
    TriMesh minusZero = new TriMesh(new double[] {-0.0, 0, 0, 1, 0, 0, 0, 1, 0}, t());
    TriMesh zero = new TriMesh(new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}, t());
    assertArrayEquals(bytes(zero, "x"), bytes(minusZero, "x"));
  }

  private static int[] t() {
    return new int[] {0, 1, 2};
  }

  @ParameterizedTest
  @ValueSource(strings = {"Solid cube", "d\u00fcse", "two\nlines"})
  void refusesHeadersThatMislead(String header) {
    assertThrows(IllegalArgumentException.class, () -> bytes(Shapes.cube(1), header));
  }

  @Test
  void refusesWhatAFloatCannotHold() {
    TriMesh far = new TriMesh(new double[] {1e39, 0, 0, 1, 0, 0, 0, 1, 0}, t());
    assertThrows(IllegalArgumentException.class, () -> bytes(far, "x"));
    assertThrows(IllegalArgumentException.class, () -> bytes(Shapes.cube(1), "x".repeat(81)));
  }
}
