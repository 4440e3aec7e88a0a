import { describe, expect, it } from "vitest";
import { type Colour, drawingPairs, palette, textPairs } from "../../../kiosk/panel/palette.ts";
import { coreStyles } from "../../../kiosk/plan/core-style.ts";

// WCAG 2.2 (W3C Recommendation), definitions of relative luminance and contrast ratio.
const luminance = (colour: Colour): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(palette[colour].slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a: Colour, b: Colour): number => {
  const [light, dark] = [luminance(a), luminance(b)].sort((m, n) => n - m) as [number, number];
  return (light + 0.05) / (dark + 0.05);
};

describe("contrast", () => {
  it.each(textPairs)("of %s text on %s is 7:1 or better", (text, ground) => {
    expect(contrast(text, ground)).toBeGreaterThanOrEqual(7);
  });

  it.each(drawingPairs)("of %s drawn on %s is 3:1 or better", (part, ground) => {
    expect(contrast(part, ground)).toBeGreaterThanOrEqual(3);
  });
});

describe("conductors", () => {
  const cores = Object.entries(coreStyles);

  // Brown and green cannot be told apart by hue under common colour blindness.
  it("differ from each other in their line pattern or their lightness, not in hue alone", () => {
    for (const [i, [nameA, a]] of cores.entries())
      for (const [nameB, b] of cores.slice(i + 1)) {
        const isSamePattern = a.dashes.join() === b.dashes.join();
        expect([nameA, nameB, isSamePattern]).toEqual([nameA, nameB, false]);
      }
  });
});
