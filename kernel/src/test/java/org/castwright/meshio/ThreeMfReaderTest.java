package org.castwright.meshio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.castwright.geom.LengthUnit;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the 3MF Core Specification 1.4.0 lets a file ask for, and what it may not. */
class ThreeMfReaderTest {

  private static final String TETRA = "<object id='1'>" + ModelFiles.TETRA_MESH + "</object>";
  private static final String ITEM = "<build><item objectid='1'/></build>";
  private static final String PART = "a.3mf, /3D/3dmodel.model line ";

  @TempDir Path folder;

  private RawModel read(String attributes, String resources, String build) throws IOException {
    return ModelFiles.read(
        folder,
        "a.3mf",
        ModelFiles.threeMf(attributes, "<resources>" + resources + "</resources>\n" + build));
  }

  private String refusal(byte[] content) {
    return assertThrows(MeshException.class, () -> ModelFiles.read(folder, "a.3mf", content))
        .getMessage();
  }

  private String refusal(String attributes, String resources, String build) {
    return refusal(
        ModelFiles.threeMf(attributes, "<resources>" + resources + "</resources>\n" + build));
  }

  @ParameterizedTest
  // 3MF Core Specification 1.4.0, ST_Unit: these six, millimeter if none is given
  @CsvSource({
    "micron, MICRON",
    "millimeter, MILLIMETER",
    "centimeter, CENTIMETER",
    "inch, INCH",
    "foot, FOOT",
    "meter, METER"
  })
  void units(String word, LengthUnit unit) throws IOException {
    RawModel m = read("unit='" + word + "'", TETRA, ITEM);
    assertEquals(unit, m.statedUnit());
    // closed form: a corner of a unit cube; the mesh stays in the file's unit
    assertEquals(1 / 6.0, m.mesh().volume(), 1e-15);
  }

  @Test
  void noUnitMeansMillimeters() throws IOException {
    assertEquals(LengthUnit.MILLIMETER, read("", TETRA, ITEM).statedUnit());
    assertEquals(
        PART + "2: unknown unit 'furlong'; export the model again.",
        refusal("unit='furlong'", TETRA, ITEM));
  }

  @Test
  void textOfEitherWidth() throws IOException {
    String model = ModelFiles.model("", "<resources>" + TETRA + "</resources>" + ITEM);
    String marked = "\ufeff" + model;
    byte[] utf8 = ModelFiles.zip(List.of("3D/3dmodel.model", marked));
    assertEquals(4, ModelFiles.read(folder, "a.3mf", utf8).mesh().triangleCount());
    byte[] wide = marked.replace("UTF-8", "UTF-16").getBytes(StandardCharsets.UTF_16LE);
    byte[] utf16 = ModelFiles.zip("3D/3dmodel.model", wide);
    assertEquals(4, ModelFiles.read(folder, "a.3mf", utf16).mesh().triangleCount());
    byte[] latin =
        ModelFiles.ascii(
            model.replace("<resources>", "<metadata name='Title'>\u00e9</metadata><resources>"));
    byte[] stray = ModelFiles.zip("3D/3dmodel.model", latin);
    assertEquals(4, ModelFiles.read(folder, "a.3mf", stray).mesh().triangleCount());
  }

  @Test
  void placingsMirroredOnesTurnedBack() throws IOException {
    String build =
        "<build><item objectid='1' transform='-2 0 0 0 2 0 0 0 2 10 20 30'/>"
            + "<item objectid='1' transform='0 1 0 -1 0 0 0 0 1 100 0 0'/></build>";
    RawModel m = read("", TETRA, build);
    assertEquals(8, m.mesh().triangleCount());
    // both keep their outside out: 8/6 for the doubled one, 1/6 for the turned one
    assertEquals(9 / 6.0, m.mesh().volume(), 1e-12);
    // row vectors: (1,0,0) goes to (-2,0,0) + (10,20,30); in the second, x goes to y
    assertEquals(new Vec3(8, 20, 30), m.mesh().vertex(1));
    assertEquals(new Vec3(100, 1, 0), m.mesh().vertex(5));
    assertEquals(List.of("2 objects were joined into one mesh."), m.notes());
  }

