package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.LoadState;
import com.microsoft.playwright.options.Media;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.castwright.mesh.Shapes;
import org.junit.jupiter.api.Test;

/** The page in a real browser: pointing, looking, test casts, versions and the own printer. */
class BrowserTrialIT extends InBrowser {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private JsonNode json(String path) throws IOException {
    return MAPPER.readTree(Files.readString(temp.resolve("jobs").resolve(path)));
  }

  private void make(String name) throws IOException {
    bring(name);
    page.selectOption("#material", "beeswax");
    page.click("#make");
    proved();
  }

  /** Clicks in the view, at shares of its width and height. */
  private void click(double x, double y) {
    page.waitForTimeout(400);
    BoundingBox b = page.locator("#view").boundingBox();
    page.mouse().click(b.x + x * b.width, b.y + y * b.height);
  }

  @Test
  void aGateIsPlacedByAClickAndTakenBack() throws IOException {
    bring("gate-egg");
    page.waitForSelector("#hands", visible());
    page.click("#place-gate");
    assertTrue(page.textContent("#told").contains("where the gate should join"));
    click(0.5, 0.5);
    page.waitForSelector("#placed:has-text('gate placed by hand')");
    page.click("#undo");
    assertEquals("", page.textContent("#placed"));
    page.click("#place-gate");
    page.focus("#view");
    page.keyboard().press("Enter");
    page.waitForSelector("#placed:has-text('gate placed by hand')");
    page.fill("#size_mm", "60");
    page.keyboard().press("Tab");
    page.click("#make");
    proved();
    JsonNode at = json("gate-egg/job.json").at("/options/mold/openings/gate_at");
    // the middle of the picture lies on the egg, 60 mm long, and so does the place asked for
    double x = at.get("x").asDouble() / 30;
    double y = at.get("y").asDouble() / (17 / 24.0 * 30);
    double z = at.get("z").asDouble() / (11 / 24.0 * 30);
    assertEquals(1, x * x + y * y + z * z, 0.06, at.toString());
  }

  @Test
  void theViewShowsDraftFillingCutAndLengths() throws IOException {
    make("looked-at");
    byte[] pieces = page.locator("#view").screenshot();
    page.selectOption("#look", "draft");
    assertTrue(page.textContent("#colors").contains("degrees"));
    page.click("#measure");
    click(0.45, 0.5);
    click(0.55, 0.5);
    page.waitForSelector("#told:has-text('mm on the model')");
    double mm = Double.parseDouble(page.textContent("#told").replaceAll(" mm.*", ""));
    assertTrue(mm > 1 && mm < 49, "measured " + mm);
    byte[] draft = page.locator("#view").screenshot();
    assertFalse(Arrays.equals(pieces, draft), "the draft map is not seen");
    page.selectOption("#look", "fill");
    page.fill("#level", "1000");
    String full = page.textContent("#level-words");
    page.fill("#level", "500");
    String half = page.textContent("#level-words");
    assertTrue(full.contains("cm³") && !full.equals(half), full + " / " + half);
    assertTrue(page.textContent("#colors").contains("air that stays"));
    page.selectOption("#look", "pieces");
    page.selectOption("#cut", "y");
    page.waitForSelector("#cut-line", visible());
    page.waitForTimeout(400);
    assertFalse(Arrays.equals(pieces, page.locator("#view").screenshot()), "nothing is cut");
    page.selectOption("#cut", "");
  }

  @Test
  void aTestCastLeadsToANewVersionAndItsComparison() throws IOException {
    make("tried");
    page.evaluate(
        "() => document.querySelectorAll('details.more').forEach((d) => (d.open = true))");
    page.fill("#printer", "left");
    page.selectOption("#kind", "AIR");
    page.click("#note");
    page.waitForSelector("#v-trial:has-text('Click the place')");
    page.focus("#kind");
    click(0.5, 0.5);
    page.waitForSelector("#told:has-text('trapped air at')");
    page.click("#note");
    page.selectOption("#kind", "KEYS_TIGHT");
    page.click("#note");
    page.selectOption("#kind", "SIZE");
    page.fill("#wanted", "48");
    page.fill("#got", "47.5");
    page.click("#note");
    page.fill("#wanted", "34");
    page.fill("#got", "33.65");
    page.selectOption("#along", "x");
    page.click("#note");
    assertTrue(page.textContent("#notes").contains(" mm along x"));
    assertEquals(3, page.locator("#notes li").count());
    page.click("#ask");
    page.waitForSelector("#apply", visible());
    String answers = page.textContent("#answers");
    assertTrue(answers.contains("0.30 mm → 0.35 mm") && answers.contains("95 %"), answers);
    checkAccess();
    page.click("#apply");
    page.waitForURL("**/#tried-2", new Page.WaitForURLOptions().setTimeout(LONG));
    proved();
    assertEquals("0.35", page.inputValue("#clearance_mm"));
    assertEquals("tried", json("tried-2/trials.json").at("/log/made_from").asText());
    assertEquals("tried-2", json("tried/trials.json").at("/log/trials/0/next").asText());
    page.click("#history summary");
    assertTrue(page.textContent("#trials").contains("Changed in tried-2"));
    // the next job on this printer begins with what was measured
    page.waitForSelector("#own:has-text('2 lengths')");
    assertEquals(3, json("calibration.json").at("/calibration/readings").size());
    sideBySide();
    theSheetIsReadAndPrinted();
  }

