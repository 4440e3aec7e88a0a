import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Notice } from "./notices.ts";

interface Locked {
  version: string;
  license?: string;
  dev?: boolean;
  devOptional?: boolean;
  optional?: boolean;
  cpu?: string[];
  dependencies?: Record<string, string>;
}
type Lock = Record<string, Locked>;

const inModules = "node_modules/";
const nameOf = (path: string): string => path.slice(path.lastIndexOf(inModules) + inModules.length);

const filesUnder = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesUnder(join(folder, entry.name)) : [join(folder, entry.name)],
  );

/** The packages that a file of the bench screen or of what both sides share is built with. */
const packagesOf = (text: string): string[] =>
  [
    ...text.matchAll(/^\s*import\s+[^;]*?from\s+"([^"]+)"/gm),
    ...text.matchAll(/import\(\s*"([^"]+)"\s*\)/g),
    ...text.matchAll(/^\s*@?import\s+"([^"]+)"/gm),
  ].flatMap(([, target = ""]) => {
    const [first = "", second = ""] = target.split("/");
    if (first.startsWith(".") || first.startsWith("node:")) return [];
    return [first.startsWith("@") ? `${first}/${second}` : first];
  });

/** Where a package that another one needs lies in the lock: beside its files, or above them. */
function placeOf(lock: Lock, name: string, from: string): string | undefined {
  for (let folder = from; ;) {
    const path = `${folder === "" ? "" : `${folder}/`}${inModules}${name}`;
    if (lock[path]) return path;
    if (folder === "") return undefined;
    const above = folder.lastIndexOf(`/${inModules}`);
    folder = above < 0 ? "" : folder.slice(0, above);
  }
}

/** A package and all it needs. */
function withNeeds(lock: Lock, path: string, known: Set<string>): void {
  if (known.has(path)) return;
  known.add(path);
  for (const name of Object.keys(lock[path]?.dependencies ?? {})) {
    const place = placeOf(lock, name, path);
    if (place !== undefined) withNeeds(lock, place, known);
  }
}

/** The licence a package names itself, where the lock does not have it. */
const licenceIn = (folder: string): string => {
  const { license, licenses } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as {
    license?: string;
    licenses?: { type: string }[];
  };
  return license ?? licenses?.map(({ type }) => type).join(" OR ") ?? "";
};

/** The text of a package's licence; empty where it brings none. */
function licenceText(folder: string): string {
  const file = readdirSync(folder)
    .sort()
    .find((name) => /^(licen[cs]e|copying)/i.test(name));
  return file === undefined ? "" : readFileSync(join(folder, file), "utf8").replaceAll("\r\n", "\n").trim();
}

/** The licence that a text says it is, where a package names none. */
const licenceOf = (text: string): string => (text.startsWith("MIT License") ? "MIT" : "");

/**
 * The notices of all packages that go out with the program, by the lock and the packages that are installed: those the
 * server runs with, and those the screens are built of. Parts of a package for one kind of machine are told with it. An
 * optional package that could not be installed on this machine is told as it was before.
 *
 * @param before the notices as they are
 * @throws Error naming a package that the lock has and the folder has not.
 */
export function installedNotices(root: string, before: readonly Notice[]): Notice[] {
  const { packages: lock } = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8")) as {
    packages: Lock;
  };
  const paths = new Set(
    Object.entries(lock)
      .filter(([path, { dev, devOptional, cpu }]) => path !== "" && !dev && !devOptional && !cpu)
      .map(([path]) => path),
  );
  const sources = ["kiosk", "shared"]
    .flatMap((folder) => filesUnder(join(root, folder)))
    .filter((file) => /\.(ts|svelte|css)$/.test(file));
  for (const name of new Set(sources.flatMap((file) => packagesOf(readFileSync(file, "utf8"))))) {
    const place = placeOf(lock, name, "");
    if (place !== undefined) withNeeds(lock, place, paths);
  }
  const notices = new Map<string, Notice>();
  for (const path of paths) {
    const { version = "", license, optional = false } = lock[path] ?? {};
    const folder = join(root, path);
    const name = nameOf(path);
    if (!existsSync(folder)) {
      const known = before.find((notice) => notice.name === name && notice.version === version);
      if (!optional || !known) throw new Error(`${path} is not installed`);
      notices.set(`${name} ${version}`, known);
      continue;
    }
    const text = licenceText(folder);
    const licence = (license ?? licenceIn(folder)) || licenceOf(text);
    notices.set(`${name} ${version}`, { name, version, licence, text });
  }
  return [...notices.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, notice]) => notice);
}
