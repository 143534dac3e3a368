// What the fields say, and taking back.
import { $, number } from "/page.js";

const CHOICES = ["material", "process", "pieces", "block", "closing", "keys", "pour", "paper", "sheet_units"];
const NUMBERS = [
  "size_mm", "shrink_percent", "mold_strain_percent", "wall_mm", "clearance_mm", "key_count", "release_mm",
  "leave_mm3", "wedge_deg", "gate_mm", "vent_mm",
];

// Where gate and vents should be, in the model's frame as shares of its longest side, so that they
// stay on the model when its size changes.
export const openings = { gate: null, vents: [] };

const past = [];
let last = null;
let told = () => {};

export function state() {
  const s = { allow_caught: $("allow_caught").checked, printer: $("printer").value.trim() };
  for (const f of [...CHOICES, ...NUMBERS]) {
    s[f] = $(f).value;
  }
  s.gate = openings.gate;
  s.vents = [...openings.vents];
  return s;
}

function put(s) {
  for (const f of [...CHOICES, ...NUMBERS]) {
    $(f).value = s[f];
  }
  $("allow_caught").checked = s.allow_caught;
  $("printer").value = s.printer;
  openings.gate = s.gate;
  openings.vents = [...s.vents];
}

// Remembers what the fields said before; called after each change of them.
export function remember() {
  const now = state();
  if (last && JSON.stringify(now) !== JSON.stringify(last)) {
    const before = last;
    steps("the last change", () => put(before));
  }
  last = now;
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
  const out = { model: model.model, printer: s.printer, allow_caught: s.allow_caught };
  for (const f of CHOICES) {
    out[f] = s[f];
  }
  out.pieces = parseInt(s.pieces, 10);
  for (const f of NUMBERS) {
    const v = parseFloat(s[f]);
    if (Number.isFinite(v)) {
      out[f] = v;
    }
  }
  const side = out.size_mm || model.longest || 0;
  const scaled = (p) => p.map((v) => v * side);
  if (side > 0 && s.gate) {
    out.gate_at = scaled(s.gate);
  }
  if (side > 0 && s.vents.length) {
    out.vents_at = s.vents.map(scaled);
  }
  return out;
}

// Puts the options of an earlier job back into the fields, so that work can go on from there.
export function restore(job, longest) {
  const { model: taking, mold } = job.options;
  const set = (f, v) => ($(f).value = v > 0 ? v : "");
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
  other("wedge_deg", job.options.wedge_deg, 25);
  set("mold_strain_percent", 100 * mold.mold_strain);
  $("shrink_percent").value = mold.shrink_percent ? mold.shrink_percent.x : "";
  $("allow_caught").checked = mold.allow_caught;
  const o = mold.openings ?? { gate_at: null, vents_at: [], gate_mm: 0, vent_mm: 0 };
  set("gate_mm", o.gate_mm);
  set("vent_mm", o.vent_mm);
  const share = (p) => [p.x / longest, p.y / longest, p.z / longest];
  openings.gate = o.gate_at ? share(o.gate_at) : null;
  openings.vents = o.vents_at.map(share);
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
