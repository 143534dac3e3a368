// The page: six steps on the left, the mold on the right.
import * as calls from "/calls.js";

const POLL = 350;
const $ = (id) => document.getElementById(id);
const number = (v, digits = 1) =>
  v.toLocaleString("en-US", { minimumFractionDigits: digits, maximumFractionDigits: digits });

let view = null;
let model = null;
let materials = [];
let running = null;
let shown = null;
let ordered = null;

function verdict(step, words, kind = "") {
  const p = $(`v-${step}`);
  p.textContent = words;
  p.closest(".step").classList.remove("good", "bad", "busy", "old");
  if (kind) {
    p.closest(".step").classList.add(kind);
  }
}

const element = (tag, text, more = {}) =>
  Object.assign(document.createElement(tag), text === null ? {} : { textContent: text }, more);

// Shows something in the view, which comes after the first paint: its library is large. Without
// 3D drawing in the browser all else still works.
async function display(load) {
  try {
    if (!view) {
      const { View } = await import("/view.js");
      view = new View($("view"));
    }
    await load(view);
    $("hint").hidden = true;
    return true;
  } catch (e) {
    $("hint").textContent = `The 3D view cannot show this: ${e.message}`;
    $("hint").hidden = false;
    return false;
  }
}

async function take(promise, words) {
  verdict("model", words, "busy");
  try {
    model = await promise;
    const size = model.size_mm.map((s) => number(s)).join(" × ");
    $("v-model").title = model.model;
    verdict("model", `${size} mm, ${number(model.triangles, 0)} triangles`, "good");
    $("make").disabled = running !== null;
    changed();
    $("controls").hidden = true;
    await display((v) => v.model(calls.modelView(model.model), model.model));
  } catch (e) {
    verdict("model", e.message, "bad");
  }
}

function useVerdict() {
  const m = materials.find((x) => x.id === $("material").value);
  if (m) {
    const pour = m.pour_c.map((t) => number(t, 0)).join("–");
    verdict("use", `shrinks ${number(m.shrink_percent, 2)} %, poured at ${pour} °C`);
    $("v-use").title = `Shrink: ${m.shrink_source}. ${m.notes}`;
  }
}

// What was made stays in sight, but it is said that it is not what the fields say.
function changed() {
  if (shown) {
    for (const s of ["open", "pour", "proof", "print"]) {
      $(`v-${s}`).closest(".step").classList.add("old");
    }
  }
}

function wish() {
  const size = parseFloat($("size").value);
  return {
    model: model.model,
    material: $("material").value,
    size_mm: Number.isFinite(size) ? size : 0,
    process: $("process").value,
    pieces: parseInt($("pieces").value, 10),
    block: $("block").value,
    closing: $("closing").value,
    pour: $("pour").value,
    paper: $("paper").value,
    sheet_units: $("sheet_units").value,
  };
}

async function make(e) {
  e.preventDefault();
  if (!model || running) {
    return;
  }
  try {
    const asked = wish();
    const job = await calls.order(asked);
    ordered = JSON.stringify(asked);
    follow(job.name);
  } catch (problem) {
    verdict("proof", problem.message, "bad");
  }
}

function busy(on) {
  $("make").disabled = on || !model;
  $("cancel").hidden = !on;
  $("run").hidden = !on;
}

// Watches a job until it is over.
async function follow(name) {
  running = name;
  busy(true);
  $("failed").replaceChildren();
  for (;;) {
    let job;
    try {
      job = await calls.job(name);
    } catch (e) {
      verdict("proof", e.message, "bad");
      break;
    }
    if (job.state === "waiting" || job.state === "running") {
      verdict("proof", job.state === "waiting" ? "waiting in line" : "working", "busy");
      $("bar").value = job.share;
      $("stage").textContent = `${job.stage}, ${number(job.seconds)} s`;
      await new Promise((r) => setTimeout(r, POLL));
      continue;
    }
    if (job.state === "proved" || job.state === "unproved") {
      await reopen(name, false);
      if (ordered && ordered !== JSON.stringify(wish())) {
        changed();
      }
    } else {
      verdict("proof", job.words, job.state === "cancelled" ? "" : "bad");
      if (job.state === "refused") {
        verdict("open", "Rigid pieces do not open it as asked.", "bad");
      }
    }
    break;
  }
  running = null;
  busy(false);
  list();
}

