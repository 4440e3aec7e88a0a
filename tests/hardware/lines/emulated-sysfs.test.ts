import { execFile, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { describe, expect, it } from "vitest";

/**
 * The makers for a real board, driven by the real onoff package, against an emulated /sys/class/gpio. All that
 * runs in a mount namespace, so the checks themselves are the files beside the emulation (`fuse/*.inside.ts`),
 * run there by a vitest of their own; each of their claims is a test here.
 */
const fuseFolder = join(import.meta.dirname, "../fuse");
const projectFolder = join(import.meta.dirname, "../../..");
const mostMinutes = 3;

interface Claim {
  fullName: string;
  status: string;
  failureMessages: string[];
}

/** Why this machine cannot emulate the pins, or undefined where it can. */
function obstacle(): string | undefined {
  const works = (command: string, ...args: string[]) => spawnSync(command, args).status === 0;
  if (process.getuid?.() !== 0) return "it needs root to mount a file system over /sys/class/gpio";
  if (!existsSync("/dev/fuse")) return "this machine has no /dev/fuse";
  if (!works("unshare", "-m", "-p", "-f", "true")) return "`unshare -m` is not permitted here";
  if (!works("gcc", "--version") || !works("pkg-config", "fuse3"))
    return "it needs the Debian packages gcc, pkg-config, libfuse3-dev and fuse3";
  try {
    createRequire(import.meta.url).resolve("onoff");
  } catch {
    return "the optional package onoff is not installed";
  }
  return undefined;
}

async function runInside(): Promise<Claim[]> {
  const folder = mkdtempSync(join(tmpdir(), "emulated-gpio-"));
  const [program, results] = [join(folder, "gpiofs"), join(folder, "results.json")];
  try {
    const run = promisify(execFile);
    const flags = (await run("pkg-config", ["--cflags", "--libs", "fuse3"])).stdout.trim().split(/\s+/);
    const sources = ["gpiofs.c", "board-model.c"].map((name) => join(fuseFolder, name));
    await run("gcc", ["-O2", "-Wall", "-Wextra", "-Werror", "-o", program, ...sources, ...flags]);
    const vitest = join(projectFolder, "node_modules/vitest/vitest.mjs");
    // Exit status 1 stands for failed claims, which the results name.
    await run(
      "unshare",
      [
        ...["-m", "-p", "-f", "--kill-child", "--mount-proc", join(fuseFolder, "namespace.sh"), program],
        ...[process.execPath, vitest, "run", "--config", join(fuseFolder, "vitest.config.ts")],
        ...["--reporter=json", `--outputFile=${results}`],
      ],
      { cwd: projectFolder, timeout: mostMinutes * 60_000, killSignal: "SIGKILL" },
    ).catch((error: unknown) => {
      if (!existsSync(results)) throw error;
    });
    const { testResults } = JSON.parse(readFileSync(results, "utf8")) as {
      testResults: { name: string; message: string; assertionResults: Claim[] }[];
    };
    return testResults.flatMap(({ name, message, assertionResults }) =>
      assertionResults.length > 0
        ? assertionResults
        : [{ fullName: `${name} loads`, status: "failed", failureMessages: [message] }],
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const reason = obstacle();
if (reason !== undefined) {
  const sentence = `The pins of a real board are not checked here: ${reason}.`;
  if (process.env["CI"] === undefined) console.warn(sentence);
  it.skipIf(process.env["CI"] === undefined)("the pins of a real board are emulated here", () => {
    expect.fail(sentence);
  });
} else {
  const claims = await runInside();
  describe("on an emulated sysfs, through onoff", () => {
    it("every file of claims was run", () => {
      expect(claims.length).toBeGreaterThan(100);
    });
    for (const { fullName, status, failureMessages } of claims)
      it(fullName, () => {
        expect(failureMessages.join("\n")).toBe("");
        expect(status).toBe("passed");
      });
  });
}
