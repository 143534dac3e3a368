// Measures for bench/paint: what a person waits for when the bench is opened for the first time.
import { spawn } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { loadavg } from "node:os";
import { basename, join, resolve } from "node:path";
import { chromium } from "../app/node_modules/playwright-core/index.mjs";

const [executablePath, work, runs, ...checkouts] = process.argv.slice(2);
const COLUMNS = [
  "server up", "page here", "scripts ran", "first paint", "sample answers", "model read", "view there",
];
const NO_GRAPHICS_CHIP = [
  "--no-sandbox", "--enable-unsafe-swiftshader", "--use-gl=angle", "--use-angle=swiftshader",
];

// Looked at before the first click, ms.
const LOOK = 1000;

// Runs in the page before all else: marks when something is there for the first time.
function watch() {
  const once = (name, selector) =>
    new MutationObserver((_, self) => {
      if (document.querySelector(selector)) {
        self.disconnect();
        performance.mark(name);
      }
    }).observe(document, { childList: true, subtree: true, attributes: true });
  once("samples", "#samples button");
  once("read", ".good > #v-model");
  once("view", "#hands:not([hidden])");
  document.addEventListener("click", () => performance.mark("click"), { capture: true, once: true });
}

// The times of a page on which a sample was taken; those after the click count from it.
function times() {
  const [page] = performance.getEntriesByType("navigation");
  const at = (name) => performance.getEntriesByName(name)[0].startTime;
  const paint = at("first-contentful-paint");
  const ran = page.domContentLoadedEventEnd;
  const usable = Math.max(paint, ran, at("samples"));
  return [page.responseEnd, ran, paint, usable, at("read") - at("click"), at("view") - at("click")];
}

async function address(server) {
  let words = "";
  for await (const part of server.stdout) {
    words += part;
    const found = words.match(/http:\S+/);
    if (found) {
      return found[0];
    }
  }
  throw new Error(`no address in: ${words}`);
}

async function once(checkout) {
  const begin = performance.now();
  const folder = mkdtempSync(join(work, "jobs-"));
  const server = spawn(resolve(checkout, "castwright"), ["serve", "--folder", folder], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  try {
    const place = await address(server);
    const up = performance.now() - begin;
    const browser = await chromium.launch({ executablePath, args: NO_GRAPHICS_CHIP });
    const page = await browser.newPage({ viewport: { width: 1280, height: 720 } });
    await page.addInitScript(watch);
    await page.goto(place);
    await page.waitForSelector("#samples button");
    await page.waitForTimeout(LOOK);
    await page.click("#samples button");
    await page.waitForSelector("#hands");
    const row = [up, ...(await page.evaluate(times))];
    await browser.close();
    return row;
  } finally {
    server.kill();
  }
}

const load = () => loadavg()[0].toFixed(1);
const line = (cells) => console.log(`| ${cells.join(" | ")} |`);
const median = (all) => {
  const s = [...all].sort((a, b) => a - b);
  return (s[(s.length - 1) >> 1] + s[s.length >> 1]) / 2;
};

line(["checkout", ...COLUMNS, "load"]);
console.log(`|${"---|".repeat(COLUMNS.length + 2)}`);
const rows = new Map(checkouts.map((c) => [c, []]));
for (let i = 0; i < Number(runs); i++) {
  for (const [checkout, all] of rows) {
    const row = await once(checkout);
    all.push(row);
    line([basename(resolve(checkout)), ...row.map(Math.round), load()]);
  }
}
for (const [checkout, all] of rows) {
  const middle = COLUMNS.map((_, k) => Math.round(median(all.map((row) => row[k]))));
  line([`${basename(resolve(checkout))}, median`, ...middle, ""]);
}
