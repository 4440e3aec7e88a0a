import { existsSync, readdirSync } from "node:fs";
import { defineConfig } from "vite";

const commands = readdirSync(new URL("server/commands", import.meta.url))
  .filter((file) => file.endsWith(".ts"))
  .map((file): [string, string] => [`commands/${file.slice(0, -3)}`, `server/commands/${file}`]);

// Commands that measure or photograph the program stand with the checks.
const tools = Object.entries({
  "commands/speed": "tests/speed/run.ts",
  "commands/screenshots": "tests/e2e/take-screenshots.ts",
}).filter(([, file]) => existsSync(file));

/** The server, the scanner child and every command, each bundled for Node: server/ and hardware/ to dist/server. */
export default defineConfig({
  ssr: { noExternal: true, external: ["better-sqlite3", "@node-rs/argon2", "onoff", "@playwright/test"] },
  build: {
    ssr: true,
    outDir: "dist/server",
    emptyOutDir: true,
    target: "node20",
    reportCompressedSize: false,
    // Names are not needed at run time, and the memory they take is.
    minify: true,
    rolldownOptions: {
      input: {
        main: "server/main.ts",
        "scanner-child": "hardware/scan/scanner-child.ts",
        "records-worker": "server/keeping/records-worker.ts",
        ...Object.fromEntries(commands),
        ...Object.fromEntries(tools),
      },
    },
  },
});
