import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, rmSync } from "node:fs";
import { type PlaywrightSuite, slowestFiles, type VitestFile } from "./slowest-files.ts";

/** The browser of the checks. A machine that may not install it does with the whole of Chromium. */
const browser = "chromium-headless-shell";

/** A Debian package a check needs, and the file that says it is there. */
const debianPackages = [
  { name: browser, proof: `/usr/bin/${browser}` },
  { name: "ngspice", proof: "/usr/bin/ngspice" },
  { name: "postgresql", proof: "/usr/lib/postgresql" },
  { name: "libfuse3-dev", proof: "/usr/include/fuse3/fuse.h" },
  { name: "fuse3", proof: "/usr/bin/fusermount3" },
  { name: "gcc", proof: "/usr/bin/gcc" },
  { name: "libc6-dev", proof: "/usr/include/stdio.h" },
  { name: "pkg-config", proof: "/usr/bin/pkg-config" },
  { name: "shellcheck", proof: "/usr/bin/shellcheck" },
  { name: "systemd", proof: "/usr/bin/systemd-analyze" },
  { name: "systemd-container", proof: "/usr/bin/systemd-nspawn" },
  { name: "debootstrap", proof: "/usr/sbin/debootstrap" },
];

interface Tally {
  passed: number;
  failed: number;
  skipped: number;
  /** Why the runner's result cannot be trusted, where it cannot. */
  broken?: string;
}

const missingPackages = () =>
  debianPackages.filter(({ proof }) => !existsSync(proof)).map(({ name }) => name);

/** Installs the Debian packages the checks need when root; says in one sentence what is missing otherwise. */
const prepareMachine = (): string[] => {
  const missing = missingPackages();
  if (missing.length === 0) return [];
  if (process.getuid?.() === 0 && existsSync("/usr/bin/apt-get")) {
    process.stdout.write(`Spurwise: installing ${missing.join(", ")} from Debian's packages ...\n`);
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    spawnSync("apt-get", ["update", "-qq"], { stdio: "inherit", env });
    spawnSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...missing], {
      stdio: ["ignore", "ignore", "inherit"],
      env,
    });
  }
  const left = missingPackages();
  if (left.length > 0)
    process.stdout.write(
      `Spurwise: these Debian packages are not installed, and the checks that need them cannot run: ` +
        `${left.join(", ")}. As root: apt-get install ${left.join(" ")}\n`,
    );
  return left;
};

const nodeProgram = (script: string, args: string[]): number =>
  spawnSync(process.execPath, [script, ...args], { stdio: "inherit" }).status ?? 1;

const readReport = (file: string): unknown =>
  existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : undefined;

const vitestReport = ".results/vitest.json";
const playwrightReport = ".results/playwright.json";

const runVitest = (args: string[]): Tally => {
  const file = vitestReport;
  const status = nodeProgram("node_modules/vitest/vitest.mjs", [
    "run",
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${file}`,
    ...args,
  ]);
  const report = readReport(file) as
    | {
        numPassedTests: number;
        numFailedTests: number;
        numPendingTests: number;
        numTodoTests: number;
        success: boolean;
      }
    | undefined;
  if (!report) return { passed: 0, failed: 0, skipped: 0, broken: "vitest wrote no report" };
  const tally = {
    passed: report.numPassedTests,
    failed: report.numFailedTests,
    skipped: report.numPendingTests + report.numTodoTests,
  };
  return status !== 0 && tally.failed === 0 ? { ...tally, broken: `vitest ended with ${status}` } : tally;
};

const runPlaywright = (): Tally => {
  const file = playwrightReport;
  const status = nodeProgram("node_modules/@playwright/test/cli.js", ["test"]);
  const report = readReport(file) as
    | { stats: { expected: number; unexpected: number; flaky: number; skipped: number }; errors: unknown[] }
    | undefined;
  if (!report) return { passed: 0, failed: 0, skipped: 0, broken: "playwright wrote no report" };
  const { expected, unexpected, flaky, skipped } = report.stats;
  const tally = { passed: expected, failed: unexpected + flaky, skipped };
  return status !== 0 && tally.failed === 0 ? { ...tally, broken: `playwright ended with ${status}` } : tally;
};

/**
 * Runs every check, unit to browser, and ends with one line `N passed, N failed[, N skipped]`. Exit code 1 where
 * something failed, a runner broke or nothing passed; in CI also where something was skipped.
 */
export async function run(args: string[]): Promise<number> {
  process.stdout.write(`Spurwise: checks at TEST_DEPTH ${process.env["TEST_DEPTH"] ?? "1"}\n`);
  const left = prepareMachine();
  for (const file of [vitestReport, playwrightReport]) rmSync(file, { force: true });
  const tallies = [runVitest(args)];
  const hasBrowser = !left.includes(browser) || existsSync("/usr/bin/chromium");
  if (hasBrowser && args.length === 0) tallies.push(runPlaywright());
  const sum = (key: "passed" | "failed" | "skipped") =>
    tallies.reduce((total, tally) => total + tally[key], 0);
  const broken = tallies.flatMap(({ broken }) => broken ?? []);
  const browserLeftOut = hasBrowser ? 0 : 1;
  const skipped = sum("skipped") + browserLeftOut;
  const vitest = readReport(vitestReport) as { testResults: VitestFile[] } | undefined;
  const playwright = readReport(playwrightReport) as { suites: PlaywrightSuite[] } | undefined;
  process.stdout.write(`${slowestFiles(vitest?.testResults ?? [], playwright?.suites ?? [])}\n`);
  for (const reason of broken) process.stdout.write(`Spurwise: ${reason}\n`);
  process.stdout.write(
    `${sum("passed")} passed, ${sum("failed") + broken.length} failed${skipped > 0 ? `, ${skipped} skipped` : ""}\n`,
  );
  const isCi = process.env["CI"] !== undefined;
  return sum("failed") > 0 || broken.length > 0 || sum("passed") === 0 || (isCi && skipped > 0) ? 1 : 0;
}
