// The calls of the server, as openapi.json describes them.

async function call(method, path, body, headers) {
  const answer = await fetch(path, { method, body, headers, credentials: "same-origin" });
  if (!answer.ok) {
    let words = `The server answers ${answer.status}.`;
    try {
      words = (await answer.json()).error;
    } catch {
      // the words above must do
    }
    throw new Error(words);
  }
  return answer.status === 204 ? null : answer.json();
}

const part = encodeURIComponent;
const send = (path, value) =>
  call("POST", path, JSON.stringify(value), { "Content-Type": "application/json" });
const asked = (values) => new URLSearchParams(values).toString();

export const sample = (name) => call("POST", `/api/samples/${part(name)}`);
export const bring = (file) => call("POST", `/api/models?name=${part(file.name)}`, file);
export const model = (name) => call("GET", `/api/models/${part(name)}`);
export const order = (wish) => send("/api/jobs", wish);
export const jobs = () => call("GET", "/api/jobs");
export const job = (name) => call("GET", `/api/jobs/${part(name)}`);
export const cancel = (name) => call("POST", `/api/jobs/${part(name)}/cancel`);
export const discard = (name) => call("DELETE", `/api/jobs/${part(name)}`);
export const rename = (name, to) => send(`/api/jobs/${part(name)}/name`, { name: to });
export const copy = (name, to) => send(`/api/jobs/${part(name)}/copy`, { name: to });
export const compare = (a, b) => call("GET", `/api/compare?${asked({ a, b })}`);
export const bin = () => call("GET", "/api/bin");
export const restore = (name) => call("POST", `/api/bin/${part(name)}/restore`);
export const report = (name) => call("GET", file(name, "report.json"));
export const refusal = (name) => call("GET", file(name, "refusal.json"));
export const jobFile = (name) => call("GET", file(name, "job.json"));
export const trials = (name) => call("GET", `/api/jobs/${part(name)}/trials`);
export const noteTrial = (name, seen) => send(`/api/jobs/${part(name)}/trials`, seen);
export const applyTrial = (name, trial, changes) =>
  send(`/api/jobs/${part(name)}/trials/${trial}/apply`, { changes });
export const readings = () => call("GET", "/api/calibration");
export const own = (material, printer, process) =>
  call("GET", `/api/calibration/own?${asked({ material, printer, process })}`);
export const addReadings = (list) => send("/api/calibration", { readings: list });
export const strikeReading = (index, of) => call("DELETE", `/api/calibration/${index}?of=${of}`);
export const coupons = (process) => send("/api/coupons", { process, gaps_mm: null });
export const couponZip = (name) => `/api/coupons/${part(name)}/zip`;
export const file = (name, path) => `/api/jobs/${part(name)}/files/${path}`;
export const zip = (name) => `/api/jobs/${part(name)}/zip`;
export const jobView = (name) => `/api/jobs/${part(name)}/view`;
export const modelView = (name) => `/api/models/${part(name)}/view`;

// A file of a job as plain text.
export async function text(name, path) {
  const answer = await fetch(file(name, path), { credentials: "same-origin" });
  if (!answer.ok) {
    throw new Error(`The server answers ${answer.status}.`);
  }
  return answer.text();
}
