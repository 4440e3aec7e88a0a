import { defineConfig } from "vitest/config";

/** What runs inside the namespace. Forks, never threads: onoff's native part does not survive a thread's end. */
export default defineConfig({
  test: {
    include: ["tests/hardware/fuse/*.inside.ts"],
    environment: "node",
    pool: "forks",
    // There is one emulated board: files take turns at it.
    fileParallelism: false,
    testTimeout: 60_000,
  },
});
