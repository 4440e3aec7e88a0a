import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync, readFileSync, rmSync } from "node:fs";
import { setPriority } from "node:os";
import { type PlaywrightSuite, slowestFiles, type VitestFile } from "./slowest-files.ts";
import { isWholeRun } from "./whole-run.ts";

/** The browser of the checks. A machine that may not install it does with the whole of Chromium. */
const browser = "chromium-headless-shell";

const isWhole = isWholeRun(process.env);

interface DebianPackage {
  name: string;
  /** The file that says it is there. */
  proof: string;
}

/** What the checks of a bench need. */
const packagesOfBench: DebianPackage[] = [
  { name: browser, proof: `/usr/bin/${browser}` },
  { name: "ngspice", proof: "/usr/bin/ngspice" },
];

/** What the checks of that around it need besides. */
const packagesAround: DebianPackage[] = [
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
  [...packagesOfBench, ...(isWhole ? packagesAround : [])]
    .filter(({ proof }) => !existsSync(proof))
    .map(({ name }) => name);

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

/** Runs a script of Node and gives what it ends with; with a niceness other programs come first. */
async function nodeProgram(script: string, args: string[], niceness = 0): Promise<number> {
  const child = spawn(process.execPath, [script, ...args], { stdio: "inherit" });
  if (niceness > 0 && child.pid !== undefined) setPriority(child.pid, niceness);
  const [status] = (await once(child, "close")) as [number | null];
  return status ?? 1;
}

/** A script of Node that runs beside another one: what it says is kept until it is let speak. */
function besideProgram(script: string, args: string[]): { letSpeak: () => void; status: Promise<number> } {
  const child = spawn(process.execPath, [script, ...args], { stdio: ["ignore", "pipe", "pipe"] });
  let kept: Buffer[] | undefined = [];
  const hear = (piece: Buffer): void => {
    if (kept) kept.push(piece);
    else process.stdout.write(piece);
  };
  child.stdout.on("data", hear);
  child.stderr.on("data", hear);
  return {
    letSpeak: () => {
      process.stdout.write(Buffer.concat(kept ?? []));
      kept = undefined;
    },
    status: once(child, "close").then(([status]) => (status as number | null) ?? 1),
  };
}

const readReport = (file: string): unknown =>
  existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : undefined;

const vitestReport = ".results/vitest.json";
const playwrightReport = ".results/playwright.json";

/** Clicks wait seconds at most, the checks of vitest a minute: beside a browser they take what it leaves. */
const besideBrowserNiceness = 5;

const runVitest = async (args: string[], niceness: number): Promise<Tally> => {
  const file = vitestReport;
  const status = await nodeProgram(
    "node_modules/vitest/vitest.mjs",
    ["run", "--reporter=default", "--reporter=json", `--outputFile.json=${file}`, ...args],
    niceness,
  );
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

const tallyOfPlaywright = (status: number): Tally => {
  const file = playwrightReport;
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
  const breadth = isWhole
    ? "all of them"
    : "a part of the sweeps, none of the long searches and of what stands around the bench; all: TEST_WHOLE=yes";
  process.stdout.write(`Spurwise: checks at TEST_DEPTH ${process.env["TEST_DEPTH"] ?? "1"}, ${breadth}\n`);
  const left = prepareMachine();
  for (const file of [vitestReport, playwrightReport]) rmSync(file, { force: true });
  const hasBrowser = !left.includes(browser) || existsSync("/usr/bin/chromium");
  // Side by side, for each waits for disks, frames and answers a part of its time.
  const beside =
    hasBrowser && args.length === 0
      ? besideProgram("node_modules/@playwright/test/cli.js", ["test"])
      : undefined;
  const tallies = [await runVitest(args, beside ? besideBrowserNiceness : 0)];
  if (beside) {
    beside.letSpeak();
    tallies.push(tallyOfPlaywright(await beside.status));
  }
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
