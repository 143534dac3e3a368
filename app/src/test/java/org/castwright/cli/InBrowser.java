package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.castwright.web.Bench;
import org.castwright.web.Limits;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/**
 * A bench and a page of it in a real browser: Chromium, driven by Playwright. Skipped where there
 * is none; {@code CHROMIUM} names one that is not on the path.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class InBrowser {

  /** A job may take so long on a busy machine, ms. */
  static final double LONG = 300_000;

  Path temp;
  Playwright playwright;
  Browser browser;
  Bench bench;
  BrowserContext context;
  Page page;
  final List<String> complaints = Collections.synchronizedList(new ArrayList<>());

  @BeforeAll
  void launch(@TempDir Path dir) throws IOException {
    temp = dir;
    Path chromium = find("chromium", System.getenv("CHROMIUM"));
    Path node = find("node", null);
    Path core = Path.of("node_modules/playwright-core").toAbsolutePath();
    Assumptions.assumeTrue(chromium != null, "no Chromium");
    Assumptions.assumeTrue(node != null && Files.isDirectory(core), "no Node part of Playwright");
    // one for all tests of a run: Playwright looks only once where it is
    Path driver = Files.createDirectories(Path.of("target/driver").toAbsolutePath());
    link(driver.resolve("node"), node);
    link(driver.resolve("package"), core);
    System.setProperty("playwright.cli.dir", driver.toString());
    playwright =
        Playwright.create(
            new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    browser =
        playwright
            .chromium()
            .launch(
                new BrowserType.LaunchOptions()
                    .setExecutablePath(chromium)
                    .setArgs(
                        List.of(
                            "--no-sandbox",
                            "--enable-unsafe-swiftshader",
                            "--use-gl=angle",
                            "--use-angle=swiftshader")));
    bench = Bench.start(temp.resolve("jobs"), 0, ServeCommand.maker(2), Limits.DEFAULT, 2);
  }

  private static void link(Path at, Path to) throws IOException {
    if (!Files.isSymbolicLink(at)) {
      Files.createSymbolicLink(at, to);
    }
  }

  static Path find(String program, String wanted) {
    if (wanted != null) {
      return Path.of(wanted);
    }
    return Arrays.stream(System.getenv("PATH").split(":"))
        .map(d -> Path.of(d, program))
        .filter(Files::isExecutable)
        .findFirst()
        .orElse(null);
  }

  @AfterAll
  void end() {
    if (bench != null) {
      bench.close();
    }
    if (playwright != null) {
      playwright.close();
    }
  }

  @BeforeEach
  void open() {
    complaints.clear();
    context = browser.newContext(new Browser.NewContextOptions().setViewportSize(1280, 720));
    context.setDefaultTimeout(60_000);
    page = tab();
  }

  @AfterEach
  void close() {
    context.close();
    assertEquals(List.of(), complaints);
  }

  Page tab() {
    Page p = context.newPage();
    p.onPageError(complaints::add);
    p.onConsoleMessage(
        m -> {
          if (m.type().equals("error")) {
            complaints.add(m.text());
          }
        });
    String own = "http://127.0.0.1:" + bench.port() + "/";
    p.onRequest(
        r -> {
          if (!r.url().startsWith(own) && !r.url().startsWith("blob:" + own)) {
            complaints.add("asked elsewhere: " + r.url());
          }
        });
    p.navigate(bench.address());
    p.waitForSelector("#samples button");
    return p;
  }

  void bring(String name) throws IOException {
    Path egg = Cli.egg(Files.createDirectories(temp.resolve(name)));
    Path named = Files.move(egg, egg.resolveSibling(name + ".stl"));
    page.setInputFiles("#file", named);
    page.waitForSelector(".good #v-model");
  }

  void proved() {
    page.waitForSelector(".good #v-proof", new Page.WaitForSelectorOptions().setTimeout(LONG));
    page.waitForSelector("#controls", visible());
  }

  static Page.WaitForSelectorOptions visible() {
    return new Page.WaitForSelectorOptions().setState(WaitForSelectorState.VISIBLE);
  }
}
