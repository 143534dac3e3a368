package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.microsoft.playwright.options.BoundingBox;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * In a real browser: the brush for the seam, fixed pulls, and what a job remembers of the order.
 */
class BrowserWishesIT extends InBrowser {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private JsonNode json(String path) throws IOException {
    return MAPPER.readTree(Files.readString(temp.resolve("jobs").resolve(path)));
  }

  private void openAll() {
    page.evaluate("() => document.querySelectorAll('details').forEach((d) => (d.open = true))");
  }

  /** Clicks in the view, at shares of its width and height. */
  private void click(double x, double y) {
    page.waitForTimeout(400);
    BoundingBox b = page.locator("#view").boundingBox();
    page.mouse().click(b.x + x * b.width, b.y + y * b.height);
  }

  private void fill(String field, String value) {
    page.fill(field, value);
    page.keyboard().press("Tab");
  }

  @Test
  void whatIsAskedOfTheSeamGoesWithTheJobAndComesBack() throws IOException {
    bring("marked");
    page.waitForSelector("#hands", visible());
    openAll();
    // in this order: along z there is nothing to say before the rest is said
    Map<String, String> asked = new LinkedHashMap<>();
    asked.put("#scale", "1.25");
    asked.put("#shrink_percent", "1");
    asked.put("#shrink_z", "2");
    asked.put("#bed_x", "200");
    asked.put("#leave_mm3", "4");
    asked.put("#pulls", "1=0,0,1 2=0,0,-1");
    page.selectOption("#up", "y");
    page.selectOption("#gate_end", "bottom");
    asked.forEach(this::fill);
    page.waitForTimeout(400);
    byte[] plain = page.locator("#view").screenshot();
    page.click("#brush");
    page.waitForSelector("#brush-line", visible());
    page.selectOption("#mark-kind", "hide");
    page.fill("#mark-radius", "20");
    assertEquals("12.0 mm", page.textContent("#mark-words"));
    click(0.5, 0.5);
    page.waitForSelector("#marks li:has-text('hide the seam here: 12.0 mm round')");
    page.selectOption("#mark-kind", "piece");
    page.selectOption("#mark-piece", "2");
    page.focus("#view");
    page.keyboard().press("Enter");
    page.waitForSelector("#marks li:has-text('piece 2 forms it')");
    page.waitForTimeout(400);
    assertFalse(
        Arrays.equals(plain, page.locator("#view").screenshot()), "marks are not seen in the view");
    assertTrue(page.textContent("#colors").contains("hide the seam here"));
    page.click("#marks li >> nth=1 >> button");
    assertEquals(1, page.locator("#marks li").count());
    assertEquals("3", page.inputValue("#pieces"), "two pieces leave a seam no choice");
    page.click("#make");
    proved();
    JsonNode mark = json("marked/wishes.json").at("/wishes/0");
    assertEquals("hide", mark.get("mark").asText());
    assertEquals(12, mark.at("/sphere/radius").asDouble(), 1e-6);
    JsonNode c = mark.at("/sphere/center");
    // the egg's axes of 60, 42.5 and 27.5 mm lie along z, x and y when y of the file points up
    double[] half = {27.5 / 2, 30, 42.5 / 2};
    double on = 0;
    for (int k = 0; k < 3; k++) {
      on += Math.pow(c.get(k).asDouble() / half[k], 2);
    }
    assertEquals(1, on, 0.1, "the mark is not on the egg: " + c);
    page.reload();
    proved();
    openAll();
    asked.forEach((field, value) -> assertEquals(value, page.inputValue(field), field));
    assertEquals("y", page.inputValue("#up"));
    assertEquals("bottom", page.inputValue("#gate_end"));
    // with a pull fixed for each piece channels run straight up, which is said
    String why = page.getAttribute("#v-pour", "title");
    assertTrue(why.startsWith("At the bottom it cannot be"), why);
    assertTrue(page.textContent("#marks").contains("hide the seam here: 12.0 mm round"));
    page.waitForSelector("#colors:has-text('hide the seam here')", visible());
    Path shots = Files.createDirectories(Path.of("target/shots"));
    Files.write(shots.resolve("wishes.png"), page.screenshot());
  }

  @Test
  void aPullIsTakenFromTheViewAndAWrongOneIsSaidSo() throws IOException {
    bring("pulled");
    page.waitForSelector("#hands", visible());
    openAll();
    fill("#pulls", "1=0,0");
    page.waitForSelector("#pulls-wrong:has-text('A pull is three numbers')", visible());
    page.click("#make");
    page.waitForSelector(".bad #v-proof:has-text('A pull is three numbers')");
    fill("#pulls", "");
    page.selectOption("#toward-piece", "2");
    page.click("#toward");
    String[] pull = page.inputValue("#pulls").split("=|,");
    assertEquals("2", pull[0]);
    double square = 0;
    for (String v : Arrays.copyOfRange(pull, 1, 4)) {
      square += Double.parseDouble(v) * Double.parseDouble(v);
    }
    assertEquals(1, square, 0.01, Arrays.toString(pull));
    page.click("#undo");
    assertEquals("", page.inputValue("#pulls"));
  }

  /** Rules of axe-core on everything that can be opened. */
  @Test
  void anAccessibilityCheckerFindsNothingInTheOpenParts() throws IOException {
    bring("checked");
    page.waitForSelector("#hands", visible());
    openAll();
    page.click("#brush");
    page.focus("#view");
    page.keyboard().press("Enter");
    page.waitForSelector("#marks li");
    page.evaluate(Files.readString(Path.of("node_modules/axe-core/axe.min.js")));
    for (int i = 0; i < 2; i++) {
      Object found =
          page.evaluate(
              "() => axe.run().then((r) => r.violations.map((v) => v.id + ' ' +"
                  + " v.nodes.map((n) => n.target.join(' ')).join(', ')))");
      assertEquals(List.of(), found);
      page.click("#theme");
    }
  }
}
