// Earlier molds: open, rename, copy, compare, throw away and put back.
import * as calls from "/calls.js";
import { $, button, element, number, verdict } from "/page.js";
import { steps } from "/fields.js";

let host = null;
let first = null;

function row(j) {
  const li = element("li", null);
  const refused = j.state === "refused";
  const picture = refused ? "pictures/caught.png" : "pictures/opened.png";
  const img = element("img", null, { src: calls.file(j.name, picture), alt: "", loading: "lazy" });
  const words = element("div", null, { className: "words" });
  const name = button(j.name, () => (refused ? host.refused(j.name) : host.reopen(j.name)), { className: "name" });
  const when = new Date(j.changed).toLocaleString();
  words.append(name, element("p", (refused ? "refused, " : "") + when, { className: "faint" }));
  const acts = element("div", null, { className: "row" });
  acts.append(
    labeled(button("Rename", () => rename(j.name, words)), `Rename ${j.name}`),
    labeled(button("Copy", async () => {
      await calls.copy(j.name, `${j.name}-copy`);
      await list();
    }), `Copy ${j.name}`),
  );
  if (!refused) {
    const chosen = first === j.name;
    acts.append(labeled(button(chosen ? "Compare: chosen" : first ? `Compare with ${first}` : "Compare", () => compare(j.name),
      { ariaPressed: String(chosen) }), `Compare ${j.name}`));
  }
  acts.append(labeled(button("To the bin", async () => {
    const { name: binned } = await calls.discard(j.name);
    steps(`${j.name} to the bin`, async () => {
      await calls.restore(binned);
      await list();
    });
    await list();
  }), `Move ${j.name} to the bin`));
  words.append(acts);
  li.append(img, words);
  return li;
}

// What is read aloud begins with the words that are seen.
function labeled(b, words) {
  b.setAttribute("aria-label", `${b.textContent}: ${words}`);
  return b;
}

function rename(name, words) {
  const input = element("input", null, { type: "text", value: name, maxLength: 48 });
  input.setAttribute("aria-label", `New name of ${name}`);
  const done = button("Use this name", async () => {
    const { name: now } = await calls.rename(name, input.value);
    steps(`the name ${now}`, async () => {
      await calls.rename(now, name);
      await list();
    });
    host.renamed(name, now);
    await list();
  });
  const line = element("div", null, { className: "row" });
  line.append(input, done);
  words.append(line);
  input.addEventListener("keydown", (e) => {
    if (e.key === "Enter") {
      e.preventDefault();
      done.click();
    }
  });
  input.focus();
  input.select();
}

async function compare(name) {
  if (first === null || first === name) {
    first = first === name ? null : name;
    await list();
    return;
  }
  const c = await calls.compare(first, name);
  first = null;
  const table = element("table", null);
  const head = element("tr", null);
  head.append(element("th", "", { scope: "col" }), element("th", c.a, { scope: "col" }), element("th", c.b, { scope: "col" }));
  head.firstChild.textContent = "What";
  table.append(head);
  const line = (what, a, b) => {
    const tr = element("tr", null, { className: a === b ? "" : "differs" });
    tr.append(element("th", what, { scope: "row" }), element("td", a), element("td", b));
    table.append(tr);
  };
  c.settings.forEach((s) => line(s.name, s.a, s.b));
  const value = (v) => (v === null ? "not known" : Number.isInteger(v) ? number(v, 0) : number(v, 2));
  c.numbers.forEach((n) => line(n.unit ? `${n.name}, ${n.unit}` : n.name, value(n.a), value(n.b)));
  const pictures = element("div", null, { className: "pair" });
  for (const side of [c.a, c.b]) {
    pictures.append(element("img", null, { src: calls.file(side, "pictures/opened.png"), alt: `${side}, opened` }));
  }
  host.leaf("Two molds side by side", [pictures, table]);
  await list();
}

export async function list() {
  const all = await calls.jobs();
  $("jobs").replaceChildren(...all.filter((j) => j.state === "done" || j.state === "refused").map(row));
  const broken = all.filter((j) => j.state === "interrupted").map((j) => j.name);
  verdict("jobs", broken.length ? `The program ended while ${broken.join(", ")} ran; make it again.` : "", broken.length ? "bad" : "");
  const bin = await calls.bin();
  $("thrown").hidden = bin.length === 0;
  $("bin").replaceChildren(
    ...bin.map(({ name }) => {
      const li = element("li", null);
      li.append(element("span", name, { className: "words" }), labeled(button("Put back", async () => {
        await calls.restore(name);
        await list();
      }), `Put ${name} back`));
      return li;
    }),
  );
  return all;
}

export function begin(page) {
  host = page;
}
