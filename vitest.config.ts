import { svelte } from "@sveltejs/vite-plugin-svelte";
import { playwright } from "@vitest/browser-playwright";
import { existsSync } from "node:fs";
import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";
import { isWhole } from "./tests/breadth.ts";
import { browserOptions } from "./tests/browser-options.ts";
import { testDepth } from "./tests/depth.ts";
import type { Run } from "./tests/part-of.ts";

declare module "vitest" {
  interface ProvidedContext {
    run: Run;
  }
}

const browserTests = "tests/kiosk/**/*.svelte.test.ts";
/** They wait for a disk, a mirror, an engine or pins most of their time: something else can use the processor meanwhile. */
const waitingTests = [
  "tests/hardware/pi-setup/*.test.ts",
  "tests/hardware/lines/emulated-sysfs.test.ts",
  "tests/faults/pi-service.test.ts",
  "tests/server/centre/*.test.ts",
];
/**
 * Where the run is whole: those above, which need Debian's packages and root, and what else stands around the bench
 * (back-ups, updates, a lead bench) or is a long search (noise, floods, power cuts, damaged files).
 */
const wholeOnlyTests = [
  ...waitingTests,
  "tests/faults/*.test.ts",
  "tests/server/{keeping,lead,update}/*.test.ts",
  "tests/server/store/damaged-copies.test.ts",
  "tests/hardware/scan/noise.test.ts",
];

const browser = {
  extends: true as const,
  // As in the program that is built: what Svelte watches for while one writes takes a fifth more time.
  plugins: [svelte({ configFile: false, compilerOptions: { dev: false } })],
  resolve: { conditions: ["svelte", "module", "browser", "production"] },
  test: {
    name: "browser",
    setupFiles: ["tests/kiosk/clean-page.ts"],
    include: [browserTests],
    // First, with those that wait for other things: beside all checks its page waits for minutes until its packages
    // are made ready.
    sequence: { groupOrder: 0 },
    // A busy machine may take a while to lay a screen out.
    expect: { poll: { timeout: 10_000 } },
    browser: {
      enabled: true,
      headless: true,
      // Hundreds of modules are loaded once, not once a file; clean-page.ts leaves the next file nothing of the last.
      isolate: false,
      // On a fresh clone the page waits until its packages are made ready.
      connectTimeout: 300_000,
      screenshotFailures: false,
      provider: playwright({ launchOptions: browserOptions }),
      instances: [{ browser: "chromium" as const, viewport: { width: 800, height: 480 } }],
    },
  },
};

// Beside the fixed seed every run tries random cases that no run tried before; said here, so that they come back. Each
// project reads this file anew: the first one chooses.
if (process.env["TEST_NEW_SEED"] === undefined) {
  process.env["TEST_NEW_SEED"] = String(Math.floor(Math.random() * 2 ** 31));
  console.log(`New random cases by TEST_NEW_SEED=${process.env["TEST_NEW_SEED"]}`);
}

const node = {
  environment: "node" as const,
  // What one file has loaded serves the next; a test leaves nothing behind in its process.
  pool: "forks" as const,
  isolate: false,
  setupFiles: ["tests/repeatable.ts"],
};

export default defineConfig({
  test: {
    env: { TEST_NEW_SEED: process.env["TEST_NEW_SEED"] },
    // For what runs in a page, where there is no environment.
    provide: { run: { isWhole, seed: Number(process.env["TEST_NEW_SEED"]) } },
    // A deep run tries ten times the random cases in one check.
    testTimeout: 60_000 * testDepth,
    hookTimeout: 120_000,
    // One for each core: without this a machine with two runs one file after the other.
    maxWorkers: Math.min(availableParallelism(), 4),
    projects: [
      ...(isWhole
        ? [
            {
              extends: true as const,
              test: { ...node, name: "waiting", sequence: { groupOrder: 0 }, include: waitingTests },
            },
          ]
        : []),
      {
        extends: true,
        test: {
          ...node,
          name: "node",
          sequence: { groupOrder: 1 },
          include: ["tests/{shared,hardware,server,kiosk,reference,faults}/**/*.test.ts"],
          exclude: [browserTests, ...(isWhole ? waitingTests : wholeOnlyTests)],
        },
      },
      // Component checks need Chromium; the test command installs it, or says that it is not there.
      ...(existsSync(browserOptions.executablePath) ? [browser] : []),
    ],
  },
});
