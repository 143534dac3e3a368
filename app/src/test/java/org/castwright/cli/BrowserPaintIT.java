package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What the first paint holds and what it waits for; how long it takes is measured by bench/paint.
 */
class BrowserPaintIT extends InBrowser {

  private BrowserContext withoutScripts() {
    return browser.newContext(
        new Browser.NewContextOptions().setViewportSize(1280, 720).setJavaScriptEnabled(false));
  }

  /** Headings, samples, drop area and all choices are painted before any script has run. */
  @Test
  void theFirstScreenNeedsNoScript() {
    try (BrowserContext still = withoutScripts()) {
      Page p = still.newPage();
      p.navigate(bench.address());
      assertEquals(
          List.of("Shell soap", "Resting bird", "Medallion"),
          p.locator("#samples button").allTextContents());
      for (String seen : List.of("#h-model", "#drop", "#file", "#material", "#h-print", "#hint")) {
        assertTrue(p.isVisible(seen), seen);
      }
      assertTrue(p.locator("#material option").count() > 10);
      assertTrue(p.textContent("#v-use").startsWith("shrinks "), p.textContent("#v-use"));
      assertTrue(p.textContent("#folder").endsWith("jobs"), p.textContent("#folder"));
    }
  }

  /** Nothing moves when the scripts have run: no step is elsewhere than where it was painted. */
  @Test
  void nothingMovesAfterTheFirstPaint() {
    Page.WaitForSelectorOptions there =
        new Page.WaitForSelectorOptions().setState(WaitForSelectorState.ATTACHED);
    page.waitForSelector("#coupons", there);
    try (BrowserContext still = withoutScripts()) {
      Page p = still.newPage();
      p.navigate(bench.address());
      for (String step : List.of("h-model", "h-use", "h-open", "h-pour", "h-proof", "h-print")) {
        double painted = p.locator("#" + step).boundingBox().y;
        assertEquals(painted, page.locator("#" + step).boundingBox().y, step);
      }
    }
  }

  /** What draws the view is asked for after the first paint, and draws when there is something. */
  @Test
  void theViewComesAfterTheFirstPaint() {
    // asked again and again from here: the page's own rules let no text be run as code in it
    String asked =
        "() => performance.getEntriesByType('resource')"
            + ".filter((r) => r.name.includes('/three/')).map((r) => r.startTime)";
    List<?> starts = List.of();
    for (int i = 0; starts.isEmpty() && i < 500; i++) {
      page.waitForTimeout(20);
      starts = (List<?>) page.evaluate(asked);
    }
    String paint = "() => performance.getEntriesByName('first-contentful-paint')[0].startTime";
    double painted = ((Number) page.evaluate(paint)).doubleValue();
    assertFalse(starts.isEmpty(), "the view's library was never asked for");
    for (Object start : starts) {
      assertTrue(((Number) start).doubleValue() >= painted, start + " is before " + painted);
    }
    assertEquals(0, page.locator("#view canvas").count());
  }

  /** A sample is taken though no other call was answered yet. */
  @Test
  void aSampleAnswersAtOnce() {
    page.route("**/api/{jobs,bin,calibration}", held -> {});
    page.reload();
    page.click("#samples button >> text=Medallion");
    page.waitForSelector(".good #v-model");
    page.waitForSelector("#hands", visible());
    assertEquals("chocolate-dark", page.inputValue("#material"));
  }
}
