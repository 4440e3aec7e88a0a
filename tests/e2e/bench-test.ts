import { test as base } from "@playwright/test";
import { BenchLink } from "./bench-link.ts";
import { type BenchProcess, startBench } from "./bench-process.ts";

/** A bench with the workshop's board, and a second screen at it without a page. */
export interface Workshop {
  running: BenchProcess;
  link: BenchLink;
}

/**
 * What every check here is made with: `workshop` is a bench that is locked, in English and usual letters, its board
 * clear. One process serves all that ask for it, one after the other.
 */
export const test = base.extend<{ workshop: Workshop }, { keptWorkshop: Workshop }>({
  keptWorkshop: [
    // eslint-disable-next-line no-empty-pattern -- Playwright reads from the pattern what a fixture needs: nothing
    async ({}, use) => {
      const running = await startBench({ board: "workshop" });
      const link = new BenchLink(running.address);
      await use({ running, link });
      link.close();
      await running.stop();
    },
    { scope: "worker" },
  ],
  workshop: async ({ keptWorkshop }, use) => {
    await keptWorkshop.link.reset();
    await use(keptWorkshop);
  },
});
