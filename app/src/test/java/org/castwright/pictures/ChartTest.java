package org.castwright.pictures;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

/** Charts as they are laid out and as SVG files. */
class ChartTest {

  private static final int RED = OkabeIto.VERMILLION.rgb();

  private static Chart chart(String title) {
    return new Chart(
        title,
        new Chart.Axis("poured, cm³", 0, 10),
        new Chart.Axis("level, mm", 0, 50),
        List.of(
            new Chart.Curve(
                "liquid",
                OkabeIto.BLUE.rgb(),
                List.of(new Chart.Point(0, 0), new Chart.Point(5, 25), new Chart.Point(10, 50)))),
        List.of(new Chart.Level(25, "half & full", RED)));
  }

  /** Remembers what is drawn. */
  private static final class Seen implements ChartCanvas {
    private final List<double[]> blue = new ArrayList<>();
    private final List<double[]> dashed = new ArrayList<>();
    private final List<String> words = new ArrayList<>();

    @Override
    public void stroke(double[] xy, int rgb, double width, boolean dash) {
      if (rgb == OkabeIto.BLUE.rgb()) {
        blue.add(xy);
      }
      if (dash) {
        dashed.add(xy);
      }
    }

    @Override
    public void words(String text, double x, double y, double size, Stand stand, int rgb) {
      words.add(text);
    }
  }

  @Test
  void curvesAndLevelsShareTheirAxes() {
    Seen seen = new Seen();
    ChartForm.draw(chart("Level"), seen, 100, 200, 300, 220);
    // the legend's stroke and the curve
    assertEquals(2, seen.blue.size());
    double[] curve = seen.blue.stream().filter(c -> c.length == 6).findFirst().orElseThrow();
    assertEquals((curve[0] + curve[4]) / 2, curve[2], 1e-9);
    assertEquals((curve[1] + curve[5]) / 2, curve[3], 1e-9);
    assertTrue(curve[0] > 100 && curve[4] < 400 && curve[5] > 200 && curve[1] < 420);
    double[] level = seen.dashed.get(0);
    assertEquals(curve[3], level[1], 1e-9);
    assertEquals(level[1], level[3], 1e-9);
    assertTrue(seen.words.containsAll(List.of("Level", "poured, cm³", "0", "10", "50", "liquid")));
  }

  @Test
  void anAxisNeedsARange() {
    assertThrows(IllegalArgumentException.class, () -> new Chart.Axis("x", 1, 1));
    assertThrows(
        IllegalArgumentException.class, () -> new Chart.Axis("x", 0, Double.POSITIVE_INFINITY));
    assertThrows(IllegalArgumentException.class, () -> new Chart.Axis("x", 0, Double.NaN));
  }

  @Test
  void theFileIsXmlAndTheSameEachTime(@TempDir Path dir) throws Exception {
    List<Chart> two = List.of(chart("A < B"), chart("Second"));
    Path file = dir.resolve("a.svg");
    SvgFile.write(two, file);
    Document d = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file.toFile());
    assertEquals("svg", d.getDocumentElement().getTagName());
    NodeList texts = d.getElementsByTagName("text");
    List<String> words = new ArrayList<>();
    for (int i = 0; i < texts.getLength(); i++) {
      words.add(texts.item(i).getTextContent());
    }
    assertTrue(words.containsAll(List.of("A < B", "Second", "half & full")), words + "");
    assertArrayEquals(Files.readAllBytes(file), again(two, dir.resolve("b.svg")));
  }

  private static byte[] again(List<Chart> charts, Path file) throws IOException {
    SvgFile.write(charts, file);
    return Files.readAllBytes(file);
  }
}
