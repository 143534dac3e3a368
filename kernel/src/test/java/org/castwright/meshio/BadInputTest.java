package org.castwright.meshio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import org.castwright.mesh.MeshException;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every bad STL, OBJ, PLY and OFF file gets one sentence: file, where, what, what to do. */
class BadInputTest {

  private static final String PLY =
      "ply\nformat ascii 1.0\nelement vertex 3\nproperty float x\nproperty float y\n"
          + "property float z\nelement face 1\nproperty list uchar int vertex_indices\nend_header\n";

  @TempDir Path folder;

  private String refusal(String name, byte[] content) {
    return assertThrows(MeshException.class, () -> ModelFiles.read(folder, name, content))
        .getMessage();
  }

  private void refused(String name, String content, String sentence) {
    assertEquals(name + ", " + sentence, refusal(name, ModelFiles.ascii(content)));
  }

  private static byte[] stl() {
    return ModelFiles.golden("pyramid-binary.stl");
  }

  private static ByteBuffer patched(byte[] stl) {
    return ByteBuffer.wrap(stl).order(ByteOrder.LITTLE_ENDIAN);
  }

  @Test
  void missingEmptyOrUnknown() {
    Path missing = folder.resolve("gone.stl");
    assertEquals(
        "gone.stl: there is no such file at " + missing + "; check the path.",
        assertThrows(MeshException.class, () -> MeshReader.read(missing)).getMessage());
    refused("a.stl", "", "byte 0: the file is empty; export the model again.");
    refused(
        "a.txt",
        "Dear Sir",
        "byte 0: this is no kind of model file known here, it begins with 'Dear Sir'; give an STL,"
            + " OBJ, PLY, OFF or 3MF file, or export the model as one of these.");
    refused(
        "a.step",
        "ISO-10303-21;\nHEADER;",
        "byte 0: this is a STEP file, which holds surfaces, not triangles; give an STL, OBJ, PLY,"
            + " OFF or 3MF file, or export the model as one of these.");
    refused(
        "a.obj",
        "\0\1\2\3",
        "byte 0: the name says OBJ but the bytes do not; export the model again.");
    refused(
        "a.stl",
        "just words",
        "line 1: this is text but holds no 'facet', so it is no STL file; export the model again.");
  }

  @Test
  void binaryStlCutShortOrLying() {
    assertEquals(
        "a.stl, byte 80: the header promises 6 triangles but the 383 bytes of the file hold 5;"
            + " the file was cut short or damaged, export the model again.",
        refusal("a.stl", Arrays.copyOf(stl(), 383)));
    assertEquals(
        "a.stl, byte 60: the file ends inside the 84 bytes of a binary STL header;"
            + " export the model again.",
        refusal("a.stl", Arrays.copyOf(stl(), 60)));
    byte[] billion = stl();
    patched(billion).putInt(80, 1_000_000_000);
    assertEquals(
        "a.stl, byte 80: the header promises 1000000000 triangles but the 384 bytes of the file"
            + " hold 6; the file was cut short or damaged, export the model again.",
        refusal("a.stl", billion));
    byte[] few = stl();
    patched(few).putInt(80, 4);
    assertEquals(
        "a.stl, byte 80: the header promises 4 triangles but the 384 bytes of the file hold 6;"
            + " the count is wrong, export the model again.",
        refusal("a.stl", few));
    assertEquals(
        "a.stl, byte 84: the binary STL file holds no triangles;"
            + " export the model as a mesh of triangles.",
        refusal("a.stl", new byte[84]));
  }

  @Test
  void binaryStlOutOfBounds() {
    byte[] nan = stl();
    patched(nan).putFloat(84 + 50 * 2 + 12 + 12, Float.NaN);
    assertEquals(
        "a.stl, triangle 2 (byte 208): a corner is at NaN, 0.0, 0.0, which is no finite place;"
            + " repair the model in the program that made it.",
        refusal("a.stl", nan));
    byte[] infinite = stl();
    patched(infinite).putFloat(84 + 12 + 8, Float.NEGATIVE_INFINITY);
    assertEquals(
        "a.stl, triangle 0 (byte 96): a corner is at 0.0, 0.0, -Infinity, which is no finite"
            + " place; repair the model in the program that made it.",
        refusal("a.stl", infinite));
  }

