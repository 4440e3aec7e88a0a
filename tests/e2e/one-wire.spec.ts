import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { expect } from "@playwright/test";
import Database from "better-sqlite3";
import { type BenchProcess, newDataFolder, startBench } from "./bench-process.ts";
import { BenchScreen, panelsOfRun } from "./bench-screen.ts";
import { test } from "./bench-test.ts";

const ringOfTwo = [
  "socket-1.a~way-1.a",
  "socket-1.b~socket-2.a",
  "socket-2.b~way-1.b",
  "socket-1.c~socket-3.a",
];

/** What `npm run verify` says of a log, with the joins of every sensed event. */
const verify = (dataFolder: string): string =>
  execFileSync(process.execPath, ["server/commands/run.mjs", "verify"], {
    encoding: "utf8",
    env: { ...process.env, SPURWISE_DATA: dataFolder },
  });

interface SensedContent {
  added: string[];
  removed: string[];
}

/** What the log says was put in and pulled, in its order. */
const sensedIn = (dataFolder: string): SensedContent[] => {
  const log = new Database(join(dataFolder, "spurwise.db"), { readonly: true });
  const rows = log
    .prepare<[], { bytes: Buffer }>("SELECT bytes FROM log WHERE type = 'sensed' ORDER BY boot, sequence")
    .all();
  log.close();
  return rows.map(({ bytes }) => JSON.parse(bytes.toString("utf8")) as SensedContent);
};

const wireRingWithSpur = async (bench: BenchScreen): Promise<void> => {
  await bench.takeCable(2.5);
  await bench.wireByDrag("way-1", "socket-1");
  await bench.expectCable("socket-1.a~way-1.a");
  await bench.wireByDrag("socket-1", "socket-2");
  await bench.expectCable("socket-1.b~socket-2.a");
  await bench.wireByTaps("socket-2", "way-1");
  await bench.expectCable("socket-2.b~way-1.b");
  await bench.wireByTaps("socket-1", "socket-3");
  await bench.expectCable("socket-1.c~socket-3.a");
};

for (const { name, ...viewport } of panelsOfRun)
  test.describe(`from one wire to one verdict at ${name}`, () => {
    test.use({ viewport });
    let running: BenchProcess;

    test.afterEach(() => running.stop());

    test("a sound ring with a spur has nothing to put right; opening one core names the place; the log holds both through a power cut", async ({
      page,
    }) => {
      const dataFolder = newDataFolder();
      running = await startBench({ dataFolder });
      const port = Number(new URL(running.address).port);
      const bench = new BenchScreen(page);
      await bench.openTask(running.address, "first-spur");

      await wireRingWithSpur(bench);
      await bench.check();
      await expect(page.getByText("The bench found no danger and nothing to fix.")).toBeVisible();
      await expect(bench.findings()).toHaveCount(0);

      await bench.pullLead("socket-2", "socket-2.b.E");
      await bench.check();
      await expect(bench.get("finding-ring-open")).toBeVisible();
      await bench.get("finding-ring-open").tap();
      await expect(bench.get("note-finding-ring-open")).toContainText(/socket outlet 2/i);
      await expect(bench.get("note-finding-ring-open")).toContainText(/way 1/i);
      // Beside an open note a small panel shows what the note is about, and no more.
      await bench.get("key-close-card").tap();

      await running.cutPower();
      await expect(bench.get("link-lost")).toBeVisible();
      running = await startBench({ dataFolder, port });
      await expect(bench.get("link-lost")).toBeHidden();
      for (const cable of ringOfTwo) await bench.expectCable(cable);

      await running.stop();
      const sensed = sensedIn(dataFolder);
      const added = sensed.flatMap((event) => event.added);
      for (const cable of ringOfTwo)
        for (const role of ["L", "N", "E"])
          expect(added).toContain(
            cable
              .split("~")
              .map((end) => `${end}.${role}`)
              .join("~"),
          );
      expect(sensed.flatMap(({ removed }) => removed)).toContain("socket-2.b.E~way-1.b.E");
      expect(verify(dataFolder)).toContain("sound");
    });
  });
