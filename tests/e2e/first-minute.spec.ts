import { expect } from "@playwright/test";
import type { BenchProcess } from "./bench-process.ts";
import { BenchScreen, panelsOfRun } from "./bench-screen.ts";
import { test } from "./bench-test.ts";

let running: BenchProcess;
test.beforeEach(({ workshop }) => {
  ({ running } = workshop);
});

for (const { name, ...viewport } of panelsOfRun)
  test.describe(`the first minute at ${name}`, () => {
    test.use({ viewport });

    test("takes a newcomer from the first screen to a first cable in six taps, led by the line alone", async ({
      page,
    }) => {
      const bench = new BenchScreen(page);
      await page.goto(running.address);
      const line = bench.get("say");
      let tapCount = 0;
      const tap = async (id: string): Promise<void> => {
        await bench.get(id).tap();
        tapCount += 1;
      };
      await expect(line).toHaveText("Who is working here?");
      await tap("key-guest");
      await expect(line).toHaveText("Choose a task.");
      await expect(bench.get("screen-scenarios")).toContainText("Build a ring from way 1");
      await tap("key-start-here");
      await expect(line).toHaveText("Read this, then tap the large key.");
      await tap("key-accept-caution");
      await expect(bench.get("key-plan-next")).toHaveText("Go on to wiring");
      await tap("key-plan-next");
      await expect(line).toHaveText("Tap where a cable starts, then tap where it goes.");
      await tap("station-way-1");
      await expect(line).toContainText("Now tap where the cable goes.");
      await tap("station-socket-1");
      await bench.expectCable("socket-1.a~way-1.a");
      expect(tapCount).toBeLessThanOrEqual(6);
    });
  });
