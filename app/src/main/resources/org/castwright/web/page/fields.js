// What the fields say, and taking back.
import { $, number } from "/page.js";
import * as frame from "/frame.js";
import * as pulls from "/pulls.js";

const CHOICES = [
  "material", "process", "pieces", "block", "closing", "keys", "pour", "gate_end", "paper", "sheet_units", "units", "up", "heal",
];
const NUMBERS = [
  "size_mm", "scale", "remesh_cell_mm", "shrink_percent", "mold_strain_percent", "wall_mm", "clearance_mm", "key_count",
  "release_mm", "leave_mm3", "block_out_mm3", "wedge_deg", "gate_mm", "vent_mm",
];
const TICKS = ["allow_caught", "fill_voids"];
const BED = { bed_x: 220, bed_y: 220, bed_z: 250 };
const WORDS = ["shrink_y", "shrink_z", ...Object.keys(BED), "pulls"];
const VALUES = [...CHOICES, ...NUMBERS, ...WORDS];
const UNITS = { MILLIMETER: "mm", CENTIMETER: "cm", METER: "m", INCH: "in" };

// What an order is rounded to, mm: far below what any file resolves.
const FINE = 1e6;

// Where gate and vents should be, in the model's frame as shares of its longest side, so that they
// stay on the model when its size changes.
export const openings = { gate: null, vents: [] };

// Wishes for the seams as a wishes file has them, their lengths as such shares too.
export const wishes = { all: [] };

const past = [];
let last = null;
let told = () => {};

export function state() {
  const s = { printer: $("printer").value.trim() };
  for (const f of TICKS) {
    s[f] = $(f).checked;
  }
  for (const f of VALUES) {
    s[f] = $(f).value;
  }
  s.gate = openings.gate;
  s.vents = [...openings.vents];
  s.wishes = [...wishes.all];
  return s;
}

function put(s) {
  for (const f of VALUES) {
    $(f).value = s[f];
  }
  for (const f of TICKS) {
    $(f).checked = s[f];
  }
  $("printer").value = s.printer;
  openings.gate = s.gate;
  openings.vents = [...s.vents];
  wishes.all = [...s.wishes];
  agree();
}

// What one field says of others: y and z follow x until x is given, and pulls can be wrong.
function agree() {
  for (const f of ["shrink_y", "shrink_z"]) {
    $(f).disabled = $("shrink_percent").value === "";
  }
  let wrong = "";
  try {
    pulls.asked($("pulls").value);
  } catch (e) {
    wrong = e.message;
  }
  $("pulls").setAttribute("aria-invalid", String(wrong !== ""));
  $("pulls-wrong").textContent = wrong;
  $("pulls-wrong").hidden = wrong === "";
}

// Places stay on the model when another of the file's axes points up.
function turn(from, to) {
  const way = (p) => frame.toModel(to, frame.toFile(from, p));
  openings.gate = openings.gate && way(openings.gate);
  openings.vents = openings.vents.map(way);
  wishes.all = wishes.all.map((w) => placed(w, way, (r) => r));
}

// A wish with its places and its radius carried elsewhere.
function placed(w, way, length) {
  if (w.sphere) {
    return { ...w, sphere: { center: way(w.sphere.center), radius: length(w.sphere.radius) } };
  }
  if (w.box) {
    const [a, b] = [way(w.box.min), way(w.box.max)];
    return { ...w, box: { min: a.map((v, k) => Math.min(v, b[k])), max: a.map((v, k) => Math.max(v, b[k])) } };
  }
  return w;
}

// The longest side of a model as the fields take it, mm.
export function side(model) {
  const size = parseFloat($("size_mm").value);
  const unit = frame.MM[model?.units ?? $("units").value] ?? 1;
  return size > 0 ? size : (model?.longest ?? 0) * unit * (parseFloat($("scale").value) || 1);
}

// Remembers what the fields said before; called after each change of them.
export function remember() {
  const now = state();
  if (last && JSON.stringify(now) !== JSON.stringify(last)) {
    const before = last;
    steps("the last change", () => put(before));
  }
  last = now;
  agree();
  told();
}

// A step that can be taken back.
export function steps(words, back) {
  past.push({ words, back });
  $("undo").disabled = false;
  $("undo").title = `Takes back: ${words}`;
}

async function takeBack() {
  const step = past.pop();
  if (!step) {
    return;
  }
  await step.back();
  last = state();
  $("undo").disabled = past.length === 0;
  $("undo").title = past.length ? `Takes back: ${past[past.length - 1].words}` : "";
  told();
}

