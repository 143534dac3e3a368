package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.castwright.mesh.TriMesh;

/** The mesh objects of a 3MF file, read with the JDK's own ZIP and XML readers. */
final class ThreeMfRules {

  /** One object: its name and mesh as the file states them. */
  record Item(String name, String type, TriMesh mesh) {

    /**
     * 3MF Core Specification 1.4.0, section 4.1: corners of a triangle are distinct; every edge has
     * exactly one triangle running along it each way (oriented 2-manifold); counter-clockwise seen
     * from outside, so the volume is positive.
     *
     * @return the volume
     */
    double holdRules() {
      int[] tri = mesh.tri();
      long[] half = new long[tri.length];
      double six = 0;
      for (int f = 0; f < tri.length; f += 3) {
        int a = tri[f];
        int b = tri[f + 1];
        int c = tri[f + 2];
        assertTrue(a != b && b != c && c != a, name + ": a corner twice");
        half[f] = (long) a << 32 | b;
        half[f + 1] = (long) b << 32 | c;
        half[f + 2] = (long) c << 32 | a;
        six += at(a, 0) * (at(b, 1) * at(c, 2) - at(b, 2) * at(c, 1));
        six += at(a, 1) * (at(b, 2) * at(c, 0) - at(b, 0) * at(c, 2));
        six += at(a, 2) * (at(b, 0) * at(c, 1) - at(b, 1) * at(c, 0));
      }
      Arrays.sort(half);
      for (int i = 0; i < half.length; i++) {
        assertTrue(i == 0 || half[i] != half[i - 1], name + ": an edge twice the same way");
        long back = half[i] << 32 | half[i] >>> 32;
        assertTrue(Arrays.binarySearch(half, back) >= 0, name + ": an edge with one side");
      }
      assertTrue(six > 0, name + ": inside out");
      return six / 6;
    }

    private double at(int v, int k) {
      return mesh.xyz()[3 * v + k];
    }
  }

  private final List<Item> items = new ArrayList<>();
  private String unit;

  private ThreeMfRules() {}

  /** Reads the model part of a package. */
  static List<Item> items(byte[] file) throws IOException, XMLStreamException {
    ThreeMfRules rules = new ThreeMfRules();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(file))) {
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        if (e.getName().equals("3D/3dmodel.model")) {
          rules.read(zip.readAllBytes());
        }
      }
    }
    // section 3.4.1: millimeter is the default; a file that says so leaves no doubt
    assertEquals("millimeter", rules.unit);
    return rules.items;
  }

  private void read(byte[] xml) throws XMLStreamException {
    XMLStreamReader in =
        XMLInputFactory.newDefaultFactory().createXMLStreamReader(new ByteArrayInputStream(xml));
    List<Double> xyz = new ArrayList<>();
    List<Integer> tri = new ArrayList<>();
    String name = "";
    String type = "";
    while (in.hasNext()) {
      int what = in.next();
      if (what == XMLStreamReader.START_ELEMENT) {
        switch (in.getLocalName()) {
          case "model" -> unit = in.getAttributeValue(null, "unit");
          case "object" -> {
            name = in.getAttributeValue(null, "name");
            type = in.getAttributeValue(null, "type");
          }
          case "vertex" -> {
            for (String k : new String[] {"x", "y", "z"}) {
              xyz.add(Double.valueOf(in.getAttributeValue(null, k)));
            }
          }
          case "triangle" -> {
            for (String k : new String[] {"v1", "v2", "v3"}) {
              tri.add(Integer.valueOf(in.getAttributeValue(null, k)));
            }
          }
          default -> {}
        }
      } else if (what == XMLStreamReader.END_ELEMENT && in.getLocalName().equals("object")) {
        items.add(
            new Item(
                name,
                type,
                new TriMesh(
                    xyz.stream().mapToDouble(d -> d).toArray(),
                    tri.stream().mapToInt(i -> i).toArray())));
        xyz.clear();
        tri.clear();
      }
    }
  }
}
