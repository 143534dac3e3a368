package org.castwright.meshio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.List;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One shape through every format comes back with the same triangles, corner for corner. */
class RoundTripTest {

  private static final TriMesh SHAPE = Shapes.trefoil(8.1, 3.3, 48, 12);

  @TempDir Path folder;

  @Test
  void indexedFormatsKeepEveryBit() throws IOException {
    same(SHAPE, ModelFiles.read(folder, "a.obj", ModelFiles.obj(SHAPE)));
    same(SHAPE, ModelFiles.read(folder, "a.off", ModelFiles.off(SHAPE)));
    same(SHAPE, ModelFiles.read(folder, "a.ply", ModelFiles.plyText(SHAPE)));
    same(
        SHAPE,
        ModelFiles.read(folder, "l.ply", ModelFiles.plyBinary(SHAPE, ByteOrder.LITTLE_ENDIAN)));
    same(
        SHAPE, ModelFiles.read(folder, "b.ply", ModelFiles.plyBinary(SHAPE, ByteOrder.BIG_ENDIAN)));
    Path file = folder.resolve("a.3mf");
    ThreeMfWriter.write(file, List.of(new NamedMesh("knot", SHAPE)));
    same(SHAPE, MeshReader.read(file));
  }

  @Test
  void textStlKeepsEveryCorner() throws IOException {
    RawModel m = ModelFiles.read(folder, "a.stl", ModelFiles.stlText(SHAPE));
    assertEquals(SHAPE.vertexCount(), m.mesh().vertexCount());
    assertArrayEquals(corners(SHAPE), corners(m.mesh()));
  }

  @Test
  void binaryStlKeepsEveryCornerOnTheFloatGrid() throws IOException {
    TriMesh snapped = FloatGrid.snap(SHAPE);
    Path file = folder.resolve("a.stl");
    StlWriter.write(file, snapped, "knot");
    TriMesh back = MeshReader.read(file).mesh();
    assertEquals(snapped.vertexCount(), back.vertexCount());
    assertArrayEquals(corners(snapped), corners(back));
  }

  private static void same(TriMesh expected, RawModel read) {
    assertArrayEquals(expected.xyz(), read.mesh().xyz());
    assertArrayEquals(expected.tri(), read.mesh().tri());
    assertEquals(List.of(), read.notes());
  }

  private static double[] corners(TriMesh m) {
    double[] out = new double[3 * m.tri().length];
    for (int i = 0; i < m.tri().length; i++) {
      System.arraycopy(m.xyz(), 3 * m.tri()[i], out, 3 * i, 3);
    }
    return out;
  }
}
