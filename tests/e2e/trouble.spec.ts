import { execFileSync } from "node:child_process";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import Database from "better-sqlite3";
import type { CableId } from "../../shared/board/ids.ts";
import type { Health } from "../../shared/protocol/socket-events.ts";
import { BenchLink } from "./bench-link.ts";
import { type BenchOptions, type BenchProcess, newDataFolder, startBench } from "./bench-process.ts";
import { BenchScreen } from "./bench-screen.ts";
import { test } from "./bench-test.ts";

test.use({ viewport: { width: 800, height: 480 } });

const ring = [
  ["way-1", "socket-1", "socket-1.a~way-1.a"],
  ["socket-1", "socket-2", "socket-1.b~socket-2.a"],
  ["socket-2", "way-1", "socket-2.b~way-1.b"],
  ["socket-1", "socket-3", "socket-1.c~socket-3.a"],
] as const;

let running: BenchProcess;
test.afterEach(() => running.stop());

/** A guest's bench on the small board with the first cables of the ring in. */
const wired = async (page: Page, options: BenchOptions, cableCount: number): Promise<BenchScreen> => {
  running = await startBench(options);
  const bench = new BenchScreen(page);
  await bench.openTask(running.address, "first-spur");
  await bench.takeCable(2.5);
  for (const [from, to, cable] of ring.slice(0, cableCount)) {
    await bench.wireByTaps(from, to);
    await bench.expectCable(cable);
  }
  return bench;
};

const expectRing = async (bench: BenchScreen, cableCount: number = ring.length): Promise<void> => {
  for (const [, , cable] of ring.slice(0, cableCount)) await bench.expectCable(cable);
};

test("a lost server is said at once, nothing can be touched meanwhile, and the work goes on by itself where it was", async ({
  page,
}) => {
  const dataFolder = newDataFolder();
  const bench = await wired(page, { dataFolder }, 4);
  await bench.check();
  await expect(page.getByText("The bench found no danger and nothing to fix.")).toBeVisible();
  await bench.get("key-close-card").tap();
  const port = Number(new URL(running.address).port);

  await running.cutPower();
  await expect(bench.get("link-lost")).toHaveText(
    "The screen has lost the bench. Nothing is lost: your work is kept. It goes on by itself.",
  );
  await expect(bench.get("link-lost")).toHaveRole("alert");
  // What was sensed last stays in view, but a touch does nothing.
  await expectRing(bench);
  await expect(page.locator(".work")).toHaveAttribute("inert");

  running = await startBench({ dataFolder, port });
  await expect(bench.get("link-lost")).toBeHidden();
  await expectRing(bench);
  await expect(page.locator(".work")).not.toHaveAttribute("inert");
  await bench.get("cable-socket-1.c~socket-3.a").tap();
  await bench.get("key-pull-cable").tap();
  await expect(bench.get("cable-socket-1.c~socket-3.a")).not.toBeAttached();
  await expectRing(bench, 3);
  rmSync(dataFolder, { recursive: true, force: true });
});

test("a scanner that dies is said, starts again by itself, and every lead is still in", async ({ page }) => {
  const bench = await wired(page, {}, 4);
  const pid = running.scannerPid();
  expect(pid).toBeDefined();
  // It is started again within a second: looked for in every frame, or a busy machine misses it.
  const said = page.waitForFunction(() => {
    const textAt = (id: string) => document.querySelector(`[data-testid="${id}"]`)?.textContent;
    const [banner, screen] = [textAt("banner-board-lost"), textAt("screen-no-board")];
    return banner && screen ? `${banner} ${screen}` : undefined;
  });
  process.kill(pid ?? 0, "SIGKILL");
  const words = await (await said).jsonValue();
  expect(words).toContain("The mock board does not answer.");
  expect(words).toContain("Your work is kept.");
  expect(words).toContain("It is started again.");
  await expect(bench.get("screen-wire")).toBeVisible();
  await expect(bench.get("banner-board-lost")).toBeHidden();
  await expectRing(bench);
  expect(running.scannerPid()).not.toBe(pid);
  await bench.check();
  await expect(page.getByText("The bench found no danger and nothing to fix.")).toBeVisible();
});

test("a board that is asked for and is not there is said with why and who can help, and is never simulated in its stead", async ({
  page,
}) => {
  running = await startBench({ lines: "gpio" });
  const bench = new BenchScreen(page);
  await page.goto(running.address);
  await expect(bench.get("screen-no-board")).toBeVisible();
  await expect(bench.get("say")).toHaveText("The mock board cannot be found.");
  await expect(bench.get("banner-board-lost")).toContainText("call the trainer");
  await expect(bench.get("screen-no-board")).toContainText(/pins|board that was set/);
  await expect(bench.get("screen-no-board")).toContainText("Call the technician.");
  await expect(bench.get("no-board-remedy")).toContainText("Technician: ");
  await expect(page.getByText("Simulated board")).toHaveCount(0);
  const health = (await (await page.request.get(`${running.address}/health`)).json()) as Health;
  expect(health).toMatchObject({ isReady: false, lines: "gpio", board: { state: "no-board" } });
  // A real bench says as well where its clock is not to be trusted.
  await expect(bench.get("banner-clock-unset")).toHaveCount(health.clock === "unsynced" ? 1 : 0);
});

