// Axes and units of a model's file, as the program takes them.

// How many millimeters a unit is.
export const MM = { micron: 0.001, mm: 1, cm: 10, in: 25.4, ft: 304.8, m: 1000 };

// The axes of the model's frame, z up, in those of the file, by what points up there.
const ROWS = {
  x: [[0, 1, 0], [0, 0, 1], [1, 0, 0]],
  y: [[0, 0, 1], [1, 0, 0], [0, 1, 0]],
  z: [[1, 0, 0], [0, 1, 0], [0, 0, 1]],
  "-x": [[0, 1, 0], [0, 0, -1], [-1, 0, 0]],
  "-y": [[0, 0, 1], [-1, 0, 0], [0, -1, 0]],
  "-z": [[1, 0, 0], [0, -1, 0], [0, 0, -1]],
};

export const rows = (up) => ROWS[up];

// A place or direction of the file in the model's frame.
export const toModel = (up, p) => ROWS[up].map((r) => r[0] * p[0] + r[1] * p[1] + r[2] * p[2]);

// And back.
export const toFile = (up, p) => [0, 1, 2].map((k) => ROWS[up].reduce((sum, r, i) => sum + r[k] * p[i], 0));
