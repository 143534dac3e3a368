package org.castwright.meshio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.castwright.geom.LengthUnit;
import org.castwright.geom.Vec3;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One square pyramid, written by hand in every format: side 2, height 3, so volume 4. */
class GoldenFilesTest {

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "pyramid-binary.stl, STL_BINARY",
    "solid-header-binary.stl, STL_BINARY",
    "pyramid-text.stl, STL_TEXT",
    "odd-header-text.stl, STL_TEXT",
    "pyramid.obj, OBJ",
    "pyramid-ascii.ply, PLY",
    "pyramid-little.ply, PLY",
    "pyramid-big.ply, PLY",
    "pyramid.off, OFF",
    "pyramid.3mf, THREE_MF",
    "pyramid-binary.stl.gz, STL_BINARY"
  })
  void everyFormat(String name, Format format) throws IOException {
    byte[] content = ModelFiles.golden(name);
    check(ModelFiles.read(folder, name, content), format);
    if (!name.endsWith(".gz")) {
      check(ModelFiles.read(folder, name + ".gz", ModelFiles.gzip(content)), format);
    }
    // the name is of no account where the content is plain
    check(ModelFiles.read(folder, "model", content), format);
    check(ModelFiles.read(folder, "wrong.off", content), format);
  }

  private static void check(RawModel m, Format format) {
    assertEquals(format, m.format());
    assertEquals(6, m.mesh().triangleCount());
    assertEquals(5, m.mesh().vertexCount());
    // closed form: a pyramid holds base times height / 3
    assertEquals(4, m.mesh().volume(), 1e-12);
    assertEquals(new Vec3(2, 2, 3), m.mesh().bounds().max());
    assertEquals(Vec3.ZERO, m.mesh().bounds().min());
    if (format == Format.THREE_MF) {
      assertEquals(LengthUnit.INCH, m.statedUnit());
    } else {
      assertNull(m.statedUnit());
    }
  }

  @Test
  void cutPolygonsAreNoted() throws IOException {
    RawModel m = ModelFiles.read(folder, "p.off", ModelFiles.golden("pyramid.off"));
    assertEquals("p.off", m.source());
    assertEquals(List.of("1 of 5 faces had more than three corners and were cut."), m.notes());
  }
}
