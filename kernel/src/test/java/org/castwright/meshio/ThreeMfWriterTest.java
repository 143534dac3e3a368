package org.castwright.meshio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TimeZone;
import java.util.stream.IntStream;
import java.util.zip.ZipFile;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.castwright.geom.LengthUnit;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** Written files against the rules of the 3MF Core Specification 1.4.0, chapters 2 to 5. */
class ThreeMfWriterTest {

  private static final List<NamedMesh> MESHES =
      List.of(
          new NamedMesh("left & \"right\" <1>", Shapes.torus(30, 10, 24, 12), "#c08040"),
          new NamedMesh("knot \u00e9", Shapes.trefoil(5, 2, 60, 9)),
          new NamedMesh("cube", Shapes.cube(10), "#C08040"),
          new NamedMesh("ball", Shapes.sphere(4, 16), "#00FF00"));

  @TempDir Path folder;

  private Path write(List<NamedMesh> meshes) throws IOException {
    Path file = folder.resolve("out.3mf");
    ThreeMfWriter.write(file, meshes);
    return file;
  }

  private static Document xml(Path file, String part)
      throws IOException, ParserConfigurationException, SAXException {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    try (ZipFile zip = new ZipFile(file.toFile());
        InputStream in = zip.getInputStream(zip.getEntry(part))) {
      return factory.newDocumentBuilder().parse(in);
    }
  }

  private static List<Element> all(Document d, String name) {
    NodeList nodes = d.getElementsByTagNameNS("*", name);
    return IntStream.range(0, nodes.getLength()).mapToObj(i -> (Element) nodes.item(i)).toList();
  }

  @Test
  void packageNamesItsParts() throws Exception {
    Path file = write(MESHES);
    // chapter 2.1: the start part, its relationship and content types
    Element relation = all(xml(file, "_rels/.rels"), "Relationship").get(0);
    assertEquals("/3D/3dmodel.model", relation.getAttribute("Target"));
    assertEquals(
        "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel",
        relation.getAttribute("Type"));
    List<Element> types = all(xml(file, "[Content_Types].xml"), "Default");
    assertEquals(
        "application/vnd.openxmlformats-package.relationships+xml",
        types.get(0).getAttribute("ContentType"));
    assertEquals("model", types.get(1).getAttribute("Extension"));
    assertEquals(
        "application/vnd.ms-package.3dmanufacturing-3dmodel+xml",
        types.get(1).getAttribute("ContentType"));
  }

  @Test
  void modelFollowsTheRules() throws Exception {
    Document d = xml(write(MESHES), "3D/3dmodel.model");
    Element model = d.getDocumentElement();
    assertEquals(ModelFiles.CORE, model.getNamespaceURI());
    assertEquals("millimeter", model.getAttribute("unit"));
    List<Element> objects = all(d, "object");
    assertEquals(4, objects.size());
    Set<String> ids = new HashSet<>(Set.of(all(d, "basematerials").get(0).getAttribute("id")));
    for (int i = 0; i < 4; i++) {
      Element object = objects.get(i);
      // resource ids are unique and above zero (ST_ResourceID)
      assertTrue(ids.add(object.getAttribute("id")));
      assertTrue(Integer.parseInt(object.getAttribute("id")) > 0);
      assertEquals("model", object.getAttribute("type"));
      assertEquals(MESHES.get(i).name(), object.getAttribute("name"));
      assertEquals(object.getAttribute("id"), all(d, "item").get(i).getAttribute("objectid"));
      checkMesh(object);
    }
  }

