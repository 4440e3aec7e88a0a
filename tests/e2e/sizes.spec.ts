import { expect, type Page, test } from "@playwright/test";
import { testDepth } from "../depth.ts";
import { BenchLink } from "./bench-link.ts";
import { startBench } from "./bench-process.ts";
import { BenchScreen } from "./bench-screen.ts";
import { everyScreen } from "./every-screen.ts";
import { limitsFor, screenProblems } from "./screen-problems.ts";
import { screensInTrouble } from "./screens-in-trouble.ts";
import { secondHalfScreens } from "./second-half-screens.ts";
import { buildLongWords } from "./serve-long-words.ts";

const small = limitsFor(800, 480, 7);
const large = limitsFor(1280, 800, 10.1);
const windows = [
  { name: "800x480", viewport: { width: 800, height: 480 }, limits: small },
  { name: "1280x800", viewport: { width: 1280, height: 800 }, limits: large },
  { name: "480x800", viewport: { width: 480, height: 800 }, limits: small },
  { name: "800x1280", viewport: { width: 800, height: 1280 }, limits: large },
] as const;

// The longest checks of all: they share the cores.
test.describe.configure({ mode: "parallel" });
test.use({ viewport: windows[0].viewport, contextOptions: { reducedMotion: "reduce" } });

test("the check itself finds letters, keys, cuts, covers, overlaps, faintness, false thumbs and what lies outside", async ({
  page,
}) => {
  const problemsOf = async (body: string): Promise<string> => {
    await page.setContent(`<style>body{margin:0;font:24px sans-serif;background:#fff;color:#000}
      button{position:absolute;left:0;top:0;width:70px;height:70px;padding:0;font:24px sans-serif;border:0;background:#fff;color:#000}</style>${body}`);
    return (await screenProblems(page, small)).join("\n");
  };
  expect(await problemsOf(`<p>Sound</p><button style="top:100px">Key</button>`)).toBe("");
  expect(await problemsOf(`<p style="font-size:18px">Small</p>`)).toContain("small letters");
  expect(
    await problemsOf(`<svg viewBox="0 0 100 100" width="50"><text y="50" font-size="24">S</text></svg>`),
  ).toContain("small letters");
  expect(await problemsOf(`<button style="width:45px">A</button>`)).toContain("small key");
  expect(await problemsOf(`<button>A</button><button style="left:60px">B</button>`)).toContain(
    "overlapping keys",
  );
  expect(await problemsOf(`<button>Lengthiest</button>`)).toContain("cut off");
  expect(
    await problemsOf(`<p style="width:60px;overflow:hidden;white-space:nowrap">Far too long</p>`),
  ).toContain("cut off");
  expect(await problemsOf(`<p style="height:20px;overflow:hidden">Two<br>lines</p>`)).toContain("cut off");
  expect(
    await problemsOf(`<div style="height:60px;overflow-y:auto"><p>Can<br>be<br>scrolled<br>to</p></div>`),
  ).toBe("");
  expect(
    await problemsOf(`<p>Under</p><div style="position:absolute;inset:0;background:#eee"></div>`),
  ).toContain("covered");
  expect(await problemsOf(`<p>One</p><p style="margin-top:-52px">Other</p>`)).toContain("written over");
  expect(await problemsOf(`<p style="width:60px;overflow-wrap:anywhere">Lengthiest</p>`)).toContain(
    "broken word",
  );
  expect(await problemsOf(`<p style="color:#767676">Faint</p>`)).toContain("faint");
  expect(await problemsOf(`<button style="left:760px">Out</button>`)).toContain("out of reach in the screen");
  expect(await problemsOf(`<p style="border-left:6px solid">Barred</p>`)).toContain("scroll thumb");
  expect(await problemsOf(`<div style="height:900px"></div>`)).toContain("larger than the screen");
  expect(await problemsOf(`<p style="height:26px;line-height:30px;overflow-y:auto">Hardly</p>`)).toContain(
    "scrolls by",
  );
});

/** A language and whether its letters are large. */
type Setting = readonly ["en" | "pl", boolean];

const caution = { en: /^\s*Training/, pl: /^\s*Tablica/ };

