// The page: the steps on the left, the mold on the right.
import * as calls from "/calls.js";
import * as brush from "/brush.js";
import * as fields from "/fields.js";
import * as frame from "/frame.js";
import * as printer from "/printer.js";
import { withPull } from "/pulls.js";
import * as shelf from "/shelf.js";
import * as trial from "/trial.js";
import { $, button, element, number, press, tell, verdict } from "/page.js";

const POLL = 350;

let view = null;
let tools = null;
let hands = null;
let model = null;
let running = null;
let shown = null;
let report = null;
let ordered = null;
let turned = null;

// What draws the view is large: it is fetched after the first paint.
const drawing = () => Promise.all([import("/view.js"), import("/tools.js"), import("/hands.js")]);

// Shows something in the view. Without 3D drawing in the browser all else still works.
async function display(load) {
  try {
    if (!view) {
      const [{ View }, { Tools }, { Hands }] = await drawing();
      view = new View($("view"));
      tools = new Tools(view);
      hands = new Hands(view, tools, {
        placed,
        side: () => fields.side(model),
        measured: trial.wanted,
        caughtAddress: () => calls.file(shown, "caught.glb"),
      });
    }
    await load(view);
    $("hint").hidden = true;
    $("hands").hidden = false;
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
    model.longest = Math.max(...model.size_mm);
    const size = model.size_mm.map((s) => number(s)).join(" × ");
    $("v-model").title = model.model;
    verdict("model", `${size} ${model.units ?? "mm"}, ${number(model.triangles, 0)} triangles`, "good");
    known();
    $("make").disabled = running !== null;
    fields.openings.gate = null;
    fields.openings.vents = [];
    fields.wishes.all = [];
    fields.remember();
    changed();
    await showModel();
  } catch (e) {
    verdict("model", e.message, "bad");
  }
}

// The unit that the file states goes before the field's.
function known() {
  $("stated").hidden = !model.units;
  $("stated").textContent = model.units ? `The file itself states ${model.units}, which holds.` : "";
}

async function showModel() {
  $("controls").hidden = true;
  $("colors").hidden = true;
  const up = $("up").value;
  turned = up;
  await display(async (v) => {
    await v.model(calls.modelView(model.model), model.model, frame.rows(up));
    hands.onModel(
      (p) => frame.toModel(up, p).map((c) => c / model.longest),
      (s) => frame.toFile(up, s).map((c) => c * model.longest),
    );
    hands.openings();
  });
}

function useVerdict() {
  const [material] = $("material").selectedOptions;
  if (material) {
    verdict("use", material.dataset.use);
    $("v-use").title = material.title;
  }
}

// What was made stays in sight, but it is said that it is not what the fields say.
function changed() {
  useVerdict();
  placing();
  brush.list(fields.side(model));
  if (model?.triangles && turned !== null && turned !== $("up").value) {
    showModel();
  }
  if (shown) {
    for (const s of ["open", "pour", "proof", "print"]) {
      $(`v-${s}`).closest(".step").classList.add("old");
    }
  }
}

// Says what was placed by hand.
function placing() {
  const words = fields.placedWords();
  if ($("placed").dataset.words === words) {
    hands?.openings();
    return;
  }
  $("placed").dataset.words = words;
  $("placed").replaceChildren(words ? `${words}. ` : "");
  if (words) {
    $("placed").append(button("Back to the rule", () => {
      fields.openings.gate = null;
      fields.openings.vents = [];
      fields.remember();
    }, { id: "by-rule" }));
  }
  hands?.openings();
}

// A place was pointed at for a gate or a vent, as shares of the model's longest side.
function placed(kind, share) {
  if (kind === "gate") {
    fields.openings.gate = share;
  } else {
    fields.openings.vents.push(share);
  }
  fields.remember();
  tell(kind === "gate" ? "Gate placed; the next mold has it there." : "Vent placed; the next mold has it there.");
}

async function make(e) {
  e.preventDefault();
  if (!model || running) {
    return;
  }
  try {
    const asked = fields.wish(model);
    const job = await calls.order(asked);
    ordered = JSON.stringify(asked);
    turned = asked.up;
    follow(job.name);
  } catch (problem) {
    verdict("proof", problem.message, "bad");
  }
}

