// The one script behind every npm command. It has no dependencies, so that it can install them: what is missing
// is installed, what is out of date is built, then the command runs.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = resolve(fileURLToPath(import.meta.url), "../../..");
process.chdir(root);

const readJson = (file) => (existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : undefined);

const fail = (sentence) => {
  process.stderr.write(`${sentence}\n`);
  process.exit(2);
};

/** Runs a program, its output shown; ends this one with a sentence when it fails. */
const must = (what, program, args) => {
  const { status, error } = spawnSync(program, args, { stdio: "inherit" });
  if (error || status !== 0)
    fail(`Spurwise: ${what} failed${error ? ` (${error.message})` : ""}. See above.`);
};

const abiFile = "node_modules/.spurwise-abi";

/** True where node_modules holds what package-lock.json names and was made for this Node. */
const isInstalled = () => {
  const wanted = readJson("package-lock.json")?.packages;
  const there = readJson("node_modules/.package-lock.json")?.packages;
  if (!wanted || !there || !existsSync(abiFile)) return false;
  if (readFileSync(abiFile, "utf8") !== process.versions.modules) return false;
  return Object.entries(wanted).every(
    ([path, { version, optional }]) =>
      path === "" || there[path]?.version === version || (optional && there[path] === undefined),
  );
};

const install = () => {
  if (isInstalled()) return;
  process.stdout.write("Spurwise: installing what is missing (once, about a minute) ...\n");
  must("the installation", "npm", ["ci", "--include=dev", "--include=optional", "--no-audit", "--no-fund"]);
  writeFileSync(abiFile, process.versions.modules);
};

const filesUnder = (path) =>
  statSync(path).isDirectory()
    ? readdirSync(path)
        .sort()
        .flatMap((name) => filesUnder(join(path, name)))
    : [path];

/** A mark of all sources: any file added, removed or changed changes it. */
const sourceMark = () => {
  const hash = createHash("sha256");
  const sources = ["shared", "server", "hardware", "kiosk", "scenarios", "tests/speed", "package-lock.json"];
  for (const file of [...sources, "vite.config.ts", "vite.server.config.ts"].flatMap(filesUnder)) {
    const { mtimeMs, size } = statSync(file);
    hash.update(`${file} ${mtimeMs} ${size}\n`);
  }
  return hash.digest("hex");
};

const build = () => {
  const stamp = "dist/.sources";
  const mark = sourceMark();
  if (existsSync(stamp) && readFileSync(stamp, "utf8") === mark) return;
  process.stdout.write("Spurwise: building ...\n");
  const vite = "node_modules/vite/bin/vite.js";
  must("building the bench screen", process.execPath, [vite, "build", "--logLevel", "warn"]);
  must("building the server", process.execPath, [
    vite,
    "build",
    "--config",
    "vite.server.config.ts",
    "--logLevel",
    "warn",
  ]);
  mkdirSync("dist", { recursive: true });
  writeFileSync(stamp, mark);
};

const [name, ...args] = process.argv.slice(2);

install();
build();
if (name === "build") process.exitCode = 0;
else if (name === "start") await import(pathToFileURL("dist/server/launch.js").href);
else {
  const commands = readdirSync("dist/server/commands").map((file) => file.replace(/\.js$/, ""));
  if (!commands.includes(name))
    fail(`Spurwise: there is no command "${name}". There are: build, start, ${commands.join(", ")}.`);
  const { run } = await import(pathToFileURL(`dist/server/commands/${name}.js`).href);
  process.exitCode = await run(args);
}
