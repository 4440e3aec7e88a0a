import { existsSync, readFileSync } from "node:fs";
import { dirname, isAbsolute, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

/** The project's own folder, found upwards from this file, wherever it was bundled to. */
const findRoot = (): string => {
  const start = dirname(fileURLToPath(import.meta.url));
  for (let folder = start; ; folder = dirname(folder)) {
    const manifest = join(folder, "package.json");
    if (existsSync(manifest) && readFileSync(manifest, "utf8").includes('"name": "spurwise"')) return folder;
    if (dirname(folder) === folder) return start;
  }
};

const root = findRoot();

/** Every folder and file the program uses; no other file makes a path of its own. */
export const folders = {
  root,
  boards: join(root, "hardware/boards"),
  scenarios: join(root, "scenarios"),
  kiosk: join(root, "dist/kiosk"),
  modules: join(root, "node_modules"),
  scannerChild: join(root, "dist/server/scanner-child.js"),
  recordsWorker: join(root, "dist/server/records-worker.js"),
  manifest: join(root, "package.json"),
  lock: join(root, "package-lock.json"),
  notices: join(root, "server/public-text/notices.json"),
} as const;

/** Where the bench keeps its data: as asked, from the project's folder, or `.data` in it. */
export const dataFolder = (asked: string | undefined): string =>
  asked === undefined || asked === ""
    ? join(root, ".data")
    : isAbsolute(asked)
      ? asked
      : resolve(root, asked);

/** The file of the log in a data folder. */
export const logFile = (data: string): string => join(data, "spurwise.db");