  @Test
  void nestedComponents() throws IOException {
    String resources =
        TETRA
            + "<object id='2'><components><component objectid='1'/>"
            + "<component objectid='1' transform='1 0 0 0 1 0 0 0 -1 0 0 -5'/></components></object>"
            + "<object id='3'><components>"
            + "<component objectid='2' transform='2 0 0 0 2 0 0 0 2 0 0 0'/></components></object>";
    RawModel m =
        read(
            "",
            resources,
            "<build><item objectid='3' transform='1 0 0 0 1 0 0 0 1 7 0 0'/></build>");
    assertEquals(2 * 8 / 6.0, m.mesh().volume(), 1e-12);
    assertEquals(new Vec3(7, 0, 2), m.mesh().vertex(3));
    // the second: z 1 to -1 - 5 = -6, then doubled, then moved in x
    assertEquals(new Vec3(7, 0, -12), m.mesh().vertex(7));
  }

  @Test
  void supportsAreLeftOutAndLooksAreIgnored() throws IOException {
    String resources =
        "<m:colorgroup id='9' xmlns:m='x'><m:color color='#FF0000'/></m:colorgroup>"
            + TETRA
            + TETRA.replace("id='1'", "id='2' type='support'");
    RawModel m = read("", resources, "<build><item objectid='1'/><item objectid='2'/></build>");
    assertEquals(4, m.mesh().triangleCount());
    assertEquals(List.of("1 support objects were left out."), m.notes());
  }

  @Test
  void objectsInOtherParts() throws IOException {
    String production = "http://schemas.microsoft.com/3dmanufacturing/production/2015/06";
    byte[] zip =
        ModelFiles.zip(
            List.of(
                "3D/3dmodel.model",
                ModelFiles.model(
                    "xmlns:p='" + production + "' requiredextensions='p'",
                    "<resources><object id='1'><components>"
                        + "<component p:path='/3D/Objects/one.model' objectid='1'/>"
                        + "</components></object></resources>"
                        + ITEM),
                "3D/Objects/one.model",
                ModelFiles.model("", "<resources>" + TETRA + "</resources><build/>")));
    assertEquals(1 / 6.0, ModelFiles.read(folder, "a.3mf", zip).mesh().volume(), 1e-15);
  }

  @Test
  void extensionsThatChangeTheShape() {
    assertEquals(
        PART
            + "2: the model needs the 3MF extension"
            + " 'http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02', which is not read here;"
            + " export the model as a plain mesh.",
        refusal(
            "xmlns:b='http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02'"
                + " requiredextensions='b'",
            TETRA,
            ITEM));
    assertEquals(
        PART
            + "2: the model needs the 3MF extension 'q', which is not read here;"
            + " export the model as a plain mesh.",
        refusal("requiredextensions='q'", TETRA, ITEM));
  }

  @Test
  void nothingFromOutside() {
    String secret = "<!DOCTYPE model [<!ENTITY e SYSTEM 'file:///etc/passwd'>]>\n";
    String model = ModelFiles.model("", "<resources>" + TETRA + "&e;</resources>" + ITEM);
    String bad = model.replace("<model", secret + "<model");
    String message = refusal(ModelFiles.zip(List.of("3D/3dmodel.model", bad)));
    assertEquals(
        PART
            + "2: it holds a DOCTYPE or an entity, which 3MF forbids;"
            + " export the model again with another program.",
        message);
  }

  @Test
  void billionLaughsOfComponents() {
    StringBuilder resources = new StringBuilder(TETRA);
    for (int i = 2; i < 60; i++) {
      String half = "<component objectid='" + (i - 1) + "'/>";
      resources.append("<object id='").append(i).append("'><components>").append(half + half);
      resources.append("</components></object>");
    }
    String message = refusal("", resources.toString(), "<build><item objectid='59'/></build>");
    assertEquals(
        PART + "3: components ask for more than 1000000 copies; export the model again.", message);
  }

