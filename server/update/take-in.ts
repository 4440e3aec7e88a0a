import { existsSync, mkdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { UpdateError } from "./update-error.ts";
import { isNewer, readManifest, sha256Of, type UpdateManifest } from "./update-manifest.ts";

export interface TakeInParts {
  /** Where the update lies, such as on a stick. */
  from: string;
  /** The key of whoever publishes updates, PEM. */
  publicKey: string;
  /** The folder it is taken into; made anew. */
  into: string;
  /** The version that runs, its packages and what they are locked to. */
  version: string;
  modules: string;
  lock: string;
  say: (doneCount: number, totalCount: number) => void;
}

/**
 * Takes an update in from where it lies: only what its signed manifest names, each file held to its hash as it is copied.
 *
 * @throws UpdateError; then nothing is left of it.
 */
export function takeIn(parts: TakeInParts): UpdateManifest {
  const { from, publicKey, into, version } = parts;
  const manifest = readManifest(from, publicKey);
  if (!isNewer(manifest.version, version))
    throw new UpdateError("not-newer", `${manifest.version}, ${version}`);
  rmSync(into, { recursive: true, force: true });
  try {
    copyFiles(manifest, parts);
    seePackages(parts);
    return manifest;
  } catch (error) {
    rmSync(into, { recursive: true, force: true });
    throw error;
  }
}

function copyFiles({ files }: UpdateManifest, { from, into, say }: TakeInParts): void {
  files.forEach(({ path, sha256, bytes }, at) => {
    const found = readFile(join(from, path), bytes);
    if (!found || sha256Of(found) !== sha256) throw new UpdateError("damaged-file", path);
    const target = join(into, path);
    mkdirSync(dirname(target), { recursive: true, mode: 0o700 });
    writeFileSync(target, found, { mode: 0o600 });
    say(at + 1, files.length);
  });
}

function readFile(path: string, bytes: number): Buffer | undefined {
  try {
    return statSync(path).size === bytes ? readFileSync(path) : undefined;
  } catch {
    return undefined;
  }
}

/** The packages of a lock, without the project's own entry, whose version is another with each update. */
function packagesOf(text: string): string {
  const { packages = {} } = JSON.parse(text) as { packages?: Record<string, unknown> };
  const { "": _own, ...others } = packages;
  return JSON.stringify(others);
}

/** An update without packages of its own works with those that are installed, where they are the ones it was made for. */
function seePackages({ into, modules, lock }: TakeInParts): void {
  if (existsSync(join(into, "node_modules"))) return;
  const own = join(into, "package-lock.json");
  const isSame =
    existsSync(own) && packagesOf(readFileSync(own, "utf8")) === packagesOf(readFileSync(lock, "utf8"));
  if (!isSame) throw new UpdateError("other-packages", "package-lock.json");
  symlinkSync(modules, join(into, "node_modules"));
}
