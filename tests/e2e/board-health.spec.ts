import { expect, type Page } from "@playwright/test";
import { type BenchOptions, type BenchProcess, startBench } from "./bench-process.ts";
import { BenchScreen } from "./bench-screen.ts";
import { test } from "./bench-test.ts";

test.use({ viewport: { width: 800, height: 480 } });

let running: BenchProcess;
test.afterEach(() => running.stop());

/** A bench with its screen at the sign-in. */
const benchOf = async (page: Page, options: BenchOptions): Promise<BenchScreen> => {
  running = await startBench(options);
  const bench = new BenchScreen(page);
  await page.goto(running.address);
  await bench.get("screen-sign-in").waitFor();
  return bench;
};

const openHealth = async (bench: BenchScreen): Promise<void> => {
  await bench.get("key-menu").tap();
  await bench.get("key-board-health").tap();
};

const choose = async (bench: BenchScreen, end: "first" | "second", entry: string): Promise<void> => {
  await bench.get(`key-lead-${end}`).tap();
  await bench.get(`key-pick-${entry.slice(0, entry.indexOf("."))}`).tap();
  await bench.get("dialog-health").getByTestId(`entry-${entry}`).tap();
};

test.describe("the health of the workshop board", () => {
  test("finds nothing on an empty board that is well", { tag: "@sweep" }, async ({ page }) => {
    const bench = await benchOf(page, { board: "workshop" });
    await openHealth(bench);
    await bench.get("key-start-self-check").tap();
    await expect(bench.get("self-check-result")).toHaveText("Nothing is wrong. Every contact answers.");
    await expect(page.locator("[data-testid^='board-fault-']")).toHaveCount(0);
  });

  test("names broken contacts by station and contact, says what it means and who does what, in both languages", async ({
    page,
  }) => {
    const faults = "socket-1.a.L:stuck-low,plate-switch-2.s.SL:dead-input";
    const bench = await benchOf(page, { board: "workshop", faults });
    await openHealth(bench);
    await bench.get("key-start-self-check").tap();
    await expect(bench.get("self-check-result")).toHaveText("Wrong with the board: 2");
    const stuck = bench.get("board-fault-stuck-low");
    await expect(stuck).toContainText("Socket outlet 1 a L");
    await expect(stuck).toContainText("touches 0 V");
    await expect(stuck).toContainText("Trainer: pull the leads there one by one.");
    // Alone, a contact that does not hear looks like one that does not answer at all.
    await expect(bench.get("board-fault-no-answer")).toContainText("Switch 2 s SL");
    await bench.get("dialog-health").getByTestId("key-close").tap();
    await bench.get("key-menu").tap();
    await bench.get("key-language-pl").tap();
    await openHealth(bench);
    await expect(stuck).toContainText("Gniazdo 1 a L");
    await expect(stuck).toContainText("Instruktor: wyjmuj tam przewody po kolei.");
  });

  test(
    "walks along the board: a contact stands there when the probe is felt, and one less is left",
    { tag: "@sweep" },
    async ({ page }) => {
      const bench = await benchOf(page, { board: "workshop" });
      await openHealth(bench);
      await bench.get("key-tool-walk").tap();
      await bench.get("key-start-walk").tap();
      await expect(bench.get("walk-left")).toHaveText("Left to touch: 204");
      await bench.get("key-pick-socket-1").tap();
      await bench.get("key-touch-socket-1.a.L").tap();
      await expect(bench.get("walk-now")).toHaveText("Felt: Socket outlet 1 a L");
      await bench.get("key-touch-socket-1.front.E").tap();
      await expect(bench.get("walk-now")).toHaveText("Felt: Socket outlet 1 front E");
      await expect(bench.get("walk-left")).toHaveText("Left to touch: 202");
    },
  );

  test(
    "tests a lead: which core is open and which code is read; on a board in use the check waits",
    { tag: "@sweep" },
    async ({ page }) => {
      running = await startBench({ board: "workshop-coded" });
      const bench = new BenchScreen(page);
      await bench.openTask(running.address, "first-spur");
      await bench.takeCable(2.5);
      await bench.wireByTaps("way-1", "socket-1");
      await bench.expectCable("socket-1.a~way-1.a");
      await openHealth(bench);
      await bench.get("key-start-self-check").tap();
      await expect(bench.get("check-refusal")).toHaveText("Clear the board first.");
      await bench.get("key-tool-lead").tap();
      await choose(bench, "first", "way-1.a");
      await choose(bench, "second", "socket-1.a");
      await expect(bench.get("lead-result")).toHaveText("Every core is joined.");
      await expect(bench.get("lead-code-way-1.a")).toContainText("Code read: 3, which is 2.5 mm²");
      await bench.get("dialog-health").getByTestId("key-close").tap();

      await bench.pullLead("socket-1", "socket-1.a.E");
      await openHealth(bench);
      await bench.get("key-tool-lead").tap();
      await choose(bench, "first", "way-1.a");
      await choose(bench, "second", "socket-1.a");
      await expect(bench.get("lead-result")).toContainText("Not whole.");
      await expect(bench.get("lead-core-earth")).toContainText("open");
      await expect(bench.get("lead-core-brown")).toContainText("joined");
      await expect(bench.get("lead-core-blue")).toContainText("joined");
    },
  );
});
