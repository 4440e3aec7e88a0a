import { describe, expect, it } from "vitest";
import { farCapMm, farPx } from "../../../kiosk/show/far-size.ts";
import { panelProfiles } from "../../../kiosk/panel/panel-profile.ts";
import { sizesFor } from "../../../kiosk/panel/sizes.ts";

describe("letters that are read from three metres", () => {
  // ISO 8596: a letter of 5 minutes of arc is read with sight 1.0; at 3 m that is 4.36 mm.
  it("are two times as high as whoever sees well needs on a small panel, three times on a larger one", () => {
    expect(farCapMm(true)).toBeCloseTo(2 * 4.36, 1);
    expect(farCapMm(false)).toBeCloseTo(3 * 4.36, 1);
  });

  it.each(panelProfiles)(
    "leave room for twenty letters in a line of the panel of $diagonalInch inch",
    (panel) => {
      // A letter of this typeface is about half as wide as its size.
      expect(panel.widthPx / (farPx(sizesFor(panel, false)) / 2)).toBeGreaterThan(19);
    },
  );
});
