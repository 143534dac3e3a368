package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The page in a real browser: from a model to a mold and its sheet. */
class BrowserIT extends InBrowser {

  @Test
  void fromAModelToAProvedMoldAndItsSheet() throws IOException {
    assertFalse(page.url().contains("token"), "the token must not stay in sight");
    assertTrue(page.isDisabled("#make"), "nothing can be made without a model");
    bring("egg-one");
    assertTrue(page.textContent("#v-model").contains("48.0 × 34.0 × 22.0 mm"));
    page.selectOption("#material", "beeswax");
    assertTrue(page.textContent("#v-use").contains("68–71 °C"), page.textContent("#v-use"));
    page.click("#make");
    page.waitForSelector("#bar", visible());
    proved();
    assertTrue(page.textContent("#v-open").contains("2 pieces"));
    assertTrue(page.textContent("#v-pour").contains("1 gate"));
    assertTrue(page.textContent("#v-proof").matches("proved: all \\d+ checks passed"));
    Download sheet = page.waitForDownload(() -> page.click("#files a >> text=Job sheet"));
    String start = new String(Files.readAllBytes(sheet.path()), StandardCharsets.ISO_8859_1);
    assertTrue(start.startsWith("%PDF-"));
    Download zip = page.waitForDownload(() -> page.click("#files a >> text=Whole folder"));
    assertEquals("egg-one.zip", zip.suggestedFilename());
    opensInOrder();
    piecesCanBeHidden();
    page.selectOption("#block", "contour");
    assertTrue(page.isVisible(".step.old #v-proof"), "the old result is not said to be old");
    page.reload();
    proved();
    assertEquals("beeswax", page.inputValue("#material"));
    assertEquals("box", page.inputValue("#block"));
    assertTrue(page.isEnabled("#make"), "work cannot go on from an earlier job");
    assertTrue(page.textContent("#jobs").contains("egg-one"));
    theListEmptiesToTheBin();
  }

  private void opensInOrder() {
    assertEquals("closed", page.textContent("#step"));
    page.focus("#opening");
    page.keyboard().press("ArrowRight");
    assertEquals("1. piece-1 leaves", page.textContent("#step"));
    page.fill("#opening", "700");
    assertEquals("2. piece-2 leaves", page.textContent("#step"));
    page.focus("#opening");
    page.keyboard().press("End");
    assertEquals("open", page.textContent("#step"));
    page.focus("#view");
    byte[] before = page.locator("#view").screenshot();
    page.keyboard().press("ArrowLeft");
    page.waitForTimeout(500);
    assertFalse(Arrays.equals(before, page.locator("#view").screenshot()), "keys do not turn it");
  }

  private void piecesCanBeHidden() {
    page.waitForTimeout(300);
    byte[] before = page.locator("#view").screenshot();
    page.click("#legend button >> nth=0");
    assertTrue(page.textContent("#legend").contains("piece-1: see-through"));
    page.click("#legend button >> nth=0");
    assertTrue(page.textContent("#legend").contains("piece-1: hidden"));
    page.waitForTimeout(500);
    assertFalse(Arrays.equals(before, page.locator("#view").screenshot()), "nothing was hidden");
  }

  private void theListEmptiesToTheBin() {
    page.click("#jobs li:has-text('egg-one') >> text=To the bin");
    page.waitForSelector(
        "#jobs li:has-text('egg-one')",
        new Page.WaitForSelectorOptions().setState(WaitForSelectorState.DETACHED));
    assertTrue(Files.exists(temp.resolve("jobs/.bin/egg-one/report.json")));
  }

  @Test
  void aJobIsCancelledAndASecondTabSeesIt() throws IOException {
    bring("egg-two");
    page.click("#make");
    page.waitForSelector("#cancel", visible());
    Page other = tab();
    other.waitForSelector("#cancel", visible());
    other.click("#cancel");
    page.waitForSelector("#v-proof:has-text('Cancelled')");
    assertFalse(Files.exists(temp.resolve("jobs/egg-two")));
    assertTrue(page.isEnabled("#make"));
  }

  @Test
  void whatIsNoModelIsSaidSo() throws IOException {
    Path junk = Files.writeString(temp.resolve("junk.stl"), "no model");
    page.setInputFiles("#file", junk);
    page.waitForSelector(".bad #v-model");
    assertTrue(page.textContent("#v-model").contains("junk.stl"));
    // the browser reports the refused call by itself
    complaints.removeIf(c -> c.contains("422"));
  }

  /** Rules of axe-core, which follow WCAG 2.1 A and AA, light and dark. */
  @Test
  void anAccessibilityCheckerFindsNothing() throws IOException {
    String axe = Files.readString(Path.of("node_modules/axe-core/axe.min.js"));
    page.evaluate(axe);
    for (int i = 0; i < 2; i++) {
      Object found =
          page.evaluate(
              "() => axe.run().then((r) => r.violations.map((v) => v.id + ' ' +"
                  + " v.nodes.map((n) => n.target.join(' ')).join(', ')))");
      assertEquals(List.of(), found);
      page.click("#theme");
    }
  }

  /** At 1280 × 720 all six steps are in sight at once before anything is made. */
  @Test
  void allStepsAreInSight() {
    Object bottom =
        page.evaluate(
            "() => document.querySelector('[aria-labelledby=h-print]').getBoundingClientRect().bottom");
    assertTrue(((Number) bottom).doubleValue() <= 720, "step 6 ends at " + bottom);
    Object wide = page.evaluate("() => document.documentElement.scrollWidth <= window.innerWidth");
    assertEquals(true, wide);
  }
}
