import type { Page } from "@playwright/test";
import type axe from "axe-core";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/**
 * What axe finds wrong with a page, one sentence each; its rules for WCAG 2 A and AA and its good practices. It is put
 * into the page once: that takes longer than it does to look.
 */
export async function axeProblems(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axeSource);
  const { violations } = await page.evaluate(() =>
    (window as unknown as { axe: typeof axe }).axe.run(document, {
      resultTypes: ["violations"],
      // Of what it fetches beforehand its style sheets serve no rule that is on.
      preload: { assets: ["media"] },
    }),
  );
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`));
}
