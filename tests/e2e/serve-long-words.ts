import { svelte } from "@sveltejs/vite-plugin-svelte";
import type { Page } from "@playwright/test";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, extname, join, resolve } from "node:path";
import { build } from "vite";

/** A bench screen built with every word 40 % longer. */
export interface LongWords {
  /** Gives a page this screen in place of the one that the bench at an address serves. */
  on: (page: Page, address: string) => Promise<void>;
  remove: () => void;
}

/** Builds the screen with the long words into a folder of its own. */
export const buildLongWords = async (): Promise<LongWords> => {
  const folder = mkdtempSync(join(tmpdir(), "spurwise-long-words-"));
  await build({
    configFile: false,
    root: resolve("tests/e2e/long-words"),
    plugins: [svelte()],
    logLevel: "warn",
    build: { outDir: folder, emptyOutDir: true, target: "es2023", reportCompressedSize: false },
  });
  const files = readdirSync(join(folder, "assets"));
  return {
    // The page itself stays the bench's own: to a page from elsewhere the browser refuses the bench's socket. Its script
    // brings the one with the long words under that one's name: under two names it would run twice.
    on: async (page, address) => {
      await page.route(`${address}/assets/**`, async (route) => {
        const asked = basename(new URL(route.request().url()).pathname);
        const index = files.find((name) => isIndex(name, extname(asked)));
        if (files.includes(asked)) await route.fulfill({ path: join(folder, "assets", asked) });
        else if (index === undefined || !asked.startsWith("bench-")) await route.continue();
        else if (extname(asked) === ".css") await route.fulfill({ path: join(folder, "assets", index) });
        else await route.fulfill({ contentType: "text/javascript", body: `import "./${index}";` });
      });
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
};

const isIndex = (name: string, extension: string): boolean =>
  name.startsWith("index-") && extname(name) === extension;
