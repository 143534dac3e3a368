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

export const version = () => call("GET", "/api/version");
export const materials = () => call("GET", "/api/materials");
export const samples = () => call("GET", "/api/samples");
export const sample = (name) => call("POST", `/api/samples/${part(name)}`);
export const bring = (file) => call("POST", `/api/models?name=${part(file.name)}`, file);
export const order = (wish) =>
  call("POST", "/api/jobs", JSON.stringify(wish), { "Content-Type": "application/json" });
export const jobs = () => call("GET", "/api/jobs");
export const job = (name) => call("GET", `/api/jobs/${part(name)}`);
export const cancel = (name) => call("POST", `/api/jobs/${part(name)}/cancel`);
export const discard = (name) => call("DELETE", `/api/jobs/${part(name)}`);
export const report = (name) => call("GET", file(name, "report.json"));
export const jobFile = (name) => call("GET", file(name, "job.json"));
export const file = (name, path) => `/api/jobs/${part(name)}/files/${path}`;
export const zip = (name) => `/api/jobs/${part(name)}/zip`;
export const modelView = (name) => `/api/models/${part(name)}/view`;
