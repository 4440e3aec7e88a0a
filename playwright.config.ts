import { availableParallelism } from "node:os";
import { defineConfig } from "@playwright/test";
import { isWhole } from "./tests/breadth.ts";
import { browserOptions } from "./tests/browser-options.ts";

/** Sweeps over screens, and goes of those around the bench: where the run is whole. `@sweep` marks single ones. */
const wholeOnly = ["all-screens", "desk-keep", "lead", "prepare", "show"].map(
  (name) => `**/e2e/${name}.spec.ts`,
);

export default defineConfig({
  testDir: "tests/e2e",
  testIgnore: isWhole ? [] : wholeOnly,
  ...(isWhole ? {} : { grepInvert: /@sweep/ }),
  outputDir: ".results/playwright",
  // One more than the cores of a small machine: a go waits a third of its time for frames and answers. Few goes do not
  // earn the browser of a third.
  workers: Math.min(availableParallelism() + 1, isWhole ? 3 : 2),
  forbidOnly: true,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [["list"], ["json", { outputFile: ".results/playwright.json" }]],
  use: {
    // A trace costs a third of the time; for a failure that puzzles: npx playwright test --trace retain-on-failure.
    trace: "off",
    hasTouch: true,
    actionTimeout: 10_000,
    launchOptions: browserOptions,
  },
});
