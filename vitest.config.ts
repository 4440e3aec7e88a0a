import { svelte } from "@sveltejs/vite-plugin-svelte";
import { playwright } from "@vitest/browser-playwright";
import { existsSync } from "node:fs";
import { defineConfig } from "vitest/config";
import { browserOptions } from "./tests/browser-options.ts";

const browser = {
  extends: true as const,
  plugins: [svelte()],
  test: {
    name: "browser",
    include: ["tests/kiosk/**/*.svelte.test.ts"],
    browser: {
      enabled: true,
      headless: true,
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

export default defineConfig({
  test: {
    env: { TEST_NEW_SEED: process.env["TEST_NEW_SEED"] },
    testTimeout: 60_000,
    hookTimeout: 120_000,
    projects: [
      {
        extends: true,
        test: {
          name: "node",
          environment: "node",
          setupFiles: ["tests/repeatable.ts"],
          include: ["tests/{shared,hardware,server,kiosk,reference,faults}/**/*.test.ts"],
          exclude: ["tests/kiosk/**/*.svelte.test.ts"],
        },
      },
      // Component checks need Chromium; the test command installs it, or says that it is not there.
      ...(existsSync(browserOptions.executablePath) ? [browser] : []),
    ],
  },
});
