// Runs "npm ci" unless the pinned packages are in node_modules already, so that rebuilds are quick
// and work without a network.
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";

const read = (file) => JSON.parse(readFileSync(new URL(file, import.meta.url), "utf8"));
const packages = read("package-lock.json").packages;
const here = (file) => existsSync(new URL(file, import.meta.url));
const fresh = Object.keys(packages)
  .filter((name) => name !== "" && !packages[name].optional)
  .every(
    (name) =>
      here(`${name}/package.json`) &&
      read(`${name}/package.json`).version === packages[name].version,
  );

if (!fresh) {
  const npm = spawnSync(
    "npm",
    ["ci", "--ignore-scripts", "--omit=optional", "--no-audit", "--no-fund"],
    { cwd: new URL(".", import.meta.url), stdio: "inherit", shell: process.platform === "win32" },
  );
  process.exit(npm.status ?? 1);
}
