import { existsSync, readdirSync, readFileSync } from "node:fs";
import { defineConfig, type Plugin } from "vite";

const commands = readdirSync(new URL("server/commands", import.meta.url))
  .filter((file) => file.endsWith(".ts"))
  .map((file): [string, string] => [`commands/${file.slice(0, -3)}`, `server/commands/${file}`]);

// Commands that measure or photograph the program stand with the checks.
const tools = Object.entries({
  "commands/speed": "tests/speed/run.ts",
  "commands/screenshots": "tests/e2e/take-screenshots.ts",
  "commands/show-pictures": "tests/e2e/take-show-pictures.ts",
}).filter(([, file]) => existsSync(file));

/** What the server sends and takes, by the table of kinds of files; the thousands it never meets would be held in memory twice. */
const fileTypes = new Set([
  "application/gzip",
  "application/json",
  "application/octet-stream",
  "application/pdf",
  "application/x-www-form-urlencoded",
  "application/zip",
  "font/woff",
  "font/woff2",
  "image/png",
  "image/svg+xml",
  "text/css",
  "text/csv",
  "text/html",
  "text/javascript",
  "text/plain",
]);

const fewFileTypes: Plugin = {
  name: "few-file-types",
  enforce: "pre",
  load(id) {
    if (!id.endsWith("/mime-db/db.json")) return undefined;
    const types = JSON.parse(readFileSync(id, "utf8")) as Record<string, object>;
    const kept = Object.fromEntries(Object.entries(types).filter(([type]) => fileTypes.has(type)));
    return JSON.stringify(kept);
  },
};

const { optionalDependencies } = JSON.parse(
  readFileSync(new URL("package.json", import.meta.url), "utf8"),
) as { optionalDependencies: Record<string, string> };
const optional = Object.keys(optionalDependencies);

/** The server, the scanner child and every command, each bundled for Node: server/ and hardware/ to dist/server. */
export default defineConfig({
  plugins: [fewFileTypes],
  ssr: {
    noExternal: true,
    external: [
      "better-sqlite3",
      "pg",
      "@node-rs/argon2",
      "pdfkit",
      "fontkit",
      ...optional,
      "@playwright/test",
    ],
  },
  build: {
    ssr: true,
    outDir: "dist/server",
    emptyOutDir: true,
    target: "node20",
    reportCompressedSize: false,
    // Names are not needed at run time, and the memory they take is.
    minify: true,
    rolldownOptions: {
      // What could not be installed on this machine is not found, and is left to the program all the same.
      external: optional,
      input: {
        main: "server/main.ts",
        launch: "server/launch.ts",
        "scanner-child": "hardware/scan/scanner-child.ts",
        "records-worker": "server/keeping/records-worker.ts",
        ...Object.fromEntries(commands),
        ...Object.fromEntries(tools),
      },
    },
  },
});