// What the fields ask for now; nothing if they cannot be read.
function asking() {
  try {
    return JSON.stringify(fields.wish(model));
  } catch {
    return "";
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
  $("caught").replaceChildren();
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
      const own = ordered !== null;
      const after = own && model && ordered !== asking();
      await reopen(name, !own);
      if (after) {
        changed();
      }
    } else {
      verdict("proof", job.words, job.state === "cancelled" ? "" : "bad");
      if (job.state === "refused") {
        await refused(name);
      }
    }
    break;
  }
  ordered = null;
  running = null;
  busy(false);
  shelf.list();
}

// Why a model cannot be molded as asked, with the caught places on it.
async function refused(name) {
  verdict("open", "Rigid pieces do not open it as asked.", "bad");
  const why = await calls.refusal(name);
  verdict("proof", why.refused, "bad");
  const at = (c) => c.center.map((v) => number(v)).join(", ");
  $("caught").replaceChildren(
    ...why.survey.caught.map((c) =>
      element("li", `caught near ${at(c)}: ${number(c.area_mm2, 0)} mm², ${number(c.depth_mm, 2)} mm deep, ${number(c.width_mm, 2)} mm wide`)),
  );
  $("controls").hidden = true;
  await display(async (v) => {
    await v.model(calls.file(name, "caught.glb"), name, frame.rows("z"));
    hands.off();
    hands.caughtScale();
  });
}

async function reopen(name, restoring = true) {
  try {
    await show(name, restoring ? await calls.jobFile(name) : null);
  } catch (e) {
    verdict("proof", e.message, "bad");
  }
}

async function restore(job) {
  const name = job.model.split(/[\\/]/).pop();
  const longest = Math.max(...report.input.size_mm);
  if (!model || model.model !== name) {
    try {
      model = await calls.model(name);
      model.longest = Math.max(...model.size_mm);
    } catch {
      // it was brought from elsewhere: as large as it was made
      model = { model: name, units: "mm", longest: longest / job.options.model.scale };
    }
    verdict("model", name, "good");
  }
  known();
  turned = null;
  fields.restore(job, longest);
  turned = $("up").value;
  for (const s of ["open", "pour", "proof", "print"]) {
    $(`v-${s}`).closest(".step").classList.remove("old");
  }
  useVerdict();
  printer.changed();
  $("make").disabled = running !== null;
}

// Shows a finished job, and puts its options into the fields if they are given.
async function show(name, job) {
  report = await calls.report(name);
  shown = name;
  history.replaceState(null, "", `#${name}`);
  const n = report.pieces.length;
  const filled = report.blocked_out;
  verdict(
    "open",
    `${n} pieces, seam ${report.parting.flat ? "flat" : "not flat"}` +
      (filled ? `; undercuts filled, ${number(filled.added_mm3, 0)} mm³ added` : ""),
    "good",
  );
  $("caught").replaceChildren(
    ...(filled?.places ?? []).map((f) =>
      element("li", `filled near ${f.center.map((v) => number(v)).join(", ")}: ${number(f.volume_mm3)} mm³, ${number(f.height_mm)} mm high`)),
  );
  const p = report.pour;
  verdict(
    "pour",
    `${number(p.volume_to_pour_mm3 / 1000)} cm³, ${number(p.mass_to_pour_kg * 1000)} g; ` +
      `${p.gates} gate${p.gate?.at === "bottom" ? " from below" : ""}, ${p.vents} ${p.vents === 1 ? "vent" : "vents"}`,
    p.gates > 0 ? "good" : "bad",
  );
  $("v-pour").title = p.gate?.why ?? "";
  const failed = report.proof.checks.filter((c) => !c.passed);
  const all = report.proof.checks.length;
  verdict(
    "proof",
    failed.length ? `NOT proved: ${failed.length} of ${all} checks failed` : `proved: all ${all} checks passed`,
    failed.length ? "bad" : "good",
  );
  $("failed").replaceChildren(...failed.map((c) => element("li", `${c.name}: ${c.words}`)));
  files(name);
  if (job) {
    await restore(job);
  }
  unleaf();
  if (await display((v) => v.mold(calls.jobView(name), report, name))) {
    $("controls").hidden = false;
    hands.onMold(report);
    hands.openings();
  }
  await trial.shown(name);
}

