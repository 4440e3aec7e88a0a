import { expect, type Page } from "@playwright/test";
import { axeProblems } from "./axe-problems.ts";
import { deskPin } from "./desk-people.ts";

const besidePx = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

const pictures = process.env["SPURWISE_DESK_PICTURES"];

/** On a sheet of A4 stands what was found and decided; nothing to press, nothing to fill in, nothing beside the sheet. */
async function printsClean(page: Page, name: string): Promise<void> {
  await page.setViewportSize({ width: 794, height: 1123 });
  await page.emulateMedia({ media: "print" });
  expect(await besidePx(page), `${name} on paper`).toBeLessThanOrEqual(0);
  // A plan is drawn with keys that cannot be pressed here: they stay.
  const used = "nav:visible, button:not(th > button, [inert] button):visible, form:visible, input:visible";
  expect(await page.locator(used).count(), `${name} on paper`).toBe(0);
  const plan = page.getByTestId("desk-plan").getByRole("button", { includeHidden: true });
  if ((await plan.count()) > 0) await expect(plan.first(), `${name} on paper`).toBeVisible();
  if (pictures) await page.screenshot({ path: `${pictures}/${name}-paper.png`, fullPage: true });
  await page.emulateMedia({ media: "screen" });
}

/**
 * On a desk's own screen and on a telephone, in both languages: nothing that axe finds, and nothing beside the window; and
 * clean on paper. The page is left in English.
 */
export async function isClean(page: Page, name: string): Promise<void> {
  const toggle = page.getByTestId("desk-language");
  const languages = (await toggle.count()) > 0 ? (["pl", "en"] as const) : ([undefined] as const);
  for (const language of languages) {
    if (language) {
      await toggle.click();
      await expect(page.locator("html")).toHaveAttribute("lang", language);
    }
    for (const [width, height] of [
      [390, 844],
      [1280, 800],
    ] as const) {
      await page.setViewportSize({ width, height });
      const which = [name, ...(language ? [language] : []), width].join("-");
      // What axe looks at is the same in both languages but for how long the words are: each has one of the sizes.
      if (!language || (language === "pl") === (width === 390))
        expect(await axeProblems(page), which).toEqual([]);
      expect(await besidePx(page), which).toBeLessThanOrEqual(0);
      if (pictures) await page.screenshot({ path: `${pictures}/${which}.png`, fullPage: true });
    }
  }
  await printsClean(page, name);
  await page.setViewportSize({ width: 1280, height: 800 });
}

/** Everything on a page that can be used is reached with the Tab key alone, in turn, and shows that it is. */
export async function isReachedByKeyboard(page: Page): Promise<void> {
  const wanted = await page.evaluate(() => {
    (document.activeElement as HTMLElement | null)?.blur();
    const usable = "a[href], button, input, select, textarea, [tabindex='0']";
    // The browser stops at the day, the month, the year and the calendar of a date.
    const stops = (one: Element) => (one.matches("input[type='date']") ? 4 : 1);
    return [...document.querySelectorAll<HTMLElement & { disabled?: boolean }>(usable)]
      .filter((one) => !one.disabled && one.tabIndex >= 0 && one.checkVisibility() && !one.closest("[inert]"))
      .reduce((count, one) => count + stops(one), 0);
  });
  const reached: string[] = [];
  // The browser goes on from where the focus was last, and stops once at its own window on the way round.
  for (let count = 0; count <= wanted; count += 1) {
    await page.keyboard.press("Tab");
    reached.push(
      await page.evaluate(() => {
        const one = document.activeElement as HTMLElement;
        if (one === document.body) return "";
        const isSeen = getComputedStyle(one).outlineStyle !== "none";
        one.dataset["reached"] = "";
        return isSeen ? "" : one.outerHTML.slice(0, 120);
      }),
    );
  }
  expect(reached.filter((unseen) => unseen !== "")).toEqual([]);
  const missed = await page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement & { disabled?: boolean }>(
        "a[href], button, input, select, textarea",
      ),
    ]
      .filter(
        (one) =>
          !one.disabled &&
          one.checkVisibility() &&
          !one.closest("[inert]") &&
          one.dataset["reached"] === undefined,
      )
      .map((one) => one.outerHTML.slice(0, 120)),
  );
  expect(missed).toEqual([]);
}

/** Signs one of the staff in at the desk, over the network, with the keyboard alone. */
export async function signInAtDesk(page: Page, address: string, name: string): Promise<void> {
  await page.goto(address);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Sign in to this bench");
  await page.getByLabel("Your name").focus();
  await page.keyboard.type(name);
  await page.keyboard.press("Tab");
  await page.keyboard.type(deskPin);
  await page.keyboard.press("Enter");
  // A PIN is dear to check, on purpose.
  await expect(page.getByTestId("desk-me")).toContainText(name, { timeout: 30_000 });
}
