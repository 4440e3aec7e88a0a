import { describe, expect, it } from "vitest";
import { choosePanel, panelProfiles, pxPerMm } from "../../../kiosk/panel/panel-profile.ts";
import { sizesFor } from "../../../kiosk/panel/sizes.ts";

const [seven, ten] = panelProfiles;
if (!seven || !ten) throw new Error("two panel profiles");

describe("the size of things on a panel", () => {
  it("knows a 7-inch panel of 800x480 to be 152 by 91 mm", () => {
    expect(seven.widthPx / pxPerMm(seven)).toBeCloseTo(152.4, 0);
    expect(seven.heightPx / pxPerMm(seven)).toBeCloseTo(91.4, 0);
  });

  // Atkinson Hyperlegible: sCapHeight 668 of 1000 units, read from the OS/2 table of the font that is shipped.
  it.each(panelProfiles)(
    "has capitals 3.5 mm high in the body and 2.8 mm in captions on $name inch",
    (panel) => {
      const { bodyPx, captionPx, mmPx } = sizesFor(panel, false);
      expect((bodyPx * 0.668) / mmPx).toBeCloseTo(3.5);
      expect((captionPx * 0.668) / mmPx).toBeCloseTo(2.8);
    },
  );

  it("has keys of 13 mm on a 7-inch panel and 15 mm on a larger one, the next one to do 20 mm, none under 10 mm", () => {
    const small = sizesFor(seven, false);
    const large = sizesFor(ten, false);
    expect(small.keyPx / small.mmPx).toBeCloseTo(13);
    expect(large.keyPx / large.mmPx).toBeCloseTo(15);
    for (const { mainKeyPx, leastKeyPx, mmPx } of [small, large]) {
      expect(mainKeyPx / mmPx).toBeCloseTo(20);
      expect(leastKeyPx / mmPx).toBeCloseTo(10);
    }
  });

  it("grows letters, not keys, in large mode", () => {
    const [usual, large] = [sizesFor(seven, false), sizesFor(seven, true)];
    expect(large.bodyPx).toBeGreaterThan(usual.bodyPx * 1.15);
    expect(large.captionPx).toBeGreaterThan(usual.captionPx * 1.15);
    expect(large.keyPx).toBe(usual.keyPx);
  });
});

describe("the choice of the panel", () => {
  it("goes by the window, on its side or on its end", () => {
    expect(choosePanel("", 800, 480)).toBe(seven);
    expect(choosePanel("", 480, 800)).toBe(seven);
    expect(choosePanel("", 1280, 800)).toBe(ten);
  });

  it("goes by the address where that names one", () => {
    expect(choosePanel("?panel=10", 800, 480)).toBe(ten);
    expect(choosePanel("?panel=unheard-of", 800, 480)).toBe(seven);
  });
});
