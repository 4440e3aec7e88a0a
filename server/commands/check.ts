import { spawn } from "node:child_process";
import { availableParallelism } from "node:os";

/** What has no test of its own: linters, formatting and types, the longest first. Each is one program of node_modules. */
const checks: [what: string, script: string, ...args: string[]][] = [
  ["linting", "node_modules/eslint/bin/eslint.js", "."],
  [
    "types",
    "node_modules/svelte-check/bin/svelte-check",
    "--tsconfig",
    "./tsconfig.json",
    "--fail-on-warnings",
  ],
  ["formatting", "node_modules/prettier/bin/prettier.cjs", "--check", "--log-level", "warn", "."],
  [
    "arrows between files",
    "node_modules/dependency-cruiser/bin/dependency-cruise.mjs",
    "--config",
    ".dependency-cruiser.cjs",
    "shared",
    "hardware",
    "server",
    "kiosk",
  ],
  ["what nothing uses", "node_modules/knip/bin/knip.js", "--no-progress"],
  ["types of shared/ without Node and DOM", "node_modules/typescript/bin/tsc", "-p", "shared/tsconfig.json"],
];

/** Runs one program without a screen; what it printed and whether all is well. */
const runQuietly = (script: string, args: string[]): Promise<{ printed: string; isWell: boolean }> =>
  new Promise((done) => {
    const pieces: Buffer[] = [];
    const child = spawn(process.execPath, [script, ...args], { stdio: ["ignore", "pipe", "pipe"] });
    for (const stream of [child.stdout, child.stderr])
      stream.on("data", (piece: Buffer) => void pieces.push(piece));
    child.on("close", (code) =>
      done({ printed: Buffer.concat(pieces).toString("utf8"), isWell: code === 0 }),
    );
  });

/** Runs the linters and type checks, one for each core at a time, and says which failed. Exit code 0 or 1. */
export async function run(): Promise<number> {
  const waiting = [...checks];
  const failed: string[] = [];
  const runWaiting = async (): Promise<void> => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const [what, script, ...args] = next;
      const { printed, isWell } = await runQuietly(script, args);
      process.stdout.write(`Spurwise: ${what} ...\n${printed}`);
      if (!isWell) failed.push(what);
    }
  };
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), 4) }, runWaiting));
  for (const what of failed) process.stdout.write(`Spurwise: ${what} failed, see above\n`);
  return failed.length > 0 ? 1 : 0;
}
