// The controls of the view: opening, cut, what is looked at, and pointing.
import * as brush from "/brush.js";
import { Coat } from "/coat.js";
import { $, button, element, number, tell } from "/page.js";
import { openings, wishes } from "/fields.js";
import { cividis, MOST_DRAFT } from "/tools.js";

const GATE = 0x0072b2;
const VENT = 0x009e73;
const NOTE = 0xd55e00;
const NEXT = { shown: "see-through", "see-through": "hidden", hidden: "shown" };

// The eye looks along an axis if the cosine between them is above this: within 8°.
const NEARLY = Math.cos((8 * Math.PI) / 180);
const AXES = { x: "from the middle, to the right", y: "from the middle, up", z: "from the middle, to the front" };

export class Hands {
  constructor(view, tools, host) {
    this.view = view;
    this.tools = tools;
    this.host = host;
    this.report = null;
    this.toShare = null;
    this.coat = new Coat(view, tools);
    this.dots = [];
    this.noted = [];
    this.length = [];
    this.how = {};
    this.buttons = {
      gate: button("Place the gate", () => this.begin("gate"), { id: "place-gate" }),
      vent: button("Place a vent", () => this.begin("vent"), { id: "place-vent" }),
      brush: button("Mark for the seam", () => this.begin("brush"), { id: "brush" }),
      length: button("Measure", () => this.begin("length"), { id: "measure" }),
    };
    $("hands").replaceChildren(...Object.values(this.buttons));
    brush.begin(() => host.side());
    this.press(null);
    $("opening").addEventListener("input", () => this.open());
    $("look").addEventListener("change", () => this.look());
    $("level").addEventListener("input", () => this.level());
    $("cut").addEventListener("change", () => this.cut());
    $("cut-at").addEventListener("input", () => this.cut());
  }

  press(which) {
    for (const [name, b] of Object.entries(this.buttons)) {
      b.setAttribute("aria-pressed", String(name === which));
    }
    this.mode = which;
    brush.inHand(which === "brush");
  }

  // Begins to point at something, or ends it if it was begun.
  begin(mode) {
    if (this.mode === mode) {
      this.point(null);
      return;
    }
    this.forgetLength();
    this.press(mode);
    const words = {
      gate: "Click where the gate should join.",
      vent: "Click where a vent should join.",
      brush: "Click the middle of each place to mark.",
      length: "Click two places.",
    };
    this.find(words[mode], (hit) => this.found(mode, hit));
    this.press(mode);
  }

  // Asks for a place on the casting; null ends it.
  point(words, found) {
    this.press(null);
    this.find(words, found ?? null);
  }

  find(words, found) {
    tell(words ? `${words} Or turn the view and press Enter for what is in its middle.` : "");
    this.view.pointed = words ? found : null;
    this.view.place.classList.toggle("pointing", Boolean(words));
    this.bare(Boolean(words) && this.mode !== "length");
  }

  // While a place on the casting is asked for, the pieces do not stand before it.
  bare(on) {
    for (const p of this.view.pieces) {
      this.view.show(p.name, on ? "see-through" : (this.how[p.name] ?? "shown"));
    }
  }

  found(mode, hit) {
    if (mode === "length") {
      this.lengthAt(hit.at);
      return;
    }
    if (mode === "brush") {
      // it stays in hand until it is put away
      tell(brush.mark(this.toShare(hit.at)));
      return;
    }
    this.host.placed(mode, this.toShare(hit.at));
    this.press(null);
    this.view.pointed = null;
    this.view.place.classList.remove("pointing");
    this.bare(false);
  }

  lengthAt(at) {
    if (this.length.length >= 2) {
      this.forgetLength();
    }
    this.length.push(at);
    this.dots.push(this.tools.ball(at, this.tools.dot() * 0.6, NOTE, true));
    if (this.length.length === 2) {
      const [a, b] = this.length;
      this.dots.push(this.tools.stretch(a, b));
      const [s, e] = [a, b].map((p) => this.toShare(p));
      const side = this.report ? Math.max(...this.report.input.size_mm) : this.host.side();
      const way = e.map((v, k) => (v - s[k]) * side);
      const model = Math.hypot(...way);
      const inMold = Math.hypot(...a.map((v, k) => v - b[k]));
      const drawn = this.report ? `, ${number(inMold, 2)} mm in the mold` : "";
      tell(`${number(model, 2)} mm on the model${drawn}.`);
      this.host.measured(model, "xyz"[way.findIndex((v) => Math.abs(v) > NEARLY * model)] ?? "");
    }
  }

