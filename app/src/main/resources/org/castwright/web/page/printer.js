// The maker's own printer: coupons to print, and what was read from them.
import * as calls from "/calls.js";
import { $, button, element, number, tell } from "/page.js";

const FITS = [["NO", "does not go in"], ["TIGHT", "tight"], ["GOOD", "good"], ["LOOSE", "loose"]];
const KINDS = {
  CAST_LENGTH: "cast length", PRINT_LENGTH: "printed length", KEY_FIT: "gap of keys",
  VENT_BORE: "vent", GATE_BORE: "gate",
};

const mm = (v) => `${number(v, 2)} mm`;

function fit(f) {
  const spread = f.spread_percent === null ? "one length" : `± ${number(f.spread_percent, 2)}, ${f.lengths} lengths`;
  return `${number(f.percent, 2)} % (${spread})`;
}

// Says what is known of the material on the printer named.
export async function know() {
  const printer = $("printer").value.trim();
  if (!printer) {
    $("own").textContent = "Name your printer, and its readings are used where a field is empty.";
    return;
  }
  const o = await calls.own($("material").value, printer, $("process").value);
  const words = [];
  if (o.cast) {
    words.push(`shrink ${fit(o.cast)}`);
  }
  if (o.print) {
    words.push(`print alone ${fit(o.print)}`);
  }
  if (o.clearance_mm !== null) {
    words.push(`gap of keys ${mm(o.clearance_mm)}`);
  }
  if (o.vent_mm !== null) {
    words.push(`smallest vent ${mm(o.vent_mm)}`);
  }
  if (o.gate_mm !== null) {
    words.push(`smallest gate ${mm(o.gate_mm)}`);
  }
  $("own").textContent = words.length
    ? `Your own readings, used where a field is empty: ${words.join("; ")}.`
    : "Nothing read of this material on this printer yet.";
}

function field(words, input) {
  const box = element("div", null, { className: "field" });
  const id = `r-${words.replace(/[^a-z0-9]+/gi, "-")}`;
  input.id = id;
  box.append(element("label", words, { htmlFor: id }), input);
  return box;
}

const measured = () => element("input", null, { type: "number", step: 0.01, min: 0.1, inputMode: "decimal" });

// A form with the ladder of the coupons that were made.
function form(options) {
  const box = element("div", null, { className: "fields" });
  const takers = [];
  const common = () => ({
    material: $("material").value, printer: $("printer").value.trim(), process: $("process").value,
    got_mm: null, fit: null, from: "coupon", date: "",
  });
  for (const gap of options.gaps_mm) {
    const select = element("select", null);
    select.append(element("option", "not tried", { value: "" }), ...FITS.map(([v, w]) => element("option", w, { value: v })));
    box.append(field(`Gap ${mm(gap)}`, select));
    takers.push(() => select.value && { ...common(), kind: "KEY_FIT", drawn_mm: gap, fit: select.value });
  }
  for (const [kind, words] of [["PRINT_LENGTH", "Printed bar"], ["CAST_LENGTH", "Cast bar"]]) {
    for (const mark of options.marks_mm) {
      const input = measured();
      box.append(field(`${words} at ${number(mark, 0)} mm`, input));
      takers.push(() => input.value && { ...common(), kind, drawn_mm: mark, got_mm: parseFloat(input.value) });
    }
  }
  for (const [kind, words] of [["VENT_BORE", "Smallest bore with light"], ["GATE_BORE", "Smallest bore it ran through"]]) {
    const select = element("select", null);
    select.append(element("option", "not tried", { value: "" }), ...options.bores_mm.map((b) => element("option", mm(b), { value: b })));
    box.append(field(words, select));
    takers.push(() => select.value && { ...common(), kind, drawn_mm: parseFloat(select.value), fit: "GOOD" });
  }
  const keep = button("Keep these readings", async () => {
    const list = takers.map((t) => t()).filter(Boolean);
    if (!$("printer").value.trim()) {
      throw new Error("Name your printer first.");
    }
    if (list.length === 0) {
      throw new Error("Nothing was read yet.");
    }
    await calls.addReadings(list);
    tell(`${list.length} readings kept.`);
    await show();
    await know();
  }, { id: "keep" });
  box.append(keep);
  return box;
}

async function show() {
  const { readings } = await calls.readings();
  const names = [...new Set(readings.map((r) => r.printer))];
  $("printers").replaceChildren(...names.map((n) => element("option", null, { value: n })));
  const make = button("Make fit coupons", async (b) => {
    b.disabled = true;
    try {
      const made = await calls.coupons($("process").value);
      const link = element("a", "Coupons to print", { href: calls.couponZip(made.name), download: `coupons-${made.name}.zip` });
      $("readings").replaceChildren(link, form(made.coupon.options), ...rows(readings));
    } finally {
      b.disabled = false;
    }
  }, { id: "coupons" });
  $("readings").replaceChildren(make, ...rows(readings));
}

function rows(readings) {
  if (readings.length === 0) {
    return [];
  }
  const kept = element("details", null);
  kept.append(element("summary", `${readings.length} readings kept`));
  const list = element("ul", null, { className: "notes" });
  readings.forEach((r, i) => {
    const how = r.got_mm === null ? FITS.find((f) => f[0] === r.fit)?.[1] : mm(r.got_mm);
    const words = `${r.date} ${r.printer}${r.material ? `, ${r.material}` : ""}: ${KINDS[r.kind]} ${mm(r.drawn_mm)}: ${how}`;
    const li = element("li", `${words} `);
    const away = button("Strike", async () => {
      await calls.strikeReading(i, readings.length);
      await show();
      await know();
    });
    away.setAttribute("aria-label", `Strike: ${words}`);
    li.append(away);
    list.append(li);
  });
  kept.append(list);
  return [kept];
}

export async function begin() {
  for (const id of ["printer", "material", "process"]) {
    $(id).addEventListener("input", know);
  }
  await show();
  await know();
}

export const changed = async () => {
  await show();
  await know();
};