export function watch(changed) {
  told = changed;
  last = state();
  $("undo").addEventListener("click", takeBack);
  document.addEventListener("keydown", (e) => {
    const typing = e.target.matches("input[type=text], input[type=number]");
    if ((e.ctrlKey || e.metaKey) && e.key === "z" && !typing) {
      e.preventDefault();
      takeBack();
    }
  });
  // at once, and not when the field is left: what moves then would take the click from a button
  $("steps").addEventListener("input", (e) => {
    if (e.target.id in state()) {
      if (e.target.id === "up") {
        turn(last.up, $("up").value);
      }
      agree();
      told();
    }
  });
  $("steps").addEventListener("change", (e) => {
    if (e.target.id in state()) {
      remember();
    }
  });
}

// The order as the server takes it; what is empty is by rule.
export function wish(model) {
  const s = state();
  const out = { model: model.model, printer: s.printer, ...pulls.asked(s.pulls) };
  for (const f of [...CHOICES, ...TICKS]) {
    out[f] = s[f];
  }
  out.pieces = parseInt(s.pieces, 10);
  for (const f of NUMBERS) {
    const v = parseFloat(s[f]);
    if (Number.isFinite(v)) {
      out[f] = v;
    }
  }
  const along = ["shrink_y", "shrink_z"].map((f) => parseFloat(s[f]));
  if ("shrink_percent" in out && along.some(Number.isFinite)) {
    out.shrink_percent = [out.shrink_percent, ...along.map((v) => (Number.isFinite(v) ? v : out.shrink_percent))];
  }
  const bed = Object.entries(BED).map(([f, usual]) => parseFloat(s[f]) || usual);
  if (Object.keys(BED).some((f) => s[f] !== "")) {
    out.bed_mm = bed;
  }
  const whole = side(model);
  const length = (v) => Math.round(v * whole * FINE) / FINE;
  const scaled = (p) => p.map(length);
  if (whole > 0 && s.gate) {
    out.gate_at = scaled(s.gate);
  }
  if (whole > 0 && s.vents.length) {
    out.vents_at = s.vents.map(scaled);
  }
  if (whole > 0 && s.wishes.length) {
    out.wishes = { version: 1, wishes: s.wishes.map((w) => placed(w, scaled, length)) };
  }
  return out;
}

// Puts the options of an earlier job back into the fields, so that work can go on from there.
export function restore(job, longest) {
  const { model: taking, mold } = job.options;
  const set = (f, v) => ($(f).value = v > 0 ? v : "");
  $("units").value = UNITS[taking.units] ?? "mm";
  $("up").value = taking.up.toLowerCase().replace("minus_", "-");
  $("heal").value = taking.repair.mode.toLowerCase();
  $("fill_voids").checked = taking.repair.fill_voids;
  set("remesh_cell_mm", taking.repair.remesh_cell);
  $("material").value = mold.material;
  set("size_mm", taking.size_mm);
  $("pieces").value = mold.pieces;
  for (const field of ["process", "block", "closing", "pour"]) {
    $(field).value = mold[field].toLowerCase();
  }
  $("keys").value = mold.key_shape.toLowerCase();
  for (const f of ["wall_mm", "clearance_mm", "key_count"]) {
    set(f, mold[f]);
  }
  const other = (f, v, usual) => ($(f).value = v === usual ? "" : v);
  other("release_mm", mold.release_mm, 0.05);
  other("leave_mm3", mold.leave_mm3, 5);
  other("block_out_mm3", mold.block_out_mm3, -1);
  other("wedge_deg", job.options.wedge_deg, 25);
  set("mold_strain_percent", 100 * mold.mold_strain);
  other("scale", taking.scale, 1);
  const { bed } = job.options;
  other("bed_x", bed.x, BED.bed_x);
  other("bed_y", bed.y, BED.bed_y);
  other("bed_z", bed.z, BED.bed_z);
  const shrink = mold.shrink_percent;
  $("shrink_percent").value = shrink ? shrink.x : "";
  other("shrink_y", shrink?.y ?? "", shrink?.x);
  other("shrink_z", shrink?.z ?? "", shrink?.x);
  $("pulls").value = pulls.words(mold);
  $("allow_caught").checked = mold.allow_caught;
  const o = mold.openings ?? { gate_at: null, vents_at: [], gate_mm: 0, vent_mm: 0 };
  $("gate_end").value = o.gate?.toLowerCase() ?? "top";
  set("gate_mm", o.gate_mm);
  set("vent_mm", o.vent_mm);
  const share = (p) => [p.x / longest, p.y / longest, p.z / longest];
  openings.gate = o.gate_at ? share(o.gate_at) : null;
  openings.vents = o.vents_at.map(share);
  const shares = (p) => p.map((v) => v / longest);
  wishes.all = mold.wishes.wishes.map((w) => placed(w, shares, (r) => r / longest));
  agree();
  last = state();
  told();
}

export function placedWords() {
  const n = openings.vents.length;
  const words = [];
  if (openings.gate) {
    words.push("gate placed by hand");
  }
  if (n) {
    words.push(`${number(n, 0)} ${n === 1 ? "vent" : "vents"} placed by hand`);
  }
  return words.join(", ");
}