async function reopen(name, fields = true) {
  try {
    await show(name);
    if (fields) {
      restore(await calls.jobFile(name));
    }
  } catch (e) {
    verdict("proof", e.message, "bad");
  }
}

// Puts the options of an earlier job back into the fields, so that work can go on from there.
function restore(job) {
  const { model: taking, mold } = job.options;
  $("material").value = mold.material;
  $("size").value = taking.size_mm > 0 ? taking.size_mm : "";
  $("pieces").value = mold.pieces;
  for (const field of ["process", "block", "closing", "pour"]) {
    $(field).value = mold[field].toLowerCase();
  }
  useVerdict();
  const name = job.model.split(/[\\/]/).pop();
  if (!model || model.model !== name) {
    model = { model: name };
    verdict("model", name, "good");
  }
  $("make").disabled = running !== null;
}

// Shows a finished job.
async function show(name) {
  const report = await calls.report(name);
  shown = name;
  history.replaceState(null, "", `#${name}`);
  const n = report.pieces.length;
  verdict("open", `${n} pieces, seam ${report.parting.flat ? "flat" : "not flat"}`, "good");
  const p = report.pour;
  verdict(
    "pour",
    `${number(p.volume_to_pour_mm3 / 1000)} cm³, ${number(p.mass_to_pour_kg * 1000)} g; ` +
      `${p.gates} gate, ${p.vents} ${p.vents === 1 ? "vent" : "vents"}`,
    p.gates > 0 ? "good" : "bad",
  );
  const failed = report.proof.checks.filter((c) => !c.passed);
  const all = report.proof.checks.length;
  verdict(
    "proof",
    failed.length ? `NOT proved: ${failed.length} of ${all} checks failed` : `proved: all ${all} checks passed`,
    failed.length ? "bad" : "good",
  );
  $("failed").replaceChildren(...failed.map((c) => element("li", `${c.name}: ${c.words}`)));
  files(name, report);
  if (await display((v) => v.mold(calls.file(name, "mold.glb"), report, name))) {
    $("controls").hidden = false;
    $("opening").value = 0;
    open();
    legend(report);
  }
}

function files(name, report) {
  const entries = [
    ["sheet.pdf", "Job sheet", calls.file(name, "sheet.pdf")],
    ...report.pieces.map((p) => [p.print_file, `Print ${p.name}`, calls.file(name, p.print_file)]),
    ["mold.3mf", "All pieces, 3MF", calls.file(name, "mold.3mf")],
    ["mold.glb", "To look at, GLB", calls.file(name, "mold.glb")],
    [`${name}.zip`, "Whole folder", calls.zip(name)],
  ];
  verdict("print", `${report.pieces.length} print files and the sheet`, "good");
  $("files").replaceChildren(
    ...entries.map(([file, words, address]) => {
      const li = element("li", null);
      li.append(element("a", words, { href: address, title: file, download: file.replaceAll("/", "-") }));
      return li;
    }),
  );
}

function open() {
  const share = $("opening").value / 1000;
  const moving = view?.open(share);
  const words = !moving ? "closed" : share === 1 ? "open" : `${moving.order}. ${moving.name} leaves`;
  $("step").textContent = words;
  $("opening").setAttribute("aria-valuetext", words);
}

const NEXT = { shown: "see-through", "see-through": "hidden", hidden: "shown" };

