import type { Page } from "@playwright/test";
import { isWhole } from "../breadth.ts";
import type { BenchLink } from "./bench-link.ts";
import { limitsFor, screenProblems } from "./screen-problems.ts";

const small = limitsFor(800, 480, 7);
const large = limitsFor(1280, 800, 10.1);
const windows = [
  { name: "800x480", viewport: { width: 800, height: 480 }, limits: small },
  { name: "1280x800", viewport: { width: 1280, height: 800 }, limits: large },
  { name: "480x800", viewport: { width: 480, height: 800 }, limits: small },
  { name: "800x1280", viewport: { width: 800, height: 1280 }, limits: large },
] as const;

/** The window that whoever goes through the screens uses. */
export const [smallest] = windows;

type Language = "en" | "pl";

/** A language and whether its letters are large. */
type Setting = readonly [Language, boolean];

/** Each differs from the one before in one thing. */
export const everySetting: readonly Setting[] = [
  ["en", false],
  ["en", true],
  ["pl", true],
  ["pl", false],
];

const caution = { en: "^\\s*Training", pl: "^\\s*Tablica" };
/** Cap heights of the letters that most is written in, and the part of their size that it is, in mm. */
const cap = { usualMm: 3.5, largeMm: 4.2, share: 0.668 };

/** Brings a screen to a setting in a window, and waits until it stands so. */
const show = async (
  page: Page,
  link: BenchLink,
  [language, isLarge]: Setting,
  { viewport, limits }: (typeof windows)[number],
): Promise<void> => {
  await page.setViewportSize(viewport);
  if (link.view?.language !== language) await link.does("set-language", { language });
  if (link.view?.isLarge !== isLarge) await link.does("set-large", { isLarge });
  await link.seen((view) => view.language === language && view.isLarge === isLarge);
  const capPx = ((isLarge ? cap.largeMm : cap.usualMm) * limits.leastCapPx) / 2.8;
  await page.waitForFunction(
    ([wanted, words, lettersPx]) => {
      const bench = document.querySelector(".bench");
      // The words of a language may come later than the page says it.
      const footer = document.querySelector("footer")?.textContent ?? "";
      return (
        document.documentElement.lang === wanted &&
        new RegExp(words).test(footer) &&
        bench !== null &&
        Math.abs(parseFloat(getComputedStyle(bench).fontSize) - lettersPx) < 0.2
      );
    },
    [language, caution[language], capPx / cap.share] as const,
  );
};

/**
 * Looks at screens in each setting on both panels, either way up; the language it ends a screen with is the one it
 * begins the next with. Where time is short, at every other pair of a setting and a window, so that each screen is still
 * seen in each of them. `atUsual` is called in the usual letters of each language, in the smallest window.
 */
export class Looker {
  readonly found: { language: Language; problem: string }[] = [];
  readonly looks = { en: 0, pl: 0 };
  #screens = 0;
  #round: readonly Setting[];

  constructor(
    readonly page: Page,
    readonly settings: readonly Setting[],
    readonly atUsual: (screen: string, language: Language) => Promise<void> = async () => {},
  ) {
    this.#round = settings;
  }

  async look(screen: string, link: BenchLink): Promise<void> {
    const { page } = this;
    this.#screens += 1;
    const [first, last] = [this.#round[0], this.#round.at(-1)];
    if (!first || !last) return;
    await show(page, link, first, smallest);
    await this.atUsual(screen, first[0]);
    for (const setting of this.#round)
      for (const window of this.#windowsFor(setting)) {
        const [language, isLarge] = setting;
        await show(page, link, setting, window);
        this.looks[language] += 1;
        for (const problem of await screenProblems(page, window.limits))
          this.found.push({
            language,
            problem: `${screen} at ${window.name}${isLarge ? ", large" : ""}: ${problem}`,
          });
      }
    await show(page, link, last, smallest);
    if (last !== first) await this.atUsual(screen, last[0]);
    this.#round = this.#round.toReversed();
  }

  #windowsFor(setting: Setting) {
    const at = this.settings.indexOf(setting) + 1;
    return windows.filter(
      (_, place) => isWhole || this.settings.length === 1 || (this.#screens + at + place) % 2 === 0,
    );
  }
}