  private void sideBySide() {
    page.click("#jobs li:has(.name:text-is('tried')) >> text=Compare");
    page.click("#jobs li:has(.name:text-is('tried-2')) >> text=Compare with tried");
    page.waitForSelector("#paper-view table", visible());
    String table = page.textContent("#paper-view table");
    assertTrue(table.contains("mold clearance mm") && table.contains("printing, h"), table);
    assertTrue(page.locator("#paper-view .differs").count() >= 3);
    page.click("#back");
  }

  private void theSheetIsReadAndPrinted() {
    page.click("#read");
    page.waitForSelector("#paper-view pre", visible());
    assertTrue(page.textContent("#paper-view pre").startsWith("JOB SHEET"));
    page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
    assertFalse(page.isVisible("#steps"), "the page is printed with the sheet");
    assertTrue(page.isVisible("#paper-view pre"));
    page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.SCREEN));
    page.click("#back");
  }

  @Test
  void jobsAreRenamedCopiedThrownAwayAndTakenBack() throws IOException {
    make("kept");
    page.click("#jobs li:has(.name:text-is('kept')) >> text=Rename");
    page.fill("[aria-label='New name of kept']", "better");
    page.keyboard().press("Enter");
    page.waitForSelector("#jobs .name:text-is('better')");
    page.waitForURL("**/#better");
    // what is shown under the new name is still coming
    page.waitForLoadState(LoadState.NETWORKIDLE);
    page.click("#undo");
    page.waitForSelector("#jobs .name:text-is('kept')");
    page.waitForLoadState(LoadState.NETWORKIDLE);
    page.click("#jobs li:has(.name:text-is('kept')) >> text=Copy");
    page.waitForSelector("#jobs .name:text-is('kept-copy')");
    page.waitForLoadState(LoadState.NETWORKIDLE);
    page.click("#jobs li:has(.name:text-is('kept-copy')) >> text=To the bin");
    page.waitForSelector("#bin li:has-text('kept-copy')", attached());
    page.click("#undo");
    page.waitForSelector("#jobs .name:text-is('kept-copy')");
  }

  private static Page.WaitForSelectorOptions attached() {
    return new Page.WaitForSelectorOptions()
        .setState(com.microsoft.playwright.options.WaitForSelectorState.ATTACHED);
  }

  @Test
  void couponsAreMadeAndTheirReadingsAreUsed() throws IOException {
    page.evaluate(
        "() => document.querySelectorAll('details.more').forEach((d) => (d.open = true))");
    page.fill("#printer", "right");
    page.selectOption("#material", "concrete");
    page.click("#coupons");
    page.waitForSelector("#keep", visible());
    checkAccess();
    page.selectOption("label:has-text('Gap 0.20') + select", "TIGHT");
    page.selectOption("label:has-text('Gap 0.25') + select", "GOOD");
    page.fill("label:has-text('Cast bar at 100') + input", "98.5");
    page.click("#keep");
    page.waitForSelector("#own:has-text('shrink 1.50 %')");
    assertTrue(page.textContent("#own").contains("gap of keys 0.25 mm"));
    bring("own-egg");
    page.selectOption("#material", "concrete");
    page.click("#make");
    proved();
    JsonNode mold = json("own-egg/job.json").at("/options/mold");
    assertEquals(0.25, mold.at("/clearance_mm").asDouble());
    assertEquals(1.5, mold.at("/shrink_percent/x").asDouble(), 1e-9);
  }

  @Test
  void caughtPlacesAreShownOnTheModel() throws IOException {
    Path knot = Cli.write(temp, "caught-knot.stl", Shapes.trefoil(9, 3, 72, 10));
    page.setInputFiles("#file", knot);
    page.waitForSelector(".good #v-model");
    page.click("#make");
    page.waitForSelector("#caught li", new Page.WaitForSelectorOptions().setTimeout(LONG));
    assertTrue(page.textContent("#caught").contains("mm deep"));
    page.waitForSelector("#colors:has-text('rigid pieces hold here')", visible());
    assertTrue(page.isDisabled("#place-gate"));
    checkAccess();
  }

  private void checkAccess() throws IOException {
    page.evaluate(Files.readString(Path.of("node_modules/axe-core/axe.min.js")));
    Object found =
        page.evaluate(
            "() => axe.run().then((r) => r.violations.map((v) => v.id + ' ' +"
                + " v.nodes.map((n) => n.target.join(' ')).join(', ')))");
    assertEquals(List.of(), found);
  }
}
