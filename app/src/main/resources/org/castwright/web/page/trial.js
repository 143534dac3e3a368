// After a test cast: what happened, what should change, and what was changed before.
import * as calls from "/calls.js";
import { $, button, element, number, place, tell, verdict } from "/page.js";

const KINDS = [
  ["AIR", "trapped air", true],
  ["STUCK", "stuck", true],
  ["FLASH", "flash at the seam", false],
  ["SIZE", "wrong size", false],
  ["KEYS_TIGHT", "keys too tight", false],
  ["KEYS_LOOSE", "keys too loose", false],
  ["SHORT", "did not fill", false],
  ["SOFT", "soft print", false],
  ["GOOD", "all as it should be", false],
];

const OPTIONS = {
  VENT_AT: "A vent there", VENT_MM: "Bore of vents", GATE_MM: "Bore of the gate",
  CLEARANCE_MM: "Gap of keys", SHRINK_PERCENT: "Shrink", CLOSING: "Held together by",
  WALL_MM: "Wall", PIECES: "Pieces, at most", RELEASE_MM: "Catch that counts as free",
  PULL: "Pull of piece 1", ALLOW_CAUGHT: "Make it though caught",
};

const words = (kind) => KINDS.find((k) => k[0] === kind)?.[1] ?? kind;

let host = null;
let job = null;
let notes = [];
let at = null;

function kind() {
  return KINDS.find((k) => k[0] === $("kind").value);
}

function shape() {
  const size = kind()[0] === "SIZE";
  $("wanted-field").hidden = !size;
  $("got-field").hidden = !size;
  $("along-field").hidden = !size;
  const where = kind()[2] ? `Click where: ${kind()[1]}.` : null;
  host.point(where, (p) => {
    at = p.at;
    tell(`${kind()[1]} at ${place(at)}: now "Note it".`);
    $("note").focus();
  });
}

function note() {
  const [name, , needs] = kind();
  const one = { kind: name, at: null, lengths: [], words: "" };
  if (needs) {
    if (!at) {
      shape();
      throw new Error("Click the place on the casting first.");
    }
    one.at = at;
  }
  if (name === "SIZE") {
    const [wanted, got] = [parseFloat($("wanted").value), parseFloat($("got").value)];
    if (!(wanted > 0 && got > 0)) {
      throw new Error("Say the length that was wanted and the one you measured.");
    }
    const length = { wanted_mm: wanted, got_mm: got, axis: $("along").value || null };
    const before = notes.find((n) => n.kind === "SIZE");
    if (before) {
      before.lengths.push(length);
      $("got").value = "";
      return list();
    }
    one.lengths.push(length);
    $("got").value = "";
  }
  notes.push(one);
  at = null;
  host.point(null);
  return list();
}

function noteWords(n) {
  const where = n.at ? ` at ${place(n.at)}` : "";
  const along = (l) => (l.axis ? ` along ${l.axis}` : "");
  const lengths = n.lengths.map((l) => `${number(l.got_mm, 2)} for ${number(l.wanted_mm, 2)} mm${along(l)}`);
  return words(n.kind) + where + (lengths.length ? `: ${lengths.join(", ")}` : "");
}

function list() {
  host.marks(notes.filter((n) => n.at).map((n) => n.at));
  $("notes").replaceChildren(
    ...notes.map((n, i) => {
      const li = element("li", noteWords(n));
      const away = button("Strike", () => {
        notes.splice(i, 1);
        list();
      });
      away.setAttribute("aria-label", `Strike: ${noteWords(n)}`);
      li.append(" ", away);
      return li;
    }),
  );
  $("ask").hidden = notes.length === 0;
  verdict("trial", notes.length ? `${notes.length} noted` : "what happened?", notes.length ? "busy" : "");
}

const changeWords = (c) => `${OPTIONS[c.option]}: ${c.from} → ${c.to}`;

async function ask() {
  const noted = await calls.noteTrial(job, { printer: $("printer").value.trim(), notes });
  notes = [];
  list();
  const picks = [];
  const parts = noted.trial.answers.map((a) => {
    const box = element("div", null, { className: "answer" });
    box.append(element("p", noteWords(noted.trial.notes[a.note]), { className: "what" }));
    box.append(element("p", a.because));
    a.changes.forEach((c, i) => {
      const tick = element("input", null, { type: "checkbox", checked: i === 0 });
      const label = element("label", null);
      label.append(tick, ` ${changeWords(c)}`);
      const line = element("p", null);
      line.append(label);
      box.append(line);
      picks.push({ tick, note: a.note, change: i });
    });
    a.advice.forEach((w) => box.append(element("p", w, { className: "faint" })));
    box.append(element("p", `Ground: ${a.source}.`, { className: "faint" }));
    return box;
  });
  const go = button("Make a version with the ticked changes", async () => {
    const ticked = picks.filter((p) => p.tick.checked).map(({ note: n, change }) => ({ note: n, change }));
    const next = await calls.applyTrial(job, noted.index, ticked);
    $("answers").replaceChildren();
    host.follow(next.name);
  }, { id: "apply" });
  go.disabled = picks.length === 0;
  $("answers").replaceChildren(...parts, go);
  verdict("trial", "answered below", "good");
  if (noted.readings.length) {
    host.readingsChanged();
  }
  history();
}

async function history() {
  const log = await calls.trials(job);
  $("history").hidden = log.trials.length === 0;
  $("trials").replaceChildren(
    ...log.trials.map((t) => {
      const li = element("li", `${t.date}, ${t.job}: ${t.notes.map(noteWords).join("; ")}.`);
      if (t.next) {
        li.append(` Changed in ${t.next}: ${t.applied.map(changeWords).join("; ")}.`);
      }
      return li;
    }),
  );
}

// A mold is shown: its trials can be noted.
export async function shown(name) {
  job = name;
  notes = [];
  at = null;
  $("trial").hidden = false;
  $("answers").replaceChildren();
  list();
  await history();
}

// A length measured in the view is the one that was wanted, along an axis of the model or none.
export function wanted(mm, axis) {
  if (kind()[0] === "SIZE") {
    $("along").value = axis;
    $("wanted").value = number(mm, 2).replaceAll(",", "");
    $("got").focus();
  }
}

export function begin(page) {
  host = page;
  $("kind").append(...KINDS.map(([v, w]) => element("option", w, { value: v })));
  $("kind").addEventListener("change", shape);
  $("kind").addEventListener("focus", shape);
  const act = (id, f) =>
    $(id).addEventListener("click", async () => {
      try {
        await f();
      } catch (e) {
        verdict("trial", e.message, "bad");
      }
    });
  act("note", note);
  act("ask", ask);
}
