import { expect, type Page } from "@playwright/test";
import type { BenchLink } from "./bench-link.ts";
import type { BenchProcess } from "./bench-process.ts";
import { BenchScreen } from "./bench-screen.ts";
import { test } from "./bench-test.ts";
import { isFocusSeen, pressByKeyboard } from "./keyboard.ts";

let running: BenchProcess;
let link: BenchLink;
test.beforeEach(({ workshop }) => {
  ({ running, link } = workshop);
});

test.use({ viewport: { width: 800, height: 480 } });

test("the keyboard alone takes a learner from the sign-in to a verdict, the focus is always seen, and the verdict is told in a live region", async ({
  page,
}) => {
  test.setTimeout(90_000);
  await page.goto(running.address);
  await pressByKeyboard(page, "key-guest");
  await pressByKeyboard(page, "scenario-build-a-radial");
  await pressByKeyboard(page, "key-practice");
  await pressByKeyboard(page, "key-accept-caution");
  await pressByKeyboard(page, "step-wire");

  await pressByKeyboard(page, "key-tray");
  await pressByKeyboard(page, "key-take-2.5");
  await expect(page.getByTestId("dialog-tray")).toBeHidden();
  await pressByKeyboard(page, "station-way-2");
  await pressByKeyboard(page, "station-socket-1");
  await expect(page.getByTestId("cable-socket-1.a~way-2.a")).toBeAttached();
  expect(await isFocusSeen(page)).toBe(true);

  // On the face: a lead from contact to contact, and Escape puts down what is in hand.
  await pressByKeyboard(page, "key-face");
  await pressByKeyboard(page, "station-socket-1");
  await pressByKeyboard(page, "station-socket-2");
  await pressByKeyboard(page, "contact-socket-1.b.L");
  await expect(page.getByTestId("key-cancel")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.getByTestId("key-cancel")).toBeHidden();
  for (const role of ["L", "N", "E"]) {
    await pressByKeyboard(page, `contact-socket-1.b.${role}`);
    await pressByKeyboard(page, `contact-socket-2.a.${role}`);
    await expect(page.getByTestId(`contact-socket-2.a.${role}`)).toHaveAccessibleName(/leads to/i);
  }
  await pressByKeyboard(page, "key-size-1.5");
  await pressByKeyboard(page, "key-face");
  expect(await isFocusSeen(page)).toBe(true);

  const live = page.getByTestId("live");
  await expect(live).toHaveAttribute("aria-live", "polite");
  await expect(live).toHaveText("");
  await pressByKeyboard(page, "key-check");
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

  await pressByKeyboard(page, `finding-${first?.id.split("/")[0]}`);
  // What was pressed goes with its card: the focus goes on to the next one's head, then to the strip's first key.
  await expect(page.getByRole("heading", { name: first?.title ?? "no finding" })).toBeFocused();
  await pressByKeyboard(page, "key-show-place");
  await expect(page.getByTestId("key-back-to-note")).toBeFocused();
  await pressByKeyboard(page, "key-menu");
  await expect(page.getByTestId("dialog-menu")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.getByTestId("dialog-menu")).toBeHidden();
  await expect(page.getByTestId("key-menu")).toBeFocused();
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

  test(
    "a screen that nobody touches stands still: no frame is asked for, no style runs, nothing is drawn anew",
    { tag: "@sweep" },
    async ({ page }) => {
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
    },
  );
});