  @Test
  void textStl() {
    String good = new String(ModelFiles.golden("pyramid-text.stl"), StandardCharsets.ISO_8859_1);
    refused(
        "a.stl",
        good.substring(0, good.indexOf("endsolid")),
        "line 44: the file ends before 'endsolid', after 6 triangles; it was cut short, export the"
            + " model again.");
    refused(
        "a.stl",
        good.replaceFirst("vertex 0 0.0e\\+00 0", "vertex 0 inf 0"),
        "line 4: y is 'inf', not a finite number; repair the model in the program that made it.");
    refused(
        "a.stl",
        good.replaceFirst("vertex 0 0.0e\\+00 0", "vertex 0 0,5 0"),
        "line 4: y is '0,5', not a number; export the model again.");
    refused(
        "a.stl",
        good.replaceFirst("endloop", "vertex 1 1 1"),
        "line 7: 'endloop' was expected, not 'vertex'; export the model again.");
    refused(
        "a.stl",
        "solid nothing\nendsolid nothing\n",
        "byte 31: the text STL file holds no triangles; export the model as a mesh of triangles.");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "f 1 2 4 | line 4: a face names vertex 4 but the file has 3; the file was cut short or"
            + " damaged, export the model again.",
        "f 1 2 -4 | line 4: a face names vertex -4 where 3 are known so far; export the model"
            + " again.",
        "f 0 1 2 | line 4: a face names vertex 0 where 3 are known so far; export the model"
            + " again.",
        "f 1 2 | line 4: a face has 2 corners where three are needed; export the model again.",
        "f 1 2 x | line 4: a corner is 'x', not a number; export the model again.",
        "v 1 nan 0 | line 4: y is 'nan', not a finite number; repair the model in the program that"
            + " made it.",
        "v 1 1e999 0 | line 4: y is '1e999', not a finite number; repair the model in the program"
            + " that made it.",
        "v 1 2 | line 4: z is missing where the file ends; export the model again.",
        "g empty | byte 31: the OBJ file holds no triangles; export the model as a mesh of"
            + " triangles."
      })
  void obj(String line, String sentence) {
    refused("a.obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\n" + line, sentence);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0 0 0;1 0 0;0 1 0;3 0 1 3 | line 13: a face names vertex 3 but vertices run from 0 to 2;"
            + " export the model again.",
        "0 0 0;1 0 0;0 1 0;3 0 1 -1 | line 13: a face names vertex -1 but vertices run from 0 to"
            + " 2; export the model again.",
        "0 0 0;1 0 0;0 1 0;3 0 1 | line 13: a whole number is missing where the file ends; export"
            + " the model again.",
        "0 0 0;1 0 0;0 1 0; | line 13: the file ends before row 0 of 'face'; it was cut short,"
            + " export the model again.",
        "0 0 0;1 0 0;0 1 0;3 0 1 2 0 | line 13: the line has more numbers than the header promises,"
            + " the first is '0'; export the model again.",
        "0 0 0;1 0 0;0 1 0;3 0 1 2;3 0 1 2 | line 14: more lines follow than the header promises;"
            + " the counts are wrong, export the model again.",
        "0 0 0;1 0 NaN;0 1 0;3 0 1 2 | line 11: a coordinate is 'NaN', not a finite number; repair"
            + " the model in the program that made it."
      })
  void plyText(String rows, String sentence) {
    refused("a.ply", PLY + rows.replace(";", "\n"), sentence);
  }

  @Test
  void plyHeader() {
    refused(
        "a.ply",
        PLY.replace("face 1", "face 1000000000") + "0 0 0\n1 0 0\n0 1 0\n3 0 1 2\n",
        "line 9: the header promises 1000000000 rows of 'face', which do not fit in the "
            + (PLY.length() + 35)
            + " bytes of the file; it was cut short or damaged, export the model again.");
    refused(
        "a.ply",
        "ply\nformat ascii 1.0\nelement vertex 3\n",
        "line 4: the file ends inside the header; it was cut short, export it again.");
    refused(
        "a.ply",
        "ply\nformat ascii 1.0\nelement vertex 0\nproperty float x\nend_header\n",
        "header: it promises no 'face' element, so there are no triangles; export the model as a"
            + " mesh of triangles.");
    refused(
        "a.ply",
        PLY.replace("ascii", "binary_little_endian") + "0 0 0\n1 0 0\n0 1 0\n3 0 1 2\n 3 0 1 2\n",
        "byte "
            + (PLY.length() + 15)
            + ": the header promises binary data but text follows; write"
            + " 'format ascii 1.0' in its second line if that is what it is.");
  }

  @Test
  void plyBinary() {
    byte[] good = ModelFiles.golden("pyramid-little.ply");
    assertEquals(
        "a.ply, row 4 of 'face' (byte 447): the file ends inside this row; it was cut short,"
            + " export the model again.",
        refusal("a.ply", Arrays.copyOf(good, good.length - 1)));
    byte[] longer = Arrays.copyOf(good, good.length + 3);
    longer[good.length + 1] = 7;
    assertEquals(
        "a.ply, byte 452: 3 bytes follow that the header does not promise; the counts are wrong,"
            + " export the model again.",
        refusal("a.ply", longer));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "OFF;3 1 0;0 0 0;1 0 0;0 1 0;3 0 1 3 | line 6: a face names vertex 3 but vertices run from"
            + " 0 to 2; export the model again.",
        "OFF;3 2 0;0 0 0;1 0 0;0 1 0;3 0 1 2 | line 6: the file ends after 1 of 2 faces; it was cut"
            + " short, export the model again.",
        "OFF;3 1 0;0 0 0;1 0 0;0 1 0;3 0 1 2;3 0 1 2 | line 7: more lines follow than the 3"
            + " vertices and 1 faces promised; the counts are wrong, export the model again.",
        "OFF;1000000000 1 0;0 0 0 | line 2: the number of vertices is 1000000000, which does not fit"
            + " in the 24 bytes of the file; the count is wrong or the file was cut short, export"
            + " the model again.",
        "OFF BINARY;1 1 1 | line 1: this is a binary OFF file, which is not read; save it as text"
            + " OFF.",
        "OFF;0 0 0 | byte 9: the OFF file holds no triangles; export the model as a mesh of"
            + " triangles."
      })
  void off(String text, String sentence) {
    refused("a.off", text.replace(";", "\n"), sentence);
  }

  @Test
  void tooMuch() throws IOException {
    ByteArrayOutputStream bomb = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(bomb)) {
      byte[] zeros = new byte[1 << 16];
      for (int i = 0; i < 320; i++) {
        out.write(zeros);
      }
    }
    Path file = folder.resolve("bomb.stl.gz");
    Files.write(file, bomb.toByteArray());
    ReadLimits limits = new ReadLimits(20_000_000, 5);
    assertEquals(
        "bomb.stl.gz, gzip data: they unpack to more than the limit of 20000000 bytes; reduce the"
            + " model and export it again.",
        assertThrows(MeshException.class, () -> MeshReader.read(file, limits, Progress.NONE))
            .getMessage());
    for (String name : new String[] {"pyramid-binary.stl", "pyramid-text.stl", "pyramid.obj"}) {
      Path many = folder.resolve(name);
      Files.write(many, ModelFiles.golden(name));
      String message =
          assertThrows(MeshException.class, () -> MeshReader.read(many, limits, Progress.NONE))
              .getMessage();
      assertEquals(
          "6 triangles are more than the limit of 5; reduce the model and export it again.",
          message.substring(message.indexOf(": ") + 2));
    }
  }

  @Test
  void gzipCutShortOrDamaged() {
    byte[] good = ModelFiles.golden("pyramid-binary.stl.gz");
    assertEquals(
        "a.stl.gz, byte 50: the gzip data end too early; the file was cut short, copy it again.",
        refusal("a.stl.gz", Arrays.copyOf(good, 50)));
    byte[] bad = good.clone();
    bad[bad.length - 6] ^= 1;
    assertEquals(
        "a.stl.gz, gzip data: they are damaged; copy the file again.", refusal("a.stl.gz", bad));
  }
}
