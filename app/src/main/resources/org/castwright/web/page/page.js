// Small things that all parts of the page use.

export const $ = (id) => document.getElementById(id);

export const number = (v, digits = 1) =>
  v.toLocaleString("en-US", { minimumFractionDigits: digits, maximumFractionDigits: digits });

export const element = (tag, text, more = {}) =>
  Object.assign(document.createElement(tag), text === null ? {} : { textContent: text }, more);

// What a button does; it shows in its own place what went wrong.
export function press(b, act) {
  b.addEventListener("click", async () => {
    try {
      await act(b);
    } catch (e) {
      b.title = e.message;
      tell(e.message);
    }
  });
}

export function button(words, act, more = {}) {
  const b = element("button", words, { type: "button", ...more });
  press(b, act);
  return b;
}

export function verdict(step, words, kind = "") {
  const p = $(`v-${step}`);
  p.textContent = words;
  p.closest(".step").classList.remove("good", "bad", "busy", "old");
  if (kind) {
    p.closest(".step").classList.add(kind);
  }
}

// One line over the view.
export function tell(words) {
  $("told").textContent = words;
  $("told").hidden = !words;
}

export const place = (p) => p.map((v) => number(v)).join(", ");