  forgetLength() {
    this.dots.forEach((d) => d.removeFromParent());
    this.dots = [];
    this.length = [];
    this.view.draw();
  }

  // A model is shown.
  onModel(toShare, fromShare) {
    this.fresh(null);
    this.toShare = toShare;
    this.fromShare = fromShare;
    $("toward").disabled = false;
  }

  // The direction toward the eye in the model's frame; along an axis if it is near to one.
  toward() {
    const [zero, end] = [[0, 0, 0], this.view.toward()].map((p) => this.toShare(p));
    const way = end.map((v, k) => v - zero[k]);
    const long = Math.hypot(...way);
    const unit = way.map((v) => v / long);
    const along = unit.findIndex((v) => Math.abs(v) > NEARLY);
    return unit.map((v, k) => (along < 0 ? Math.round(v * 1000) / 1000 : k === along ? Math.sign(v) : 0));
  }

  // A finished mold is shown: places come in its frame.
  onMold(report) {
    this.fresh(report);
    const side = Math.max(...report.input.size_mm);
    const { rows, origin } = report.mold_frame;
    this.toShare = (p) => {
      const q = p.map((v, i) => v + origin[i]);
      return [0, 1, 2].map(
        (k) => (rows[0][k] * q[0] + rows[1][k] * q[1] + rows[2][k] * q[2]) / report.scale[k] / side,
      );
    };
    this.fromShare = (s) => {
      const p = s.map((v, k) => v * side * report.scale[k]);
      return rows.map((r, i) => r[0] * p[0] + r[1] * p[1] + r[2] * p[2] - origin[i]);
    };
    $("opening").value = 0;
    $("look-caught").hidden = report.survey.caught.length === 0;
    $("look-caught").disabled = report.survey.caught.length === 0;
    $("toward").disabled = false;
    this.open();
    this.legend();
    this.look();
  }

  fresh(report) {
    this.report = report;
    this.how = {};
    this.dots = [];
    this.noted = [];
    this.length = [];
    this.spots = [];
    this.toShare = null;
    this.fromShare = null;
    this.tools.extra = [];
    this.press(null);
    this.point(null);
    $("look").value = "pieces";
    $("cut").value = "";
    $("cut-line").hidden = true;
    $("level-line").hidden = true;
    $("colors").hidden = true;
    for (const b of Object.values(this.buttons)) {
      b.disabled = false;
    }
  }

  // Something is shown on which nothing can be placed.
  off() {
    this.fresh(null);
    for (const b of ["gate", "vent", "brush"]) {
      this.buttons[b].disabled = true;
    }
    $("toward").disabled = true;
  }

  // Marks the places asked for, and those marked for the seam.
  openings() {
    (this.spots ?? []).forEach((s) => s.removeFromParent());
    this.spots = [];
    if (!this.view.group || !this.toShare) {
      return;
    }
    if ($("look").value === "pieces") {
      this.coat.draw(wishes.all, this.toShare);
      this.marksScale();
    }
    const mark = (s, color) => this.spots.push(this.tools.ball(this.fromShare(s), this.tools.dot(), color, true));
    if (openings.gate) {
      mark(openings.gate, GATE);
    }
    openings.vents.forEach((v) => mark(v, VENT));
    this.view.draw();
  }

  // Marks noted places.
  marks(places) {
    this.noted.forEach((d) => d.removeFromParent());
    this.noted = this.view.group ? places.map((p) => this.tools.ball(p, this.tools.dot(), NOTE, true)) : [];
    this.view.draw();
  }

  open() {
    const share = $("opening").value / 1000;
    const moving = this.view.open(share);
    const words = !moving ? "closed" : share === 1 ? "open" : `${moving.order}. ${moving.name} leaves`;
    $("step").textContent = words;
    $("opening").setAttribute("aria-valuetext", words);
    if ($("cut").value) {
      this.cut();
    }
  }

  legend() {
    const bodies = this.report.pieces.map((p, i) => [p.name, `c${i % 6}`]);
    bodies.push(["casting", "casting"]);
    const buttons = bodies.map(([name, color]) => {
      const swatch = element("span", null, { className: `swatch ${color}` });
      const words = element("span", "");
      const b = element("button", null, { type: "button" });
      b.append(swatch, words);
      const set = (how) => {
        b.dataset.how = how;
        this.how[name] = how;
        words.textContent = how === "shown" ? name : `${name}: ${how}`;
        swatch.classList.toggle("faded", how === "see-through");
        swatch.classList.toggle("off", how === "hidden");
        this.view.show(name, how);
      };
      b.addEventListener("click", () => set(NEXT[b.dataset.how]));
      set("shown");
      return b;
    });
    for (const kind of ["gate", "vent"]) {
      if (this.report.channels.some((c) => c.kind === kind)) {
        const mark = element("span", null, { className: "mark" });
        mark.append(element("span", null, { className: `swatch ${kind}` }), element("span", kind));
        buttons.push(mark);
      }
    }
    $("legend").replaceChildren(...buttons);
  }

