import { chromium } from "@playwright/test";
import { mkdirSync } from "node:fs";
import { sceneNames } from "../../shared/protocol/show-view.ts";
import { browserOptions } from "../browser-options.ts";
import { startBench } from "./bench-process.ts";

const folder = ".results/show-pictures";
const lastFrames = "2 1".split(" ");
const sizes = [
  [800, 480],
  [1280, 800],
  [480, 800],
] as const;

/** Lets the story go by at every panel and takes a picture of each idea as it ends. Exit code 0; throws on a miss. */
export async function run(): Promise<number> {
  mkdirSync(folder, { recursive: true });
  const browser = await chromium.launch(browserOptions);
  const running = await startBench({ board: "small", showSpeed: 3 });
  for (const [width, height] of sizes) {
    const context = await browser.newContext({ viewport: { width, height }, hasTouch: true });
    const page = await context.newPage();
    await page.goto(`${running.address}/show/`);
    for (const scene of sceneNames) {
      const last = lastFrames.map((at) => `[data-scene="${scene}"][data-frame="${at}"]`);
      await page.waitForSelector(scene === "shares" ? (last[1] ?? "") : (last[0] ?? ""), { timeout: 60_000 });
      const path = `${folder}/${scene}-${width}x${height}.png`;
      await page.screenshot({ path });
      process.stdout.write(`${path}\n`);
    }
    const take = async (what: string): Promise<void> => {
      await page.getByTestId(`show-${what}`).waitFor();
      const path = `${folder}/${what}-${width}x${height}.png`;
      await page.screenshot({ path });
      process.stdout.write(`${path}\n`);
    };
    await page.getByTestId("key-try").tap();
    await take("asked");
    await page.getByTestId("key-begin").tap();
    await page.getByTestId("show-left").waitFor();
    await take("challenge");
    await page.getByTestId("key-done").tap();
    await take("result");
    await page.getByTestId("key-story").tap();
    await context.close();
  }
  await running.stop();
  await browser.close();
  return 0;
}