  /** Chapter 4.1: distinct indices, every edge once each way, positive volume. */
  private static void checkMesh(Element object) {
    NodeList vertices = object.getElementsByTagNameNS("*", "vertex");
    NodeList triangles = object.getElementsByTagNameNS("*", "triangle");
    Set<Long> halfEdges = new HashSet<>();
    double volume = 0;
    for (int i = 0; i < triangles.getLength(); i++) {
      Element t = (Element) triangles.item(i);
      int[] v = new int[3];
      double[][] p = new double[3][3];
      for (int k = 0; k < 3; k++) {
        v[k] = Integer.parseInt(t.getAttribute("v" + (k + 1)));
        Element at = (Element) vertices.item(v[k]);
        for (int c = 0; c < 3; c++) {
          p[k][c] = Double.parseDouble(at.getAttribute("xyz".substring(c, c + 1)));
        }
      }
      assertTrue(v[0] != v[1] && v[1] != v[2] && v[2] != v[0]);
      for (int k = 0; k < 3; k++) {
        assertTrue(halfEdges.add((long) v[k] << 32 | v[(k + 1) % 3]));
      }
      volume +=
          p[0][0] * (p[1][1] * p[2][2] - p[1][2] * p[2][1])
              + p[0][1] * (p[1][2] * p[2][0] - p[1][0] * p[2][2])
              + p[0][2] * (p[1][0] * p[2][1] - p[1][1] * p[2][0]);
    }
    for (long e : halfEdges) {
      assertTrue(halfEdges.contains(e << 32 | e >>> 32));
    }
    assertTrue(volume > 0);
  }

  @Test
  void colorsAreBaseMaterials() throws Exception {
    Document d = xml(write(MESHES), "3D/3dmodel.model");
    List<Element> bases = all(d, "base");
    assertEquals(2, bases.size());
    assertEquals("#C08040", bases.get(0).getAttribute("displaycolor"));
    assertEquals("#00FF00", bases.get(1).getAttribute("displaycolor"));
    List<Element> objects = all(d, "object");
    String[] index = {"0", "", "0", "1"};
    for (int i = 0; i < 4; i++) {
      assertEquals(index[i], objects.get(i).getAttribute("pindex"));
      assertEquals(index[i].isEmpty() ? "" : "1", objects.get(i).getAttribute("pid"));
    }
    Document plain = xml(write(List.of(MESHES.get(1))), "3D/3dmodel.model");
    assertEquals(List.of(), all(plain, "basematerials"));
  }

  @Test
  void sameInputSameBytesWhateverTheClockAndZone() throws IOException {
    byte[] first = Files.readAllBytes(write(MESHES));
    TimeZone zone = TimeZone.getDefault();
    try {
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
      assertArrayEquals(first, Files.readAllBytes(write(MESHES)));
    } finally {
      TimeZone.setDefault(zone);
    }
  }

  @Test
  void readsBackJoined() throws IOException {
    RawModel m = MeshReader.read(write(MESHES));
    assertEquals(LengthUnit.MILLIMETER, m.statedUnit());
    double volume = 0;
    for (NamedMesh n : MESHES) {
      volume += n.mesh().volume();
    }
    assertEquals(volume, m.mesh().volume(), 1e-9 * volume);
  }

  @Test
  void repeatedIndicesAreLeftOut() throws IOException {
    TriMesh cube = Shapes.cube(2);
    int[] tri = Arrays.copyOf(cube.tri(), 39);
    tri[36] = 4;
    tri[37] = 4;
    tri[38] = 5;
    RawModel m = MeshReader.read(write(List.of(new NamedMesh("c", new TriMesh(cube.xyz(), tri)))));
    assertArrayEquals(cube.tri(), m.mesh().tri());
    assertNotEquals(tri.length, m.mesh().tri().length);
  }

  @Test
  void refusesWhatCannotBeWritten() {
    Path file = folder.resolve("none.3mf");
    TriMesh flat = new TriMesh(new double[] {0, 0, 0, 1, 0, 0}, new int[] {0, 1, 1});
    TriMesh nan =
        new TriMesh(new double[] {0, 0, 0, 1, 0, Double.NaN, 0, 1, 0}, new int[] {0, 1, 2});
    for (List<NamedMesh> bad :
        List.of(
            List.<NamedMesh>of(),
            List.of(new NamedMesh("flat", flat)),
            List.of(new NamedMesh("nan", nan)))) {
      assertThrows(IllegalArgumentException.class, () -> ThreeMfWriter.write(file, bad));
    }
    assertTrue(Files.notExists(file));
    TriMesh cube = Shapes.cube(1);
    assertThrows(IllegalArgumentException.class, () -> new NamedMesh(" ", cube));
    assertThrows(IllegalArgumentException.class, () -> new NamedMesh("a\u0007", cube));
    assertThrows(IllegalArgumentException.class, () -> new NamedMesh("a", cube, "red"));
  }
}
