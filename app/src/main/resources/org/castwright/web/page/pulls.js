// Pulls that the maker fixes, as they are typed: "0,0,1" for any piece, "2=0,0,1" for the one that leaves second.

const NUMBER = "[-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:e[-+]?\\d+)?";
const PULL = new RegExp(`^(?:([1-8])=)?(${NUMBER}),(${NUMBER}),(${NUMBER})$`, "i");

// The order's entries for what is typed; throws one sentence if it cannot be read.
export function asked(text) {
  const plain = text.trim().replace(/\s*([,=])\s*/g, "$1");
  const given = plain === "" ? [] : plain.split(/[;\s]+/).filter((w) => w !== "").map(pull);
  const free = given.filter((p) => p.piece === null);
  if (free.length > 0 && given.length > 1) {
    throw new Error("With more than one pull, say which piece each is for, as in 2=0,0,1.");
  }
  if (given.length === 0) {
    return {};
  }
  return free.length ? { pull: free[0].direction } : { pulls: given };
}

function pull(word) {
  const m = PULL.exec(word);
  const direction = m?.slice(2).map(parseFloat);
  if (!m || Math.hypot(...direction) === 0) {
    throw new Error(`A pull is three numbers, with or without the piece it is for, as in 2=0,0,1, not '${word}'.`);
  }
  return { piece: m[1] ? parseInt(m[1], 10) : null, direction };
}

// The same words again, from the options of a job.
export function words(mold) {
  const way = (d) => [d.x, d.y, d.z].join(",");
  return mold.pull ? way(mold.pull) : mold.pulls.map((p) => `${p.piece}=${way(p.direction)}`).join(" ");
}

// What is typed, with the pull of one piece put in or replaced.
export function withPull(text, piece, direction) {
  let kept = [];
  try {
    kept = asked(text).pulls ?? [];
  } catch {
    // what could not be read is replaced
  }
  return [...kept.filter((p) => p.piece !== piece), { piece, direction }]
    .sort((a, b) => a.piece - b.piece)
    .map((p) => `${p.piece}=${p.direction.join(",")}`)
    .join(" ");
}
