import { availableParallelism } from "node:os";
import { defineConfig } from "@playwright/test";
import { browserOptions } from "./tests/browser-options.ts";

export default defineConfig({
  testDir: "tests/e2e",
  outputDir: ".results/playwright",
  // One more than the cores of a small machine: a go waits a third of its time for frames and answers.
  workers: Math.min(availableParallelism() + 1, 3),
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