const everySetting: readonly Setting[] = [
  ["pl", false],
  ["pl", true],
  ["en", true],
  ["en", false],
];

const set = async (page: Page, link: BenchLink, [language, isLarge]: Setting): Promise<void> => {
  const letters = () =>
    page.locator(".bench").evaluate((node) => parseFloat(getComputedStyle(node).fontSize));
  const before = await letters();
  const wasLarge = link.view?.isLarge ?? false;
  await link.does("set-language", { language });
  await link.does("set-large", { isLarge });
  await expect(page.locator("html")).toHaveAttribute("lang", language);
  // The words of a language may come later than the page says it.
  await expect(page.locator("footer")).toContainText(caution[language]);
  if (wasLarge !== isLarge) await expect.poll(letters).not.toBe(before);
};

/** Every panel in every setting: in CI and in a deep run. */
const isWhole = process.env["CI"] !== undefined || testDepth > 1;

/**
 * Looks at a screen in each setting on both panels, either way up, and goes back to where it was. Where time is short,
 * at every other pair of a setting and a window, so that each screen is still seen in each of them.
 */
const looker = ({ page }: BenchScreen, settings: readonly Setting[], found: string[]) => {
  let screens = 0;
  return async (screen: string, link: BenchLink): Promise<void> => {
    screens += 1;
    for (const [at, setting] of settings.entries()) {
      const now = windows.filter(
        (_, place) => isWhole || settings.length === 1 || (screens + at + place) % 2 === 0,
      );
      await set(page, link, setting);
      for (const { name, viewport, limits } of now) {
        await page.setViewportSize(viewport);
        for (const problem of await screenProblems(page, limits))
          found.push(`${screen} at ${name} in ${setting[0]}${setting[1] ? ", large" : ""}: ${problem}`);
      }
    }
    await page.setViewportSize(windows[0].viewport);
    await set(page, link, ["en", false]);
  };
};

/** A bench of its own for one way through every screen. */
const throughEveryScreen = async (
  page: Page,
  settings: readonly Setting[],
  prepare: (address: string) => Promise<void> = async () => {},
): Promise<string[]> => {
  const running = await startBench({ board: "workshop" });
  const link = new BenchLink(running.address);
  try {
    await link.reset();
    await prepare(running.address);
    const bench = new BenchScreen(page);
    const found: string[] = [];
    const look = looker(bench, settings, found);
    await everyScreen(bench, link, running.address, (screen) => look(screen, link));
    return found;
  } finally {
    link.close();
    await running.stop();
  }
};

test.describe("every screen of a learner's go", () => {
  test.setTimeout(300_000);

  for (const language of ["en", "pl"] as const)
    test(`can be read and touched in ${{ en: "English", pl: "Polish" }[language]}, on both panels, either way up, in usual and large letters`, async ({
      page,
    }) => {
      const settings = everySetting.filter(([of]) => of === language);
      expect(await throughEveryScreen(page, settings)).toEqual([]);
    });

  test("has room for words 40 % longer", async ({ page }) => {
    const longWords = await buildLongWords();
    try {
      const found = await throughEveryScreen(page, [["en", false]], (address) => longWords.on(page, address));
      expect(found).toEqual([]);
    } finally {
      longWords.remove();
    }
  });
});

test("a hunt, what was hidden, how a learner does and the step Load can be read and touched too", async ({
  page,
}) => {
  test.setTimeout(300_000);
  const running = await startBench({ board: "workshop" });
  const link = new BenchLink(running.address);
  const bench = new BenchScreen(page);
  const found: string[] = [];
  try {
    await secondHalfScreens(bench, link, running.address, looker(bench, everySetting, found));
  } finally {
    link.close();
    await running.stop();
  }
  expect(found).toEqual([]);
});

test("what is seen only at times (trouble, assessed work, the technician's tools, a bench left alone) can be read and touched too", async ({
  page,
}) => {
  test.setTimeout(300_000);
  const bench = new BenchScreen(page);
  const found: string[] = [];
  await screensInTrouble(bench, looker(bench, everySetting, found));
  expect(found).toEqual([]);
});
