// Runs "npm ci" unless the pinned three is in node_modules already, so that rebuilds are quick and
// work without a network.
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";

const read = (file) => JSON.parse(readFileSync(new URL(file, import.meta.url), "utf8"));
const name = "node_modules/three";
const wanted = read("package-lock.json").packages[name].version;
const here = (file) => existsSync(new URL(file, import.meta.url));

if (!here(`${name}/build/three.module.min.js`) || read(`${name}/package.json`).version !== wanted) {
  const npm = spawnSync(
    "npm",
    ["ci", "--ignore-scripts", "--omit=optional", "--no-audit", "--no-fund"],
    { cwd: new URL(".", import.meta.url), stdio: "inherit", shell: process.platform === "win32" },
  );
  process.exit(npm.status ?? 1);
}
