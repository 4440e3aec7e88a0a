import { mkdtempSync, rmSync } from "node:fs";
import { basename, join } from "node:path";
import { build } from "vite";

const external = ["better-sqlite3", "onoff", "node-libgpiod"];

/**
 * Bundles a program as the server is bundled, inside the project, where its native packages are found. Gives its
 * path and what removes it.
 */
export async function bundle(entry: string): Promise<{ path: string; remove: () => void }> {
  const outDir = mkdtempSync(join(process.cwd(), "node_modules/.bundle-"));
  await build({
    configFile: false,
    logLevel: "error",
    ssr: { noExternal: true, external },
    // What could not be installed on this machine is not found, and is left to the program all the same.
    build: { ssr: entry, outDir, target: "node20", rolldownOptions: { external } },
  });
  return {
    path: join(outDir, basename(entry).replace(/\.ts$/, ".js")),
    remove: () => rmSync(outDir, { recursive: true, force: true }),
  };
}
