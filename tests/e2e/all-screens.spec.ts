import { expect } from "@playwright/test";
import { axeProblems } from "./axe-problems.ts";
import type { BenchLink } from "./bench-link.ts";
import { BenchScreen } from "./bench-screen.ts";
import { test } from "./bench-test.ts";
import { everyScreen } from "./every-screen.ts";
import { isFocusSeen, pressByKeyboard } from "./keyboard.ts";
import { everySetting, Looker, smallest } from "./looker.ts";
import { screenProblems } from "./screen-problems.ts";
import { screensInTrouble } from "./screens-in-trouble.ts";
import { secondHalfScreens } from "./second-half-screens.ts";
import { buildLongWords } from "./serve-long-words.ts";

// The longest checks of all: they share the cores, and their name puts them at the beginning.
test.describe.configure({ mode: "parallel" });
const usual = { viewport: smallest.viewport, contextOptions: { reducedMotion: "reduce" } } as const;
test.use(usual);

test("the check itself finds letters, keys, cuts, covers, overlaps, faintness, false thumbs and what lies outside", async ({
  page,
}) => {
  const problemsOf = async (body: string): Promise<string> => {
    await page.setContent(`<style>body{margin:0;font:24px sans-serif;background:#fff;color:#000}
      button{position:absolute;left:0;top:0;width:70px;height:70px;padding:0;font:24px sans-serif;border:0;background:#fff;color:#000}</style>${body}`);
    return (await screenProblems(page, smallest.limits)).join("\n");
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

/** Screens whose parts differ from those of the others; the rest are made of the same. */
const heldByAxe = new Set([
  "sign-in",
  "keyboard",
  "scenarios",
  "scenario chosen",
  "caution",
  "make dead, live",
  "refusal",
  "plan, a number",
  "plan, a choice and bars",
  "wire, a size is asked for",
  "wire, notes and hints",
  "wire, a finding",
  "wire, a station",
  "wire, a cable",
  "words",
  "tray",
  "as found",
  "menu in a task",
  "asking",
  "face",
  "face, one open",
  "face, two open",
  "face, a contact",
  "hand in",
  "handed in",
]);

/** Those where another language could make a difference: words that are long, are read out or name a part. */
const heldInPolish = new Set(["keyboard", "wire, a finding", "words", "face, two open", "handed in"]);

test.describe("every screen of a learner's go", () => {
  // One way through them serves all three tests.
  test.describe.configure({ mode: "default" });
  const found = { en: [] as string[], pl: [] as string[], axe: [] as string[] };
  const seen = { en: 0, pl: 0, axe: 0 };

  test.beforeAll(async ({ browser, keptWorkshop: { running, link } }) => {
    test.setTimeout(300_000);
    await link.reset();
    const page = await browser.newPage({ ...usual.contextOptions, viewport: usual.viewport, hasTouch: true });
    const looker = new Looker(page, everySetting, async (screen, language) => {
      if (!(language === "en" ? heldByAxe : heldInPolish).has(screen)) return;
      seen.axe += 1;
      found.axe.push(...(await axeProblems(page)).map((problem) => `${screen} in ${language}: ${problem}`));
    });
    await everyScreen(new BenchScreen(page), link, running.address, (screen) => looker.look(screen, link));
    await page.close();
    for (const { language, problem } of looker.found) found[language].push(problem);
    for (const language of ["en", "pl"] as const) seen[language] = looker.looks[language];
  });

  for (const language of ["en", "pl"] as const)
    test(`can be read and touched in ${{ en: "English", pl: "Polish" }[language]}, on both panels, either way up, in usual and large letters`, () => {
      expect(found[language]).toEqual([]);
      expect(seen[language]).toBeGreaterThanOrEqual(4 * heldByAxe.size);
    });

  test("has nothing that axe finds, with notes, dialogs and the keyboard open, in English and in Polish", async ({
    page,
  }) => {
    await page.setContent(`<html lang="en"><title>x</title><main><h1>x</h1><button></button></main>`);
    expect((await axeProblems(page)).join("\n")).toContain("button-name");
    expect(found.axe).toEqual([]);
    expect(seen.axe).toBe(heldByAxe.size + heldInPolish.size);
  });
});

test("every screen of a learner's go has room for words 40 % longer", async ({
  page,
  workshop: { running, link },
}) => {
  test.setTimeout(300_000);
  const longWords = await buildLongWords();
  try {
    const looker = new Looker(page, everySetting.slice(0, 1));
    await longWords.on(page, running.address);
    await everyScreen(new BenchScreen(page), link, running.address, async (screen) => {
      if (screen === "sign-in") await expect(page.getByTestId("key-guest")).toHaveText(/o{2}/);
      await looker.look(screen, link);
    });
    expect(looker.found).toEqual([]);
  } finally {
    longWords.remove();
  }
});

test.describe("a hunt, what was hidden, how a learner does and the step Load", () => {
  // One way through them serves both tests.
  test.describe.configure({ mode: "default" });
  const found = { sizes: [] as unknown[], axe: [] as string[] };
  let seen = 0;

  test.beforeAll(async ({ browser, keptWorkshop: { running, link } }) => {
    test.setTimeout(300_000);
    await link.reset();
    // Whoever has not asked for less motion is to see none either.
    const page = await browser.newPage({ viewport: usual.viewport, hasTouch: true });
    const looker = new Looker(page, everySetting);
    const look = async (screen: string, link: BenchLink): Promise<void> => {
      seen += 1;
      found.axe.push(...(await axeProblems(page)).map((problem) => `${screen}: ${problem}`));
      // A screen that has just opened has the focus as a whole.
      const isWhole = await page.evaluate(() => document.activeElement?.tagName === "MAIN");
      if (!isWhole && !(await isFocusSeen(page))) found.axe.push(`${screen}: the focus is not seen`);
      const running = await page.evaluate(() => document.getAnimations().length);
      if (running > 0) found.axe.push(`${screen}: ${running} animations`);
      await looker.look(screen, link);
    };
    await secondHalfScreens(new BenchScreen(page), link, running.address, look, (id) =>
      pressByKeyboard(page, id),
    );
    await page.close();
    found.sizes = looker.found;
  });

  test("are gone through by the keyboard alone; axe finds nothing there, and nothing moves", () => {
    expect(found.axe).toEqual([]);
    expect(seen).toBe(7);
  });

  test("can be read and touched too", () => {
    expect(found.sizes).toEqual([]);
    expect(seen).toBe(7);
  });
});

test("what is seen only at times (trouble, assessed work, the technician's tools, a bench left alone) can be read and touched too", async ({
  page,
}) => {
  test.setTimeout(300_000);
  const looker = new Looker(page, everySetting);
  await screensInTrouble(new BenchScreen(page), (screen, link) => looker.look(screen, link));
  expect(looker.found).toEqual([]);
});
