import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { BenchLink } from "./bench-link.ts";
import { type BenchProcess, startBench } from "./bench-process.ts";
import { BenchScreen } from "./bench-screen.ts";
import { everyScreen } from "./every-screen.ts";
import { secondHalfScreens } from "./second-half-screens.ts";

let running: BenchProcess;
let link: BenchLink;
test.beforeAll(async () => {
  running = await startBench({ board: "workshop" });
  link = new BenchLink(running.address);
});
test.beforeEach(() => link.reset());
test.afterAll(async () => {
  link.close();
  await running.stop();
});

test.use({ viewport: { width: 800, height: 480 } });

/** What axe finds wrong, one sentence each; its rules for WCAG 2 A and AA and its good practices. */
const axeProblems = async (page: Page): Promise<string[]> => {
  // There are no frames on the page; without them axe need not open a page of its own each time.
  const { violations } = await new AxeBuilder({ page }).setLegacyMode(true).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`));
};

/** Screens whose parts differ from those of the others; the rest are made of the same. */
const held = new Set([
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

test("axe finds nothing on any screen, with notes, dialogs and the keyboard open, in English and in Polish", async ({
  page,
}) => {
  test.setTimeout(300_000);
  await page.setContent(`<html lang="en"><title>x</title><main><h1>x</h1><button></button></main>`);
  expect((await axeProblems(page)).join("\n")).toContain("button-name");

  const found: string[] = [];
  await everyScreen(new BenchScreen(page), link, running.address, async (screen) => {
    if (!held.has(screen)) return;
    found.push(...(await axeProblems(page)).map((problem) => `${screen}: ${problem}`));
    if (!heldInPolish.has(screen)) return;
    await link.does("set-language", { language: "pl" });
    await expect(page.locator("html")).toHaveAttribute("lang", "pl");
    found.push(...(await axeProblems(page)).map((problem) => `${screen}, in Polish: ${problem}`));
    await link.does("set-language", { language: "en" });
    await expect(page.locator("html")).toHaveAttribute("lang", "en");
  });
  expect(found).toEqual([]);
});

/** Moves the focus by Tab alone to something, as far as a person would. */
const tabTo = async (page: Page, id: string): Promise<void> => {
  for (let presses = 0; presses < 150; presses += 1) {
    const at = await page.evaluate(() => document.activeElement?.getAttribute("data-testid"));
    if (at === id) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`${id} is not reached by Tab`);
};

const press = async (page: Page, id: string): Promise<void> => {
  await page.getByTestId(id).waitFor();
  await tabTo(page, id);
  await page.keyboard.press("Enter");
};

/** Whether what has the focus is seen to have it: an outline, or something else that changes with it. */
const isFocusSeen = (page: Page): Promise<boolean> =>
  page.evaluate(() => {
    const focused = document.activeElement;
    if (!focused || focused === document.body) return false;
    const { outlineStyle, outlineWidth } = getComputedStyle(focused);
    return outlineStyle !== "none" && parseFloat(outlineWidth) >= 2;
  });

test("the keyboard alone takes a learner from the sign-in to a verdict, the focus is always seen, and the verdict is told in a live region", async ({
  page,
}) => {
  test.setTimeout(90_000);
  await page.goto(running.address);
  await press(page, "key-guest");
  await press(page, "scenario-build-a-radial");
  await press(page, "key-practice");
  await press(page, "key-accept-caution");
  await press(page, "step-wire");

  await press(page, "key-tray");
  await press(page, "key-take-2.5");
  await expect(page.getByTestId("dialog-tray")).toBeHidden();
  await press(page, "station-way-2");
  await press(page, "station-socket-1");
  await expect(page.getByTestId("cable-socket-1.a~way-2.a")).toBeAttached();
  expect(await isFocusSeen(page)).toBe(true);

  // On the face: a lead from contact to contact, and Escape puts down what is in hand.
  await press(page, "key-face");
  await press(page, "station-socket-1");
  await press(page, "station-socket-2");
  await press(page, "contact-socket-1.b.L");
  await expect(page.getByTestId("key-cancel")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.getByTestId("key-cancel")).toBeHidden();
  for (const role of ["L", "N", "E"]) {
    await press(page, `contact-socket-1.b.${role}`);
    await press(page, `contact-socket-2.a.${role}`);
    await expect(page.getByTestId(`contact-socket-2.a.${role}`)).toHaveAccessibleName(/leads to/i);
  }
  await press(page, "key-size-1.5");
  await press(page, "key-face");
  expect(await isFocusSeen(page)).toBe(true);

  const live = page.getByTestId("live");
  await expect(live).toHaveAttribute("aria-live", "polite");
  await expect(live).toHaveText("");
  await press(page, "key-check");
  await expect(live).toContainText(/to look at/);
  const first = (await link.seen(({ attempt }) => attempt?.verdict?.isHeld === false)).attempt?.verdict
    ?.findings[0];
  expect(first).toBeDefined();
  await expect(live).toContainText(first?.title ?? "no finding");
  await link.does("set-language", { language: "pl" });
  const inPolish = (await link.seen(({ language }) => language === "pl")).attempt?.verdict?.findings[0];
  expect(inPolish?.title).not.toBe(first?.title);
  await expect(live).toContainText(inPolish?.title ?? "no finding");
  await link.does("set-language", { language: "en" });

  await press(page, `finding-${first?.id.split("/")[0]}`);
  // What was pressed goes with its card: the focus goes on to the next one's head, then to the strip's first key.
  await expect(page.getByRole("heading", { name: first?.title ?? "no finding" })).toBeFocused();
  await press(page, "key-show-place");
  await expect(page.getByTestId("key-back-to-note")).toBeFocused();
  await press(page, "key-menu");
  await expect(page.getByTestId("dialog-menu")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.getByTestId("dialog-menu")).toBeHidden();
  await expect(page.getByTestId("key-menu")).toBeFocused();
});

test("the keyboard alone goes through a hunt and the step Load; axe finds nothing there, and nothing moves", async ({
  page,
}) => {
  test.setTimeout(180_000);
  const found: string[] = [];
  const look = async (screen: string): Promise<void> => {
    found.push(...(await axeProblems(page)).map((problem) => `${screen}: ${problem}`));
    // A screen that has just opened has the focus as a whole.
    const isWhole = await page.evaluate(() => document.activeElement?.tagName === "MAIN");
    if (!isWhole && !(await isFocusSeen(page))) found.push(`${screen}: the focus is not seen`);
    const running = await page.evaluate(() => document.getAnimations().length);
    if (running > 0) found.push(`${screen}: ${running} animations`);
  };
  await secondHalfScreens(new BenchScreen(page), link, running.address, look, (id) => press(page, id));
  expect(found).toEqual([]);
});

/** Everything on the page that moves by style: parts with an animation, or a change drawn out over time. */
const moving = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll("*")].flatMap((element) => {
      const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(element);
      const isDrawnOut = transitionDuration.split(",").some((duration) => parseFloat(duration) > 0);
      return animationName !== "none" || isDrawnOut || scrollBehavior === "smooth"
        ? [`${element.tagName} ${element.className.toString()}`]
        : [];
    }),
  );

test.describe("movement", () => {
  const goToWiring = async (bench: BenchScreen): Promise<void> => {
    await bench.openTask(running.address, "build-a-radial");
    await bench.takeCable(2.5);
    await bench.wireByTaps("way-2", "socket-1");
    await bench.expectCable("socket-1.a~way-2.a");
    await bench.check();
    await link.seen(({ attempt }) => attempt?.verdict?.isHeld === false);
  };

  test("nothing is drawn out over time for who asked for less motion", async ({ page }) => {
    const bench = new BenchScreen(page);
    await goToWiring(bench);
    await page.emulateMedia({ reducedMotion: "reduce" });
    expect(await moving(page)).toEqual([]);
    await page.addStyleTag({ content: ".key { transition: background-color 80ms }" });
    expect(await moving(page)).not.toEqual([]);
  });

  test("a screen that nobody touches stands still: no frame is asked for, no style runs, nothing is drawn anew", async ({
    page,
  }) => {
    await page.addInitScript(() => {
      const counted = window as unknown as { askedFrames: number };
      counted.askedFrames = 0;
      const ask = window.requestAnimationFrame.bind(window);
      window.requestAnimationFrame = (draw) => {
        counted.askedFrames += 1;
        return ask(draw);
      };
    });
    await goToWiring(new BenchScreen(page));
    // Watched for two seconds: a blink or a moving dot would show in any of the three.
    const watched = () =>
      page.evaluate(async () => {
        const counted = window as unknown as { askedFrames: number };
        const before = counted.askedFrames;
        let changes = 0;
        const watch = new MutationObserver((records) => (changes += records.length));
        watch.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
        await new Promise((done) => setTimeout(done, 2_000));
        watch.disconnect();
        return {
          frames: counted.askedFrames - before,
          changes,
          animations: document.getAnimations().length,
        };
      });
    await expect.poll(watched, { timeout: 20_000 }).toEqual({ frames: 0, changes: 0, animations: 0 });

    // The same watch sees one that does move.
    await page.evaluate(() => {
      const turn = (): void => void requestAnimationFrame(turn);
      turn();
      document.body.animate([{ opacity: 1 }, { opacity: 0.9 }], { duration: 500, iterations: Infinity });
    });
    const seen = await watched();
    expect(seen.frames).toBeGreaterThan(0);
    expect(seen.animations).toBe(1);
  });
});
