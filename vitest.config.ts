import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/{shared,hardware,server,reference,faults}/**/*.test.ts"],
    environment: "node",
    testTimeout: 60_000,
  },
});