function files(name) {
  const entries = [
    ["sheet.pdf", "Job sheet", calls.file(name, "sheet.pdf")],
    ...report.pieces.map((p) => [p.print_file, `Print ${p.name}`, calls.file(name, p.print_file)]),
    ["mold.3mf", "All pieces, 3MF", calls.file(name, "mold.3mf")],
    ["mold.glb", "To look at, GLB", calls.file(name, "mold.glb")],
    [`${name}.zip`, "Whole folder", calls.zip(name)],
  ];
  const hours = report.pouring.bench.print.reduce((sum, p) => sum + p.hours, 0);
  verdict("print", `${report.pieces.length} print files and the sheet; printing about ${number(hours)} h`, "good");
  $("read").hidden = false;
  $("files").replaceChildren(
    ...entries.map(([file, words, address]) => {
      const li = element("li", null);
      li.append(element("a", words, { href: address, title: file, download: file.replaceAll("/", "-") }));
      return li;
    }),
  );
}

// A leaf over the view: the sheet, or two molds side by side.
function leaf(title, parts, print) {
  const head = element("div", null, { className: "row leaf-head" });
  const back = button("Back to the mold", unleaf, { id: "back" });
  head.append(element("h2", title), back);
  if (print) {
    head.append(button("Print this sheet", () => window.print(), { id: "print" }));
  }
  $("paper-view").replaceChildren(head, ...parts);
  $("paper-view").hidden = false;
  back.focus();
}

function unleaf() {
  $("paper-view").hidden = true;
}

async function read() {
  const words = await calls.text(shown, "sheet.txt");
  const pictures = element("div", null, { className: "pair" });
  for (const [file, alt] of [["closed", "the closed mold"], ["opened", "the opened mold"]]) {
    pictures.append(element("img", null, { src: calls.file(shown, `pictures/${file}.png`), alt }));
  }
  leaf(`Job sheet: ${shown}`, [pictures, element("pre", words, { tabIndex: 0 })], true);
}

function theme(dark) {
  document.documentElement.dataset.theme = dark ? "dark" : "light";
  $("theme").setAttribute("aria-pressed", String(dark));
}

function wire() {
  $("steps").addEventListener("submit", make);
  $("cancel").addEventListener("click", () => running && calls.cancel(running));
  $("toward").addEventListener("click", () => {
    $("pulls").value = withPull($("pulls").value, parseInt($("toward-piece").value, 10), hands.toward());
    fields.remember();
  });
  $("read").addEventListener("click", () => read().catch((e) => tell(e.message)));
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
  // another tab may have changed what there is
  window.addEventListener("focus", () => shelf.list().catch((e) => tell(e.message)));
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
  fields.watch(changed);
  useVerdict();
  for (const sample of $("samples").children) {
    press(sample, () => {
      $("material").value = sample.dataset.material;
      useVerdict();
      return take(calls.sample(sample.value), `Taking ${sample.textContent}.`);
    });
  }
  trial.begin({
    point: (words, found) => hands?.point(words, found),
    marks: (places) => hands?.marks(places),
    follow,
    readingsChanged: printer.changed,
  });
  shelf.begin({
    reopen,
    refused: (name) => refused(name),
    leaf: (title, parts) => leaf(title, parts),
    renamed: (from, to) => {
      if (shown === from) {
        reopen(to, false);
      }
    },
  });
  const [all] = await Promise.all([shelf.list(), printer.begin()]);
  const asked = decodeURIComponent(location.hash.slice(1));
  const working = all.find((j) => j.state === "waiting" || j.state === "running");
  if (working) {
    follow(working.name);
  } else if (all.some((j) => j.name === asked && j.state === "done")) {
    reopen(asked);
  }
}

// what goes wrong here is said when there is something to show
new PerformanceObserver(() => drawing().catch(() => {})).observe({ type: "paint", buffered: true });
begin().catch((e) => verdict("model", e.message, "bad"));
