// The brush for the seam: what is asked of it where on the model.
import { $, button, element, number } from "/page.js";
import { remember, wishes } from "/fields.js";

// Black, green, yellow and blue of M. Okabe and K. Ito, 2008.
export const MARKS = {
  "no-seam": { words: "no seam here", color: 0x000000 },
  hide: { words: "hide the seam here", color: 0x009e73 },
  show: { words: "show this face", color: 0xf0e442 },
  piece: { words: "one piece forms it", color: 0x0072b2 },
};

// Where a mark lies, in shares of the model's longest side; null for one made of facets.
export function middle(wish) {
  if (wish.sphere) {
    const r = wish.sphere.radius;
    return { center: wish.sphere.center, half: [r, r, r], round: true };
  }
  if (wish.box) {
    const { min, max } = wish.box;
    const half = min.map((v, k) => Math.max(1e-6, (max[k] - v) / 2));
    return { center: min.map((v, k) => (v + max[k]) / 2), half, round: false };
  }
  return null;
}

const swatch = (mark) => element("span", null, { className: `swatch mark-${mark}` });

const named = (wish) => (wish.mark === "piece" ? `piece ${wish.piece} forms it` : MARKS[wish.mark].words);

function words(wish, side) {
  const mm = (v) => number(v * side);
  const at = middle(wish);
  if (!at) {
    return `${named(wish)}: ${number(wish.facets.length, 0)} facets`;
  }
  const around = at.center.map(mm).join(", ");
  const how = at.round ? `${mm(at.half[0])} mm round` : `box of ${at.half.map((h) => mm(2 * h)).join(" × ")} mm about`;
  return `${named(wish)}: ${how} ${around}`;
}

// The marks there are, each to be erased; side is the model's longest, mm.
export function list(side) {
  $("marks").replaceChildren(
    ...wishes.all.map((w, i) => {
      const li = element("li", null);
      const said = words(w, side);
      const erase = button("Erase", () => {
        wishes.all = wishes.all.filter((o) => o !== w);
        remember();
      });
      erase.setAttribute("aria-label", `Erase: mark ${i + 1}, ${said}`);
      li.append(swatch(w.mark), element("span", said), erase);
      return li;
    }),
  );
  radius(side);
}

// What the colors on the model mean.
export function legend() {
  return Object.entries(MARKS)
    .filter(([mark]) => wishes.all.some((w) => w.mark === mark))
    .map(([mark, m]) => {
      const line = element("p", null, { className: "mark" });
      line.append(swatch(mark), element("span", m.words));
      return line;
    });
}

function radius(side) {
  const said = `${number(share() * side)} mm`;
  $("mark-words").textContent = said;
  $("mark-radius").setAttribute("aria-valuetext", said);
}

const share = () => $("mark-radius").value / 100;

// Marks a place, in shares of the model's longest side. Wishes need more pieces than two.
export function mark(center) {
  const wish = { mark: $("mark-kind").value };
  if (wish.mark === "piece") {
    wish.piece = parseInt($("mark-piece").value, 10);
  }
  wish.sphere = { center, radius: share() };
  wishes.all = [...wishes.all, wish];
  const least = Math.max(3, wish.piece ?? 0);
  const more = parseInt($("pieces").value, 10) < least;
  if (more) {
    $("pieces").value = least;
  }
  remember();
  return more ? `Marked; up to ${least} pieces are allowed now, for two leave the seam no choice.` : "Marked.";
}

// Shows what the brush takes while it is in hand.
export function inHand(on) {
  $("brush-line").hidden = !on;
}

export function begin(side) {
  $("mark-kind").replaceChildren(
    ...Object.entries(MARKS).map(([mark, m]) => element("option", m.words, { value: mark })),
  );
  const which = () => ($("mark-piece-field").hidden = $("mark-kind").value !== "piece");
  $("mark-kind").addEventListener("change", which);
  $("mark-radius").addEventListener("input", () => radius(side()));
  which();
}
