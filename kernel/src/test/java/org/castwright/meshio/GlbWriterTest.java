package org.castwright.meshio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.castwright.geom.Box3;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Written files against the glTF 2.0 Specification, chapters 3.6 (data) and 4 (container). */
class GlbWriterTest {

  private static final List<NamedMesh> MESHES =
      List.of(
          new NamedMesh("left \"half\" \\ é", Shapes.torus(30, 10, 24, 12), "#E69F00"),
          new NamedMesh("ball", Shapes.sphere(4, 16)));

  @TempDir Path folder;

  private byte[] written(List<NamedMesh> meshes) throws IOException {
    Path file = folder.resolve("out.glb");
    GlbWriter.write(file, meshes);
    return Files.readAllBytes(file);
  }

  private static ByteBuffer numbers(byte[] glb) {
    return ByteBuffer.wrap(glb).order(ByteOrder.LITTLE_ENDIAN);
  }

  private static String json(byte[] glb) {
    return new String(glb, 20, numbers(glb).getInt(12), StandardCharsets.UTF_8);
  }

  private static String word(byte[] glb, int at) {
    return new String(glb, at, 4, StandardCharsets.US_ASCII);
  }

  @Test
  void containerHasHeaderAndTwoPaddedChunks() throws IOException {
    byte[] glb = written(MESHES);
    ByteBuffer b = numbers(glb);
    assertEquals("glTF", word(glb, 0));
    assertEquals(2, b.getInt(4));
    assertEquals(b.capacity(), b.getInt(8));
    int json = b.getInt(12);
    assertEquals("JSON", word(glb, 16));
    assertEquals(0, json % 4);
    int bin = b.getInt(20 + json);
    assertEquals("BIN\0", word(glb, 24 + json));
    assertEquals(0, bin % 4);
    assertEquals(b.capacity(), 28 + json + bin);
    assertTrue(json(glb).contains("\"buffers\":[{\"byteLength\":" + bin + "}]"), json(glb));
  }

  @Test
  void positionsAndIndicesComeBack() throws IOException {
    byte[] glb = written(MESHES);
    ByteBuffer b = numbers(glb);
    String json = json(glb);
    Matcher view =
        Pattern.compile("\"byteOffset\":(\\d+),\"byteLength\":(\\d+),\"target\":(\\d+)")
            .matcher(json);
    int bin = 28 + b.getInt(12);
    for (NamedMesh m : MESHES) {
      assertTrue(view.find());
      assertEquals("34962", view.group(3));
      double[] xyz = m.mesh().xyz();
      assertEquals(4 * xyz.length, Integer.parseInt(view.group(2)));
      int at = bin + Integer.parseInt(view.group(1));
      for (int i = 0; i < xyz.length; i++) {
        assertEquals((float) xyz[i], b.getFloat(at + 4 * i));
      }
      assertTrue(view.find());
      assertEquals("34963", view.group(3));
      at = bin + Integer.parseInt(view.group(1));
      int[] tri = m.mesh().tri();
      int[] read = new int[tri.length];
      for (int i = 0; i < tri.length; i++) {
        read[i] = b.getInt(at + 4 * i);
      }
      assertArrayEquals(tri, read);
    }
  }

  @Test
  void namesColorsAndBoundsAreStated() throws IOException {
    String json = json(written(MESHES));
    assertTrue(json.contains("{\"name\":\"left \\\"half\\\" \\\\ é\",\"mesh\":0}"), json);
    assertTrue(json.contains("{\"name\":\"ball\",\"mesh\":1}"), json);
    assertTrue(json.contains("\"scale\":[0.001,0.001,0.001],\"children\":[1,2]"), json);
    Box3 box = MESHES.get(1).mesh().bounds();
    assertTrue(json.contains("\"min\":[" + (float) box.min().x() + ","), json);
    // 230/255 in sRGB is 0.7913 in linear light, 159/255 is 0.3467, by IEC 61966-2-1
    Matcher color = Pattern.compile("baseColorFactor\":\\[([\\d.]+),([\\d.]+),").matcher(json);
    assertTrue(color.find());
    assertEquals(0.7913, Double.parseDouble(color.group(1)), 5e-5);
    assertEquals(0.3467, Double.parseDouble(color.group(2)), 5e-5);
  }

  @Test
  void theSameMeshesGiveTheSameBytes() throws IOException {
    assertArrayEquals(written(MESHES), written(MESHES));
  }

  @Test
  void whatCannotBeWrittenLeavesTheFileAlone() throws IOException {
    Path file = folder.resolve("kept.glb");
    Files.writeString(file, "kept");
    TriMesh far = new TriMesh(new double[] {0, 0, 0, 1e300, 0, 0, 0, 1, 0}, new int[] {0, 1, 2});
    TriMesh none = new TriMesh(new double[0], new int[0]);
    for (List<NamedMesh> bad :
        List.of(
            List.<NamedMesh>of(),
            List.of(new NamedMesh("far", far)),
            List.of(new NamedMesh("none", none)))) {
      assertThrows(IllegalArgumentException.class, () -> GlbWriter.write(file, bad));
    }
    assertEquals("kept", Files.readString(file));
  }
}