  // What the casting shows: itself, its draft, or how it fills.
  look() {
    const what = $("look").value;
    this.tools.clear();
    this.coat.show(what === "pieces");
    $("level-line").hidden = what !== "fill";
    $("legend").hidden = what !== "pieces";
    for (const p of this.view.pieces) {
      this.view.show(p.name, what === "pieces" ? (this.how[p.name] ?? "shown") : "hidden");
    }
    this.view.show("casting", "shown");
    $("colors").hidden = true;
    if (what === "draft") {
      const low = this.tools.draft(this.report.pieces.map((p) => p.pull));
      this.draftScale(low);
    } else if (what === "caught") {
      this.tools.caught(this.host.caughtAddress()).catch((e) => tell(e.message));
      this.caughtScale();
    } else if (what === "fill") {
      this.tools.fill(this.report.pour.up, this.report.pouring.fill.pockets);
      this.fillScale();
      this.level();
    } else {
      this.openings();
    }
    this.cut();
  }

  scale(...parts) {
    $("colors").replaceChildren(...parts);
    $("colors").hidden = false;
  }

  marksScale() {
    const marks = brush.legend();
    $("colors").hidden = marks.length === 0;
    if (marks.length) {
      this.scale(element("p", "Marked for the seam"), ...marks);
    }
  }

  swatch(color, words) {
    const line = element("p", null, { className: "mark" });
    line.append(element("span", null, { className: `swatch ${color}` }), element("span", words));
    return line;
  }

  draftScale(low) {
    const bar = element("div", null, { className: "bar" });
    const stops = [0, 0.25, 0.5, 0.75, 1].map((s) => `#${cividis(s).getHexString()}`);
    bar.style.background = `linear-gradient(to right, ${stops.join(", ")})`;
    const ends = element("div", null, { className: "ends" });
    ends.append(element("span", "0°"), element("span", `${MOST_DRAFT}° and more`));
    this.scale(
      element("p", "Draft: angle of each facet to the pull that suits it best, degrees"),
      bar,
      ends,
      element("p", `${number(100 * low, 0)} % of the surface has less than 1°`),
    );
  }

  fillScale() {
    const air = this.report.pouring.fill.pockets;
    this.scale(
      this.swatch("liquid", "filled"),
      this.swatch("caught", air.length ? `air that stays, ${air.length} places` : "air that stays: none"),
    );
  }

  caughtScale() {
    this.scale(this.swatch("caught", "caught: rigid pieces hold here"), this.swatch("casting", "free"));
  }

  // The level rises by the slider; volume and time are the report's.
  level() {
    const f = this.report.pouring.fill;
    const top = f.level_mm[f.level_mm.length - 1];
    const at = ($("level").value / 1000) * top;
    this.tools.fillTo(at);
    const between = (list) => {
      const i = Math.max(1, f.level_mm.findIndex((l) => l >= at));
      const [a, b] = [f.level_mm[i - 1], f.level_mm[i]];
      const share = b > a ? (at - a) / (b - a) : 1;
      return list[i - 1] + share * (list[i] - list[i - 1]);
    };
    const time = f.time_s?.length === f.level_mm.length ? `, after ${number(between(f.time_s))} s` : "";
    const words = `${number(at)} of ${number(top)} mm: ${number(between(f.poured_mm3) / 1000)} cm³${time}`;
    $("level-words").textContent = words;
    $("level").setAttribute("aria-valuetext", words);
  }

  cut() {
    const axis = $("cut").value;
    $("cut-line").hidden = !axis;
    const filling = $("look").value === "fill";
    $("cut").disabled = filling;
    if (filling) {
      $("cut-line").hidden = true;
      return;
    }
    const at = this.tools.cut(axis, $("cut-at").value / 1000);
    if (axis) {
      const words = `${number(at)} mm ${AXES[axis]}`;
      $("cut-words").textContent = words;
      $("cut-at").setAttribute("aria-valuetext", words);
    }
  }
}