  @Test
  void circleOfComponents() {
    String resources =
        "<object id='1'><components><component objectid='2'/></components></object>"
            + "<object id='2'><components><component objectid='1'/></components></object>";
    assertEquals(
        PART
            + "3: components go round in a circle or nest more than 200 deep;"
            + " export the model again.",
        refusal("", resources, ITEM));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "v3='1' | v3='4' | a triangle names vertex 4 but vertices run from 0 to 3",
        "v3='1' | v3='-1' | 'v3' of <triangle> is '-1', not a whole number from 0 on",
        "v3='1' | q='1' | <triangle> has no 'v3'",
        "id='1' | id='one' | 'id' of <object> is 'one', not a whole number from 0 on",
        "<mesh> | <nothing> | a <vertex> stands outside a <mesh>"
      })
  void wrongNumbers(String from, String to, String what) {
    String resources = TETRA.replaceFirst(from, to);
    resources = to.equals("<nothing>") ? resources.replace("</mesh>", "</nothing>") : resources;
    assertEquals(PART + "3: " + what + "; export the model again.", refusal("", resources, ITEM));
  }

  @Test
  void numbersThatAreNot() {
    assertEquals(
        PART
            + "3: 'z' of <vertex> is 'NaN', not a finite number;"
            + " repair the model in the program that made it.",
        refusal("", TETRA.replaceFirst("z='1'", "z='NaN'"), ITEM));
    assertEquals(
        PART
            + "4: the transform '1 0 0 0 1 0 0 0 0 0 0 0' is not twelve numbers that keep a"
            + " volume; export the model again.",
        refusal("", TETRA, ITEM.replace("/>", " transform='1 0 0 0 1 0 0 0 0 0 0 0'/>")));
  }

  @Test
  void piecesThatAreMissing() {
    assertEquals(
        PART + "4: object 5 is named but is not there; export the model again.",
        refusal("", TETRA, ITEM.replace('1', '5')));
    assertEquals(
        "a.3mf, /3D/3dmodel.model: the build is empty; put the model on the plate and export.",
        refusal("", TETRA, "<build/>"));
    assertEquals(
        "a.3mf, /3D/3dmodel.model: the model part is missing or empty; export the model again.",
        refusal(ModelFiles.zip(List.of("other.txt", "x"))));
    assertTrue(
        refusal("", "<object id='1'><mesh/></object>", ITEM)
            .endsWith("the 3MF file holds no triangles; export the model as a mesh of triangles."));
    assertEquals(
        "a.3mf, byte 0: this is no zip, so it is no 3MF file; export the model again.",
        refusal(ModelFiles.ascii("<model/>")));
  }

  @Test
  void zipsCutShortOrDamaged() {
    byte[] good = ModelFiles.golden("pyramid.3mf");
    assertEquals(
        "a.3mf, byte 800: the zip has no directory at its end;"
            + " the file was cut short, export the model again.",
        refusal(Arrays.copyOf(good, 800)));
    byte[] bad = good.clone();
    // inside the packed data of the second part, the model
    bad[450] ^= 0x55;
    assertTrue(refusal(bad).startsWith("a.3mf, "));
    assertTrue(
        refusal("", "<object id='1'>", ITEM)
            .matches(".*3dmodel.model line \\d+: its XML is broken; export the model again\\."));
  }

  @Test
  void zipBomb() throws IOException {
    Path file = folder.resolve("a.3mf");
    Files.write(
        file,
        ModelFiles.threeMf(
            "", "<resources>" + TETRA + " ".repeat(5_000_000) + "</resources>" + ITEM));
    assertTrue(Files.size(file) < 20_000);
    MeshException e =
        assertThrows(
            MeshException.class,
            () -> MeshReader.read(file, new ReadLimits(1_000_000, 100), Progress.NONE));
    assertEquals(
        "a.3mf, zip: it unpacks to more than the limit of 1000000 bytes;"
            + " reduce the model and export it again.",
        e.getMessage());
  }
}