function legend(report) {
  const bodies = report.pieces.map((p, i) => [p.name, `c${i % 6}`]);
  bodies.push(["casting", "casting"]);
  const buttons = bodies.map(([name, color]) => {
    const swatch = element("span", null, { className: `swatch ${color}` });
    const words = element("span", "");
    const b = element("button", null, { type: "button" });
    b.append(swatch, words);
    const set = (how) => {
      b.dataset.how = how;
      words.textContent = how === "shown" ? name : `${name}: ${how}`;
      swatch.classList.toggle("faded", how === "see-through");
      swatch.classList.toggle("off", how === "hidden");
      view.show(name, how);
    };
    b.addEventListener("click", () => set(NEXT[b.dataset.how]));
    set("shown");
    return b;
  });
  for (const kind of ["gate", "vent"]) {
    if (report.channels.some((c) => c.kind === kind)) {
      const mark = element("span", null, { className: "row" });
      mark.append(element("span", null, { className: `swatch ${kind}` }), element("span", kind));
      buttons.push(mark);
    }
  }
  $("legend").replaceChildren(...buttons);
}

async function list() {
  const all = await calls.jobs();
  $("jobs").replaceChildren(
    ...all
      .filter((j) => j.state === "done" || j.state === "refused")
      .map((j) => {
        const li = element("li", null);
        const picture = j.state === "refused" ? "pictures/caught.png" : "pictures/opened.png";
        const img = element("img", null, { src: calls.file(j.name, picture), alt: "", loading: "lazy" });
        const words = element("div", null, { className: "words" });
        const name = element("button", j.name, { type: "button", disabled: j.state === "refused" });
        name.addEventListener("click", () => reopen(j.name));
        const when = new Date(j.changed).toLocaleString();
        const state = j.state === "refused" ? "refused, " : "";
        words.append(name, element("p", state + when, { className: "faint" }));
        const away = element("button", "To the bin", { type: "button" });
        away.setAttribute("aria-label", `Move ${j.name} to the bin`);
        away.addEventListener("click", async () => {
          try {
            await calls.discard(j.name);
          } catch (e) {
            away.textContent = e.message;
            return;
          }
          list();
        });
        li.append(img, words, away);
        return li;
      }),
  );
  return all;
}

function theme(dark) {
  document.documentElement.dataset.theme = dark ? "dark" : "light";
  $("theme").setAttribute("aria-pressed", String(dark));
}

function wire() {
  $("steps").addEventListener("submit", make);
  $("steps").addEventListener("change", changed);
  $("material").addEventListener("change", useVerdict);
  $("cancel").addEventListener("click", () => running && calls.cancel(running));
  $("opening").addEventListener("input", open);
  $("file").addEventListener("change", (e) => {
    const file = e.target.files[0];
    if (file) {
      take(calls.bring(file), `Reading ${file.name}.`);
    }
  });
  const drop = $("drop");
  for (const kind of ["dragover", "dragleave", "drop"]) {
    document.addEventListener(kind, (e) => {
      e.preventDefault();
      drop.classList.toggle("over", kind === "dragover");
      const file = kind === "drop" && e.dataTransfer.files[0];
      if (file) {
        take(calls.bring(file), `Reading ${file.name}.`);
      }
    });
  }
  const kept = localStorage.getItem("theme");
  theme(kept ? kept === "dark" : matchMedia("(prefers-color-scheme: dark)").matches);
  $("theme").addEventListener("click", () => {
    const dark = document.documentElement.dataset.theme !== "dark";
    theme(dark);
    localStorage.setItem("theme", dark ? "dark" : "light");
  });
}

async function begin() {
  wire();
  const [about, stuff, samples] = await Promise.all([calls.version(), calls.materials(), calls.samples()]);
  $("folder").textContent = `Molds are kept in ${about.folder}`;
  materials = stuff;
  $("material").append(...stuff.map((m) => element("option", m.name, { value: m.id })));
  useVerdict();
  $("samples").append(
    ...samples.map((s) => {
      const b = element("button", s.title, { type: "button" });
      b.addEventListener("click", () => {
        $("material").value = s.material;
        useVerdict();
        take(calls.sample(s.sample), `Taking ${s.title}.`);
      });
      return b;
    }),
  );
  const all = await list();
  const asked = decodeURIComponent(location.hash.slice(1));
  const working = all.find((j) => j.state === "waiting" || j.state === "running");
  if (working) {
    follow(working.name);
  } else if (all.some((j) => j.name === asked && j.state === "done")) {
    reopen(asked);
  }
}

begin().catch((e) => verdict("model", e.message, "bad"));
