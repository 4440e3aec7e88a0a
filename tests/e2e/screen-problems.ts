import type { Page } from "@playwright/test";

/** What a screen is held to, in the pixels of its panel. */
export interface ScreenLimits {
  /** Cap height of the smallest letters. */
  leastCapPx: number;
  /** Width and height of the smallest thing to be touched. */
  leastKeyPx: number;
  /** Contrast of text. */
  leastContrast: number;
}

/**
 * Limits for a panel of so many pixels and inches: letters of 2.8 mm, keys of 10 mm, contrast 7:1 (WCAG 2.2,
 * 1.4.6). Worked out here, not taken from the kiosk.
 */
export const limitsFor = (longPx: number, shortPx: number, diagonalInch: number): ScreenLimits => {
  const pxPerMm = Math.hypot(longPx, shortPx) / (diagonalInch * 25.4);
  return { leastCapPx: 2.8 * pxPerMm, leastKeyPx: 10 * pxPerMm, leastContrast: 7 };
};

/**
 * Everything on the page that a person could not read or touch: letters and keys that are too small, text that is
 * cut off, covered, broken within a word, written over or too faint, keys that overlap or lie outside the screen, bars
 * that look like the thumb of something to scroll. One sentence each; an empty list for a sound screen.
 */
export const screenProblems = async (page: Page, limits: ScreenLimits): Promise<string[]> => {
  let found: string[] = [];
  // A screen that was turned a moment ago may still stand as it was for the last window: what is wrong stays wrong.
  for (let look = 0; look < 20; look += 1) {
    await drawn(page);
    found = await page.evaluate(findProblems, limits);
    if (found.length === 0) break;
  }
  return found;
};

/** Waits until a page is drawn for the window it has. */
const drawn = (page: Page): Promise<void> =>
  page.evaluate(async (size) => {
    const frame = () => new Promise((done) => requestAnimationFrame(done));
    await document.fonts.ready;
    // On a busy machine the page hears of its new size some frames later.
    while (size !== null && (innerWidth !== size.width || innerHeight !== size.height)) await frame();
    // Two frames: one for what a new size sets off, one for what that lays out anew.
    await frame();
    await frame();
  }, page.viewportSize());

