import { type Browser, expect, type Page } from "@playwright/test";
import { sceneNames } from "../../shared/protocol/show-view.ts";
import { axeProblems } from "./axe-problems.ts";
import { type BenchProcess, startBench } from "./bench-process.ts";
import { BenchScreen, panels } from "./bench-screen.ts";
import { test } from "./bench-test.ts";
import { limitsFor, screenProblems } from "./screen-problems.ts";

/** So many times as fast: a visitor is gone after 5.6 s, a challenge lasts 22 s. */
const showSpeed = 8;

let running: BenchProcess;
test.beforeAll(async () => {
  running = await startBench({ board: "small", showSpeed });
});
test.afterAll(() => running.stop());

/** What the rules core has to say of each idea at its end; of how the legs share nothing is said. */
const verdicts: Record<(typeof sceneNames)[number], readonly string[]> = {
  ring: ["right"],
  shares: [],
  spur: ["right"],
  "second-spur": ["wrong"],
  fuse: ["right"],
  protect: ["wrong", "right"],
};

const limits = { "800x480": limitsFor(800, 480, 7), "1280x800": limitsFor(1280, 800, 10.1) } as const;

/** The ring and its spur that the challenge asks for. */
const answer = [
  ["way-1", "socket-1"],
  ["socket-1", "socket-2"],
  ["socket-2", "way-1"],
  ["socket-1", "socket-3"],
] as const;

type Screen = Awaited<ReturnType<typeof openScreen>>;
const outcomeOf = ({ bench }: Screen) => bench.get("show-result").locator("[data-outcome]");

/** What a person could not read or touch, and what axe finds, on the screen that is shown. */
async function look({ page, name }: Screen, problems: string[]): Promise<void> {
  // Whoever looks so long has to touch it now and then.
  const touch = () => page.mouse.click(2, 2);
  await touch();
  const place = await page.locator("main").getAttribute("data-testid");
  const found = await axeProblems(page);
  await touch();
  problems.push(
    ...[...found, ...(await screenProblems(page, limits[name]))].map((one) => `${place}: ${one}`),
  );
}

/** Notes down each picture of the story that is shown, from now on. */
const noteDown = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const seen: string[] = ((window as unknown as { seen: string[] }).seen = []);
    const note = () => {
      const scene = document.querySelector("[data-scene]")?.getAttribute("data-scene");
      const verdict = document.querySelector("[data-verdict]")?.getAttribute("data-verdict");
      const line = `${scene} ${verdict ?? "-"}`;
      if (scene && seen.at(-1) !== line) seen.push(line);
    };
    new MutationObserver(note).observe(document.body, { subtree: true, childList: true, attributes: true });
  });

/** The scenes that were seen, one whole round from the first, each with what was said of it. */
function oneRound(seen: readonly string[]): Record<string, string[]> {
  const round: Record<string, string[]> = {};
  for (const line of seen) {
    const [scene = "", verdict = ""] = line.split(" ");
    round[scene] ??= [];
    if (verdict !== "-" && !round[scene].includes(verdict)) round[scene].push(verdict);
  }
  return round;
}

/** A screen of the show at one of the panels. */
async function openScreen(browser: Browser, { name, ...viewport }: (typeof panels)[number]) {
  const context = await browser.newContext({ viewport, hasTouch: true });
  const page = await context.newPage();
  await page.goto(`${running.address}/show/`);
  await page.locator("[data-scene]").waitFor();
  return { name, page, bench: new BenchScreen(page), viewport };
}

test("a bench tells its story on two screens, is handed over at the first touch, tried, and goes back by itself", async ({
  browser,
}) => {
  const problems: string[] = [];
  const screens = await Promise.all(panels.map((panel) => openScreen(browser, panel)));
  const [small, large] = screens;
  if (!small || !large) throw new Error("there are two panels");

  // The story is watched through on both at once.
  await Promise.all(
    screens.map(async ({ name, page }) => {
      await noteDown(page);
      const looked = new Set<string>();
      await expect(async () => {
        const scene = (await page.locator("[data-scene]").getAttribute("data-scene")) ?? "";
        problems.push(...(await screenProblems(page, limits[name])).map((one) => `${scene}: ${one}`));
        looked.add(scene);
        const seen = await page.evaluate(() => (window as unknown as { seen: string[] }).seen);
        expect(oneRound(seen), name).toEqual(verdicts);
        expect([...looked].sort()).toEqual([...sceneNames].sort());
      }).toPass({ intervals: [50], timeout: 25_000 });
    }),
  );

  // A touch anywhere, here on the picture, and both ask.
  await small.page.mouse.click(small.viewport.width / 2, small.viewport.height / 2);
  for (const { bench } of screens) await bench.get("show-asked").waitFor();
  const inReach = ["key-begin", "key-story", "key-language-en"].map((id) =>
    small.bench.get(id).boundingBox(),
  );
  for (const box of await Promise.all(inReach)) expect(box?.y).toBeGreaterThan(small.viewport.height * 0.45);
  await look(small, problems);

  // Given up with one cable in: lost, with what is to be done.
  await small.bench.get("key-begin").tap();
  await small.bench.get("show-left").waitFor();
  await small.bench.wireByTaps("way-1", "socket-1");
  for (const { bench } of screens) await bench.expectCableCount(1);
  await look(small, problems);
  await small.bench.get("key-done").tap();
  await expect(outcomeOf(small)).toHaveAttribute("data-outcome", "lost");
  await expect(outcomeOf(small)).toContainText("At home, call someone competent.");
  await look(small, problems);

  // On the other screen, in Polish: won by the last cable.
  await large.bench.get("key-story").tap();
  await large.bench.get("key-try").tap();
  await large.bench.get("key-language-pl").tap();
  await expect(large.page.locator("html")).toHaveAttribute("lang", "pl");
  await look(large, problems);
  await large.bench.get("key-begin").tap();
  await large.bench.get("show-left").waitFor();
  for (const [at, [from, to]] of answer.entries()) {
    await large.bench.wireByTaps(from, to);
    if (at === 0) await look(large, problems);
  }
  await expect(outcomeOf(large)).toHaveAttribute("data-outcome", "won");
  await expect(outcomeOf(large)).toContainText("W domu wezwij kogoś z uprawnieniami.");
  await look(large, problems);
  expect(problems).toEqual([]);

  // Nobody touches anything: the story begins again, in the language of the bench.
  for (const { bench, page } of screens) {
    await bench.get("show-story").waitFor();
    await expect(page.locator("html")).toHaveAttribute("lang", "en");
    await page.context().close();
  }
});
