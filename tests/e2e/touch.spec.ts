import { type CDPSession, expect } from "@playwright/test";
import type { BenchProcess } from "./bench-process.ts";
import { BenchScreen, panels } from "./bench-screen.ts";
import { test } from "./bench-test.ts";

/** Pixels of a millimetre on the 7-inch panel of 800 by 480. */
const mmPx = Math.hypot(800, 480) / (7 * 25.4);

let running: BenchProcess;
test.use({ viewport: panels[0] });
test.beforeEach(({ workshop }) => {
  ({ running } = workshop);
});

interface Spot {
  x: number;
  y: number;
}

/** A finger: down, over some places, and up at the last. */
const swipe = async (finger: CDPSession, [start, ...over]: [Spot, ...Spot[]]): Promise<void> => {
  await finger.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [start] });
  for (const at of over)
    await finger.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: [at] });
  await finger.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
};

const boxOf = async (bench: BenchScreen, id: string) => {
  const box = await bench.get(id).boundingBox();
  if (!box) throw new Error(`${id} is not drawn`);
  return { ...box, centre: { x: box.x + box.width / 2, y: box.y + box.height / 2 } };
};

/** Where the lines of all cables run, as they are drawn. */
const linesDrawn = ({ page }: BenchScreen): Promise<string[]> =>
  page
    .locator("[data-testid='screen-wire'] svg path")
    .evaluateAll((paths) => paths.map((path) => path.getAttribute("d") ?? ""));

test("a finger that wobbles on a plate has tapped it, and a drag that ends beside one has reached it", async ({
  page,
}) => {
  const bench = new BenchScreen(page);
  await bench.openTask(running.address, "first-spur");
  const finger = await page.context().newCDPSession(page);
  const { centre } = await boxOf(bench, "station-way-1");
  for (const wobbleMm of [2, 4]) {
    await swipe(finger, [
      centre,
      { x: centre.x + wobbleMm * mmPx, y: centre.y - mmPx },
      { x: centre.x + (wobbleMm / 2) * mmPx, y: centre.y },
    ]);
    await expect(bench.get("say")).toHaveText("From Way 1. Now tap where the cable goes.");
    await bench.get("key-cancel").tap();
    await expect(bench.get("key-cancel")).toBeHidden();
  }
  const goal = await boxOf(bench, "station-socket-1");
  const beside = { x: goal.x + goal.width + 2.5 * mmPx, y: goal.centre.y };
  await swipe(finger, [
    centre,
    { x: (centre.x + beside.x) / 2, y: (centre.y + beside.y) / 2 },
    { x: beside.x + 4, y: beside.y },
    beside,
  ]);
  await bench.expectCable("socket-1.a~way-1.a");
});

test("a refusal lies over the screen: no cable and no plate moves for it", async ({ page }) => {
  const bench = new BenchScreen(page);
  await bench.openTask(running.address, "first-spur");
  await bench.wireByTaps("way-1", "socket-1");
  await bench.expectCable("socket-1.a~way-1.a");
  await bench.wireByTaps("socket-1", "socket-2");
  await bench.expectCable("socket-1.b~socket-2.a");
  // The cores of a cable arrive one after the other; a core that is not there yet is a hollow lane.
  await expect(page.locator("[data-testid='screen-wire'] svg path.gap")).toHaveCount(0);
  const before = await linesDrawn(bench);
  const plate = await boxOf(bench, "station-socket-2");
  expect(before.length).toBeGreaterThan(0);
  await bench.get("step-load").tap({ force: true });
  await expect(bench.get("refusal")).toBeVisible();
  expect(await linesDrawn(bench)).toEqual(before);
  expect(await boxOf(bench, "station-socket-2")).toEqual(plate);
  await bench.get("refusal").getByRole("button").tap();
  await expect(bench.get("refusal")).toHaveCount(0);
  expect(await linesDrawn(bench)).toEqual(before);
});

test("the board's face opens at the station in hand, large letters leave icons as large, and a new screen has the keyboard's place", async ({
  page,
}) => {
  const bench = new BenchScreen(page);
  await bench.openTask(running.address, "first-spur");
  const isHere = (screen: string) =>
    expect
      .poll(() => bench.get(`screen-${screen}`).evaluate((main) => main.contains(document.activeElement)))
      .toBe(true);
  await isHere("wire");
  await bench.get("station-socket-2").tap();
  await bench.get("key-face").tap();
  await expect(bench.get("contact-socket-2.a.L")).toBeVisible();
  await bench.get("key-face").tap();

  const iconPx = () =>
    bench
      .get("screen-wire")
      .locator("button svg:visible")
      .evaluateAll((icons) => icons.map((icon) => Math.round(icon.getBoundingClientRect().width)));
  const lettersPx = () =>
    page.locator(".bench").evaluate((node) => parseFloat(getComputedStyle(node).fontSize));
  const [usual, usualPx] = [await iconPx(), await lettersPx()];
  expect(usual.length).toBeGreaterThan(2);
  await bench.get("key-menu").tap();
  await bench.get("key-large").tap();
  await expect.poll(lettersPx).toBeGreaterThan(usualPx);
  const large = await iconPx();
  expect(large.length).toBe(usual.length);
  for (const [at, px] of large.entries()) expect(px).toBeGreaterThanOrEqual((usual[at] ?? 0) - 1);

  await bench.get("step-hand-in").tap();
  await isHere("hand-in");
  await bench.get("step-plan").tap();
  await isHere("plan");
});

test("no lead covers the name of a station on the board's face", async ({ page }) => {
  const bench = new BenchScreen(page);
  await bench.openTask(running.address, "first-spur");
  // The leads of this ring lie over the stations of the top row.
  const topRow = 8;
  const names = bench.page.locator(".face .name > span");
  const looks = async (): Promise<string[]> => {
    const all: string[] = [];
    for (const name of (await names.all()).slice(0, topRow)) {
      const box = await name.boundingBox();
      if (!box) throw new Error("a station has no name");
      // The edge of a name may share its pixels with what lies beside it.
      const clip = { x: box.x + 1, y: box.y + 1, width: box.width - 2, height: box.height - 2 };
      all.push((await page.screenshot({ clip })).toString("base64"));
    }
    return all;
  };
  await bench.get("key-face").tap();
  await expect(names.first()).toBeVisible();
  const bare = await looks();
  await bench.get("key-face").tap();
  const cables = [
    ["way-1", "socket-1"],
    ["socket-1", "socket-2"],
    ["socket-2", "way-1"],
    ["socket-2", "socket-3"],
  ] as const;
  for (const [at, [from, to]] of cables.entries()) {
    await bench.wireByTaps(from, to);
    await bench.expectCableCount(at + 1);
  }
  await bench.get("key-face").tap();
  await expect(names.first()).toBeVisible();
  expect(await looks()).toEqual(bare);
});
