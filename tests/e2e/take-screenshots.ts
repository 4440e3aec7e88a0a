import { chromium } from "@playwright/test";
import { mkdirSync } from "node:fs";
import { browserOptions } from "../browser-options.ts";
import { BenchLink } from "./bench-link.ts";
import { startBench } from "./bench-process.ts";
import { BenchScreen, panels } from "./bench-screen.ts";

const folder = "kiosk/screenshots";
const coresInMs = 500;

/** The ring of three socket outlets and its two spurs, and what makes the second a spur off the first. */
const ring: [string, string][] = [
  ["way-1", "socket-1"],
  ["socket-1", "socket-2"],
  ["socket-2", "socket-3"],
  ["socket-3", "way-1"],
  ["socket-1", "socket-5"],
];
const rightSpur: [string, string] = ["socket-2", "socket-6"];
const spurOffSpur: [string, string] = ["socket-5", "socket-6"];

/** Wires by touch on the running program and writes the pictures of the README. Exit code 0; throws on a miss. */
export async function run(): Promise<number> {
  mkdirSync(folder, { recursive: true });
  const browser = await chromium.launch(browserOptions);
  for (const { name, ...viewport } of panels) {
    const running = await startBench({ board: "workshop" });
    const context = await browser.newContext({ viewport, hasTouch: true });
    const bench = new BenchScreen(await context.newPage());
    const link = new BenchLink(running.address);
    let wiredCount = 0;
    const wire = async ([from, to]: [string, string]): Promise<void> => {
      await bench.wireByDrag(from, to);
      wiredCount += 1;
      await bench.expectCableCount(wiredCount);
    };
    const take = async (what: string): Promise<void> => {
      const path = `${folder}/${what}-${name}.png`;
      // The pins of a cable make contact one after the other, as by hand; what is not on the disk yet is dashed.
      await bench.page.waitForTimeout(coresInMs);
      await link.seen(({ attempt }) => attempt?.cables.every(({ isUnsaved }) => isUnsaved !== true) ?? true);
      await bench.page.screenshot({ path });
      process.stdout.write(`${path}\n`);
    };

    await bench.openTask(running.address, "ring-and-spurs");
    await bench.takeCable(2.5);
    for (const cable of ring) await wire(cable);
    await wire(rightSpur);
    await take("wire");
    await bench.get("step-test").tap();
    await bench.get("meter-dial-low-ohms").tap();
    await take("test");
    await bench.get("step-wire").tap();
    await bench.get("key-face").tap();
    await bench.get("station-way-2").waitFor();
    await take("board");
    await bench.get("key-face").tap();
    await bench.get("key-undo").tap();
    wiredCount -= 1;
    await bench.expectCableCount(wiredCount);
    await wire(spurOffSpur);
    await bench.check();
    await bench.get("finding-spur-on-spur").tap();
    await bench.get("note-finding-spur-on-spur").waitFor();
    await take("finding");
    link.close();
    await context.close();
    await running.stop();
  }
  await browser.close();
  return 0;
}
