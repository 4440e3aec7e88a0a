import { defineConfig } from "@playwright/test";
import { browserOptions } from "./tests/browser-options.ts";

export default defineConfig({
  testDir: "tests/e2e",
  outputDir: ".results/playwright",
  workers: 1,
  forbidOnly: true,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [["list"], ["json", { outputFile: ".results/playwright.json" }]],
  use: {
    trace: "retain-on-failure",
    hasTouch: true,
    actionTimeout: 10_000,
    launchOptions: browserOptions,
  },
});
