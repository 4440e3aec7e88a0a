import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

export const setupFolder = join(import.meta.dirname, "../../../hardware/pi-setup");

/** Why no Debian root can be made here, or undefined where it can. */
export function rootObstacle(): string | undefined {
  if (process.getuid?.() !== 0) return "it needs root to make a Debian system in a folder";
  const wanted = ["debootstrap", "systemd-analyze", "systemd-sysusers", "userdel"];
  const missing = wanted.filter((program) => spawnSync("sh", ["-c", `command -v ${program}`]).status !== 0);
  return missing.length === 0 ? undefined : `these programs are missing: ${missing.join(", ")}`;
}

/** A folder with a fresh Debian system of this machine's release, and the boot files of a Raspberry Pi. */
export function freshPiRoot(): string {
  const folder = mkdtempSync(join(tmpdir(), "pi-root-"));
  const codename = /^VERSION_CODENAME=(.+)$/m.exec(readFileSync("/etc/os-release", "utf8"))?.[1] ?? "stable";
  const root = join(folder, "root");
  execFileSync(join(import.meta.dirname, "base-system.sh"), [codename, root], {
    stdio: ["ignore", "ignore", "pipe"],
  });
  const boot = join(root, "boot/firmware");
  mkdirSync(boot, { recursive: true });
  // The last line is left open, as some editors leave it.
  writeFileSync(join(boot, "config.txt"), "dtparam=audio=on\n[pi4]\narm_boost=1");
  writeFileSync(join(boot, "cmdline.txt"), "console=tty1 root=PARTUUID=0 rootfstype=ext4 rootwait\n");
  return root;
}

/** A folder that looks like a built project, with a server of our choice. */
export function builtProject(mainJs: string, board: unknown): string {
  const folder = mkdtempSync(join(tmpdir(), "built-"));
  const put = (path: string, text: string): void => {
    mkdirSync(join(folder, dirname(path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  };
  put("dist/server/launch.js", mainJs);
  put("package.json", '{ "name": "spurwise", "type": "module" }\n');
  put("hardware/boards/bench.json", JSON.stringify(board));
  execFileSync("cp", ["-r", setupFolder, join(folder, "hardware")]);
  return folder;
}

/** Runs the set-up script on a root and gives what it said; throws where it fails. */
export function setUp(root: string, ...options: string[]): string {
  return execFileSync(join(setupFolder, "setup.sh"), ["--root", root, ...options], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "pipe"],
  });
}

/** Every path under a root with what `find -printf` says of it. */
function listing(root: string, format: string): Map<string, string> {
  const text = execFileSync("find", [root, "-mindepth", "1", "-printf", `%P\t${format}\n`], {
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  return new Map(
    text
      .trimEnd()
      .split("\n")
      .map((line) => line.split("\t") as [string, string]),
  );
}

/** What shows that a file was touched, even where its content is as before. */
export const touchMarks = (root: string): Map<string, string> => listing(root, "%y %m %i %C@ %l");

/** Backup copies that the account tools keep, and their lock; they are not part of the set-up. */
const accountToolsOwn = /^etc\/(passwd|group|shadow|gshadow)-$|^etc\/\.pwd\.lock$/;

/** Kind, mode, owner and size of everything, and the content of all that a set-up could change. */
export function contents(root: string): Map<string, string> {
  const all = listing(root, "%y %m %U:%G %l");
  for (const [path, facts] of all) {
    if (accountToolsOwn.test(path)) all.delete(path);
    else if (facts.startsWith("f") && /^(etc|boot|opt|var|srv|root)\//.test(path))
      all.set(path, `${facts} ${readFileSync(join(root, path), "latin1")}`);
  }
  return all;
}

/** Paths that are not the same in both. */
export const differing = (a: Map<string, string>, b: Map<string, string>): string[] =>
  [...new Set([...a.keys(), ...b.keys()])].filter((path) => a.get(path) !== b.get(path)).sort();

/** The file under the root, or undefined. */
export const fileIn = (root: string, path: string): string | undefined =>
  existsSync(join(root, path)) ? readFileSync(join(root, path), "utf8") : undefined;