test("a line that goes bad under a wired cable is said with its place; the bench then cannot say, and finds no new mistake", async ({
  page,
}) => {
  const dataFolder = newDataFolder();
  const bench = await wired(page, { dataFolder }, 4);
  const port = Number(new URL(running.address).port);
  await running.stop();
  running = await startBench({ dataFolder, port, faults: "socket-2.a.N:stuck-low" });
  await expect(bench.get("link-lost")).toBeHidden();

  const banner = bench.get("banner-board-fault");
  await expect(banner).toContainText(/socket outlet [12] [ab] n/i);
  await expect(banner).toContainText(/tell the trainer/i);
  await expect(bench.get("station-socket-2")).toHaveAccessibleName(/cannot be read/);
  await bench.get("key-face").tap();
  await bench.get("station-socket-2").tap();
  await expect(bench.get("contact-socket-2.a.N")).toHaveAccessibleName(/cannot read/);
  await bench.get("key-face").tap();
  await bench.check();
  await expect(bench.get("screen-wire").getByText("The bench cannot say")).toBeVisible();
  await expect(bench.findings()).toHaveCount(0);
  await expect(page.getByText("Nothing to put right.")).toHaveCount(0);
  await bench.get("step-hand-in").tap();
  await expect(bench.get("screen-hand-in")).toContainText("The bench cannot say");
  rmSync(dataFolder, { recursive: true, force: true });
});

/** Writes a file until nothing more fits beside it. */
const fill = (path: string): void => {
  for (let size = 1 << 20; size >= 512; size >>= 1)
    try {
      for (;;) writeFileSync(path, Buffer.alloc(size), { flag: "a" });
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "ENOSPC") throw error;
    }
};

test(
  "a full disk is said with who has to act, the work goes on when there is room again, and no lead or record is lost",
  { tag: "@sweep" },
  async ({ page }) => {
    // A disk of its own that is soon full; to mount it takes root, as the tests of the pins do.
    const dataFolder = newDataFolder();
    execFileSync("mount", ["-t", "tmpfs", "-o", "size=12m", "tmpfs", dataFolder]);
    try {
      const bench = await wired(page, { dataFolder }, 3);
      const filler = join(dataFolder, "filler");
      fill(filler);
      // The room that the log's own files still have is used up first: sizes said again and again.
      const link = new BenchLink(running.address);
      const subject = "socket-1.a~way-1.a" as CableId;
      const sayAgain = async (): Promise<string> => {
        try {
          for (const value of [1.5, 2.5]) await link.does("declare", { subject, key: "csaMm2", value });
          return "kept";
        } catch (error) {
          return (error as Error).message;
        }
      };
      await expect.poll(sayAgain, { timeout: 40_000, intervals: [0] }).toContain("disk-full");
      await expect(bench.get("banner-disk-full")).toHaveText(
        "The disk is full. Call the technician. Do not go on until it is mended.",
      );
      await expectRing(bench, 3);
      await bench.get("key-hint").tap();
      await expect(bench.get("refusal")).toContainText("The disk is full.");
      // How the screen is set is not lost: it holds at once, and is kept when there is room.
      await link.does("set-large", { isLarge: true });
      await expect(bench.get("banner-disk-full")).toBeVisible();
      link.close();

      rmSync(filler);
      await bench.wireByTaps("socket-1", "socket-3");
      await expect(bench.get("banner-disk-full")).toBeHidden({ timeout: 15_000 });
      await expectRing(bench);
      // A verdict is of a board at rest, whose last change is in the log.
      await bench.check();
      await expect(page.getByText("The bench found no danger and nothing to fix.")).toBeVisible();

      const port = Number(new URL(running.address).port);
      await running.cutPower();
      running = await startBench({ dataFolder, port });
      await expect(bench.get("link-lost")).toBeHidden();
      await expectRing(bench);
      await bench.get("key-menu").tap();
      await expect(bench.get("key-large")).toHaveText("Usual letters");
      await running.stop();
      const log = new Database(join(dataFolder, "spurwise.db"), { readonly: true });
      expect(log.pragma("integrity_check", { simple: true })).toBe("ok");
      log.close();
    } finally {
      await running.stop();
      execFileSync("umount", [dataFolder]);
      rmSync(dataFolder, { recursive: true, force: true });
    }
  },
);

test("a damaged record is said and kept as it is; practice goes on in a fresh one beside it", async ({
  page,
}) => {
  const dataFolder = newDataFolder();
  const file = join(dataFolder, "spurwise.db");
  writeFileSync(file, "This is no log. ".repeat(4096));
  const before = readFileSync(file);
  running = await startBench({ dataFolder });
  const bench = new BenchScreen(page);
  await page.goto(running.address);
  await expect(bench.get("banner-log-damaged")).toContainText(
    "Call the technician. Nothing was thrown away.",
  );
  await bench.get("key-guest").tap();
  await bench.get("scenario-first-spur").tap();
  await bench.get("key-practice").tap();
  await bench.get("screen-caution").waitFor();
  await running.stop();
  expect(readFileSync(file).equals(before)).toBe(true);
  rmSync(dataFolder, { recursive: true, force: true });
});
