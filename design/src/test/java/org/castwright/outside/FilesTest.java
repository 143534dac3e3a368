package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.castwright.pipeline.Report;
import org.castwright.plan.Feature;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** The files of whole jobs against the formats' rules, read without the program's own readers. */
class FilesTest {

  private static List<Workshop.Made> jobs() {
    return List.of(Workshop.boltedSphere(), Workshop.boltedTorus());
  }

  /**
   * Binary STL is 84 + 50 n bytes for n triangles (layout as published with the format, 1988); it
   * states no unit. Every surface is closed and holds the volume the report gives.
   */
  @Test
  void stl() {
    for (Workshop.Made made : jobs()) {
      Map<String, Double> volumes = volumes(made.result().report());
      int seen = 0;
      for (Map.Entry<String, byte[]> file : made.files().entrySet()) {
        if (file.getKey().endsWith(".stl")) {
          StlBytes stl = StlBytes.of(file.getValue());
          stl.assertClosed(file.getKey());
          double expected = volumes.get(file.getKey());
          assertEquals(expected, stl.volume(), 2e-6 * expected, file.getKey());
          seen++;
        }
      }
      // casting, channels, block, and two pieces twice
      assertEquals(7, seen);
    }
  }

  private static Map<String, Double> volumes(Report r) {
    Map<String, Double> v = new HashMap<>();
    v.put(r.casting().file(), r.casting().volumeMm3());
    v.put(r.channelsBody().file(), r.channelsBody().volumeMm3());
    v.put(r.block().file(), r.block().volumeMm3());
    for (Report.PieceFile p : r.pieces()) {
      v.put(p.file(), p.volumeMm3());
      v.put(p.printFile(), p.volumeMm3());
    }
    return v;
  }

  /**
   * V − E + F = 2 − 2 g (Euler, Poincaré) with g the number of handles. The hollow of the cavity,
   * keys, sockets, slots, marks and channels, which are grooves in each half, add none; each bolt
   * hole goes through and adds one. A block is a ball, a ring has one handle.
   */
  @Test
  void handles() {
    checkHandles(Workshop.boltedSphere(), 0);
    checkHandles(Workshop.boltedTorus(), 1);
  }

  private static void checkHandles(Workshop.Made made, int ofCasting) {
    Report r = made.result().report();
    long bolts =
        made.result().mold().plan().features().stream()
            .filter(f -> f.kind() == Feature.Kind.BOLT_HOLE)
            .count();
    assertTrue(bolts >= 3, bolts + " bolts");
    for (Report.PieceFile p : r.pieces()) {
      assertEquals(2 - 2 * bolts, euler(made, p.file()), p.name());
      assertEquals(2 - 2 * bolts, euler(made, p.printFile()), p.name() + " for printing");
    }
    assertEquals(2, euler(made, r.block().file()));
    assertEquals(2 - 2 * ofCasting, euler(made, r.casting().file()));
    // gate and vents are one ball each
    assertEquals(2 * r.channels().size(), euler(made, r.channelsBody().file()));
  }

  private static int euler(Workshop.Made made, String file) {
    return StlBytes.of(made.files().get(file)).euler();
  }

  /**
   * 3MF Core Specification 1.4.0: the unit is stated; objects are named and placed once by the
   * build (chapters 3 and 4); in a mesh the indices of a triangle differ, each half-edge has
   * exactly one opposite, and the volume is positive (chapter 4.1).
   */
  @Test
  void threeMf() throws Exception {
    for (Workshop.Made made : jobs()) {
      Report r = made.result().report();
      Document d = model(made.files().get("mold.3mf"));
      Element model = d.getDocumentElement();
      assertEquals("model", model.getLocalName());
      assertEquals("millimeter", model.getAttribute("unit"));
      Map<String, Double> expected = new HashMap<>();
      r.pieces().forEach(p -> expected.put(p.name(), p.volumeMm3()));
      expected.put("casting", r.casting().volumeMm3());
      Set<String> ids = new HashSet<>();
      for (Element object : all(model, "object")) {
        assertTrue(ids.add(object.getAttribute("id")));
        Double volume = expected.remove(object.getAttribute("name"));
        assertEquals(volume, checkedVolume(object), 1e-5 * volume);
      }
      assertTrue(expected.isEmpty(), "not in the package: " + expected);
      for (Element item : all(model, "item")) {
        assertTrue(ids.remove(item.getAttribute("objectid")));
        assertFalse(item.hasAttribute("transform"));
      }
      assertTrue(ids.isEmpty(), "not built: " + ids);
    }
  }

  private static double checkedVolume(Element object) {
    List<Element> vertices = all(object, "vertex");
    Set<Long> halfEdges = new HashSet<>();
    double six = 0;
    for (Element t : all(object, "triangle")) {
      int[] v = new int[3];
      double[][] p = new double[3][3];
      for (int k = 0; k < 3; k++) {
        v[k] = Integer.parseInt(t.getAttribute("v" + (k + 1)));
        Element at = vertices.get(v[k]);
        for (int c = 0; c < 3; c++) {
          p[k][c] = Double.parseDouble(at.getAttribute("xyz".substring(c, c + 1)));
        }
      }
      for (int k = 0; k < 3; k++) {
        assertNotEquals(v[k], v[(k + 1) % 3]);
        assertTrue(halfEdges.add((long) v[k] << 32 | v[(k + 1) % 3]), "a half-edge twice");
      }
      six += p[0][0] * (p[1][1] * p[2][2] - p[1][2] * p[2][1]);
      six += p[0][1] * (p[1][2] * p[2][0] - p[1][0] * p[2][2]);
      six += p[0][2] * (p[1][0] * p[2][1] - p[1][1] * p[2][0]);
    }
    for (long e : halfEdges) {
      assertTrue(halfEdges.contains(e << 32 | e >>> 32), "a half-edge without its opposite");
    }
    assertTrue(six > 0);
    return six / 6;
  }

  private static Document model(byte[] file)
      throws IOException, ParserConfigurationException, SAXException {
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(file))) {
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        if (e.getName().equals("3D/3dmodel.model")) {
          DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
          factory.setNamespaceAware(true);
          return factory.newDocumentBuilder().parse(new ByteArrayInputStream(zip.readAllBytes()));
        }
      }
    }
    throw new AssertionError("no model part");
  }

  private static List<Element> all(Element in, String name) {
    NodeList nodes = in.getElementsByTagNameNS("*", name);
    return IntStream.range(0, nodes.getLength()).mapToObj(i -> (Element) nodes.item(i)).toList();
  }
}