/** Runs in the page, so it holds all it needs. */
function findProblems({ leastCapPx, leastKeyPx, leastContrast }: ScreenLimits): string[] {
  interface Box {
    left: number;
    top: number;
    right: number;
    bottom: number;
  }
  interface Run {
    element: Element;
    text: string;
    box: Box;
    seen: Box;
  }
  const problems = new Set<string>();
  const slackPx = 1;
  const screen: Box = { left: 0, top: 0, right: innerWidth, bottom: innerHeight };

  const meet = (a: Box, b: Box): Box => ({
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  });
  const size = ({ left, top, right, bottom }: Box) => ({ width: right - left, height: bottom - top });
  const isThere = (box: Box): boolean => size(box).width > slackPx && size(box).height > slackPx;
  const name = (element: Element): string => {
    const held = element.closest("[data-testid]");
    const text = (element.textContent ?? "").trim().replace(/\s+/g, " ").slice(0, 40);
    return `${held?.getAttribute("data-testid") ?? ""} <${element.tagName.toLowerCase()}> "${text}"`;
  };
  /** What is worked out once for each element: nothing on the page moves while this looks at it. */
  const once = <Found>(workOut: (element: Element) => Found): ((element: Element) => Found) => {
    const known = new Map<Element, Found>();
    return (element) => {
      let found = known.get(element);
      if (found === undefined) known.set(element, (found = workOut(element)));
      return found;
    };
  };
  const style = once((element) => {
    const { display, visibility, opacity, clipPath, overflow, overflowY, pointerEvents } =
      getComputedStyle(element);
    return { display, visibility, opacity, clipPath, overflow, overflowY, pointerEvents };
  });
  const letterStyle = once((element) => {
    const { fontStyle, fontWeight, fontSize, fontFamily, color, fill, backgroundColor } =
      getComputedStyle(element);
    return { fontStyle, fontWeight, fontSize, fontFamily, color, fill, backgroundColor };
  });
  const boxOf = once((element): Box => element.getBoundingClientRect());
  const ancestors = once((element): Element[] => {
    const found: Element[] = [];
    for (let up: Element | null = element; up; up = up.parentElement) found.push(up);
    return found;
  });

  // With a dialog open the rest of the page is out of reach and behind its backdrop.
  const dialog = [...document.querySelectorAll("dialog[open]")].at(-1);
  const root: Element = dialog ?? document.body;
  const isOutOfUse = once((element): boolean =>
    ancestors(element).some(
      (up) => style(up).display === "none" || style(up).visibility === "hidden" || style(up).opacity === "0",
    ),
  );
  const isForEars = once((element): boolean =>
    ancestors(element).some((up) => style(up).clipPath.startsWith("inset(50%")),
  );
  const layer = once((element): Element => element.closest("dialog, aside") ?? document.body);
  const scrollsDown = (element: Element): boolean => /auto|scroll/.test(style(element).overflowY);
  const clips = (element: Element): boolean => style(element).overflow !== "visible";

  /** What of a box is left to see inside everything that clips it, short of what can be scrolled to. */
  const seenOf = (holders: Element[], box: Box): Box =>
    holders.filter(clips).reduce((seen, up) => meet(seen, boxOf(up)), meet(box, screen));
  /** Which of its holders cuts a box off and cannot be scrolled down to show it. */
  const hidesPartOf = (holders: Element[], box: Box): string | undefined => {
    for (const up of holders) {
      const frame = boxOf(up);
      const isTooWide = box.right > frame.right + slackPx || box.left < frame.left - slackPx;
      const isTooHigh = box.bottom > frame.bottom + slackPx || box.top < frame.top - slackPx;
      if (scrollsDown(up)) return isTooWide ? name(up) : undefined;
      if (clips(up) && (isTooWide || isTooHigh)) return name(up);
      if (up.matches("button, a, input") && (isTooWide || isTooHigh)) return name(up);
    }
    const isOutside =
      box.right > screen.right + slackPx ||
      box.left < -slackPx ||
      box.bottom > screen.bottom + slackPx ||
      box.top < -slackPx;
    return isOutside ? "the screen" : undefined;
  };

  const runs: Run[] = [];
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    const text = (node.textContent ?? "").trim();
    if (!element || text === "" || element.closest("script, style")) continue;
    if (isOutOfUse(element) || isForEars(element)) continue;
    const range = document.createRange();
    for (const { index, 0: word } of (node.textContent ?? "").matchAll(/[\p{L}\p{N}]{2,}/gu)) {
      range.setStart(node, index);
      range.setEnd(node, index + word.length);
      const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
      if (lines.size > 1) problems.add(`broken word "${word}": ${name(element)}`);
    }
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) {
      // A box of a line is as high as the typeface's ascent and descent; letters take its middle.
      const inset = box.height * 0.15;
      const letters = { left: box.left, top: box.top + inset, right: box.right, bottom: box.bottom - inset };
      if (isThere(letters))
        runs.push({ element, text, box: letters, seen: seenOf(ancestors(element), letters) });
    }
  }

  // Letters
  const ink = document.createElement("canvas").getContext("2d");
  const capPx = (element: Element): number => {
    const { fontStyle, fontWeight, fontSize, fontFamily } = letterStyle(element);
    const scale = element instanceof SVGTextElement ? Math.abs(element.getScreenCTM()?.d ?? 1) : 1;
    if (!ink) return Number.NaN;
    // Measured large, so that the rounding of the canvas does not count.
    ink.font = `${fontStyle} ${fontWeight} 1000px ${fontFamily}`;
    return (ink.measureText("H").actualBoundingBoxAscent / 1000) * parseFloat(fontSize) * scale;
  };
  for (const { element, text, box, seen } of runs) {
    const cap = capPx(element);
    if (!(cap >= leastCapPx - 0.1))
      problems.add(`small letters (${cap.toFixed(1)} of ${leastCapPx.toFixed(1)} px): ${name(element)}`);
    const by = hidesPartOf(ancestors(element), box);
    if (by !== undefined) problems.add(`cut off by ${by}: ${name(element)} "${text.slice(0, 30)}"`);
    if (!isThere(seen)) continue;
    const top = document.elementFromPoint((seen.left + seen.right) / 2, (seen.top + seen.bottom) / 2);
    if (!top || !root.contains(top)) continue;
    const isOwn = top.contains(element) || element.contains(top);
    const isAbove = layer(top) !== layer(element) && layer(top) !== document.body;
    const isLetThrough = style(element).pointerEvents === "none";
    if (!isOwn && !isAbove && !isLetThrough) problems.add(`covered by ${name(top)}: ${name(element)}`);
  }
  for (const [i, a] of runs.entries())
    for (const b of runs.slice(i + 1)) {
      if (a.element === b.element || layer(a.element) !== layer(b.element)) continue;
      const { width, height } = size(meet(a.seen, b.seen));
      if (width > 2 && height > 2)
        problems.add(`written over each other: ${name(a.element)} and ${name(b.element)}`);
    }

  // What scrolls by less than a line has a thumb as long as itself, and nothing to show.
  for (const element of root.querySelectorAll("*")) {
    const beyondPx = element.scrollHeight - element.clientHeight;
    if (scrollsDown(element) && beyondPx > 0 && beyondPx < 6 && !isOutOfUse(element))
      problems.add(`scrolls by ${beyondPx} px only: ${name(element)}`);
  }

  // Contrast, by WCAG 2.2's relative luminance
  const parse = (colour: string): [number, number, number, number] => {
    const parts = /rgba?\(([^)]+)\)/
      .exec(colour)?.[1]
      ?.split(/[,/ ]+/)
      .map(Number) ?? [0, 0, 0, 0];
    return [parts[0] ?? 0, parts[1] ?? 0, parts[2] ?? 0, parts[3] ?? 1];
  };
  const luminance = ([r, g, b]: readonly number[]): number => {
    const [red = 0, green = 0, blue = 0] = [r, g, b].map((channel) => {
      const part = (channel ?? 0) / 255;
      return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const groundOf = once((element): number[] => {
    for (const up of ancestors(element)) {
      const ground = parse(letterStyle(up).backgroundColor);
      if (ground[3] === 1) return ground;
    }
    return [255, 255, 255];
  });
  for (const { element } of runs) {
    const { color, fill } = letterStyle(element);
    const letters = parse(element instanceof SVGElement ? fill : color);
    const [light = 0, dark = 0] = [luminance(letters), luminance(groundOf(element))].sort((a, b) => b - a);
    const contrast = (light + 0.05) / (dark + 0.05);
    if (contrast < leastContrast) problems.add(`faint (${contrast.toFixed(1)}:1): ${name(element)}`);
  }

  // Things to be touched. A cable's label is no key: a touch on the ground beside it picks the cable too.
  const touchable = "button, input, select, textarea, a[href], [role='button'], [role='link']";
  const keys = [...root.querySelectorAll(touchable)]
    .filter((element) => !isOutOfUse(element) && !isForEars(element))
    .filter((element) => !element.getAttribute("data-testid")?.startsWith("cable-"))
    .map((element) => {
      const box = boxOf(element);
      return { element, box, seen: seenOf(ancestors(element).slice(1), box) };
    });
  for (const { element, box } of keys) {
    const { width, height } = size(box);
    if (width < leastKeyPx - 0.5 || height < leastKeyPx - 0.5)
      problems.add(
        `small key (${width.toFixed(0)}x${height.toFixed(0)} of ${leastKeyPx.toFixed(0)} px): ${name(element)}`,
      );
    const by = hidesPartOf(ancestors(element).slice(1), box);
    if (by !== undefined) problems.add(`out of reach in ${by}: ${name(element)}`);
  }
  for (const [i, a] of keys.entries())
    for (const b of keys.slice(i + 1)) {
      if (layer(a.element) !== layer(b.element)) continue;
      const { width, height } = size(meet(a.seen, b.seen));
      if (width > slackPx && height > slackPx)
        problems.add(`overlapping keys: ${name(a.element)} and ${name(b.element)}`);
    }

  // A bar along one side only is taken for the thumb of something to scroll.
  for (const element of root.querySelectorAll("*")) {
    const { borderLeftWidth, borderRightWidth, borderLeftStyle } = getComputedStyle(element);
    const isBar =
      parseFloat(borderLeftWidth) > parseFloat(borderRightWidth) + 2 && borderLeftStyle === "solid";
    if (isBar && !isOutOfUse(element)) problems.add(`bar like a scroll thumb: ${name(element)}`);
  }

  const page = document.documentElement;
  if (page.scrollWidth > innerWidth || page.scrollHeight > innerHeight)
    problems.add(`larger than the screen: ${page.scrollWidth}x${page.scrollHeight}`);
  return [...problems];
}
