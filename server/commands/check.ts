import { spawnSync } from "node:child_process";

/** What has no test of its own: linters, formatting and types. Each is one program of node_modules. */
const checks: [what: string, script: string, ...args: string[]][] = [
  ["linting", "node_modules/eslint/bin/eslint.js", "."],
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
  ["formatting", "node_modules/prettier/bin/prettier.cjs", "--check", "--log-level", "warn", "."],
  [
    "types",
    "node_modules/svelte-check/bin/svelte-check",
    "--tsconfig",
    "./tsconfig.json",
    "--fail-on-warnings",
  ],
  ["types of shared/ without Node and DOM", "node_modules/typescript/bin/tsc", "-p", "shared/tsconfig.json"],
];

/** Runs the linters and type checks and says which failed. Exit code 0 or 1. */
export async function run(): Promise<number> {
  const failed = checks.filter(([what, script, ...args]) => {
    process.stdout.write(`Spurwise: ${what} ...\n`);
    return spawnSync(process.execPath, [script, ...args], { stdio: "inherit" }).status !== 0;
  });
  for (const [what] of failed) process.stdout.write(`Spurwise: ${what} failed, see above\n`);
  return failed.length > 0 ? 1 : 0;
}
