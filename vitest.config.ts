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

export default defineConfig({
  test: {
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
