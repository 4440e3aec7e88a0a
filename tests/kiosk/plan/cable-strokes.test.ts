import { describe, expect, it } from "vitest";
import { type CableLook, cableStrokes } from "../../../kiosk/plan/cable-strokes.ts";
import type { DrawnCore } from "../../../kiosk/plan/cores-of.ts";

const cores: DrawnCore[] = (["brown", "earth", "blue"] as const).map((core) => ({
  core,
  isThere: true,
  toCore: core,
}));
const look: CableLook = {
  line: [
    { x: 0, y: 0 },
    { x: 100, y: 0 },
  ],
  widthPx: 12,
  cores,
  isSized: true,
  isPicked: false,
  isNoted: false,
  isFaint: false,
  isUnsaved: false,
};
const coloursOf = (changed: Partial<CableLook>) =>
  cableStrokes({ ...look, ...changed }).map(({ colour }) => colour);
const sound = ["ink", "sheath", "brown", "yellow", "green", "plate", "blue"].map((name) => `var(--${name})`);

describe("the strokes of a cable", () => {
  it("lie on one another: the outline, the sheath, and each core with its pattern on its ground", () => {
    expect(coloursOf({})).toEqual(sound);
    const [outline, sheath, brown, earth, dashes] = cableStrokes(look);
    expect([outline?.path, outline?.widthPx]).toEqual([sheath?.path, 14.4]);
    expect([brown?.dashes, earth?.path]).toEqual([undefined, dashes?.path]);
    expect(dashes?.dashes?.split(" ")).toHaveLength(2);
  });

  it("have what it is marked with below it: what a finding is about, and what is touched", () => {
    const [danger, paper, ...rest] = coloursOf({ isNoted: true });
    expect([danger, paper]).toEqual(["var(--danger)", "var(--paper)"]);
    expect(rest).toEqual(sound);
    expect(coloursOf({ isPicked: true })).toEqual(["var(--ink)", "var(--boxwood)", ...sound]);
  });

  it("say by the outline whether it is on the disk, and whether its size is known", () => {
    const outlineOf = (changed: Partial<CableLook>) => cableStrokes({ ...look, ...changed })[0]?.dashes;
    expect(outlineOf({})).toBeUndefined();
    expect(outlineOf({ isSized: false })).toBe("8 3");
    expect(outlineOf({ isUnsaved: true })).toBe("2 4");
    expect(outlineOf({ isUnsaved: true, isSized: false })).toBe("2 4");
  });

  it("show a core that is not joined as a hollow lane, without any colour of its own", () => {
    const gap = cores.map((core) => (core.core === "earth" ? { ...core, isThere: false } : core));
    const [casing, plate] = ["var(--ink)", "var(--plate)"];
    expect(coloursOf({ cores: gap })).toEqual([
      casing,
      "var(--sheath)",
      casing,
      plate,
      "var(--brown)",
      "var(--plate)",
      "var(--blue)",
    ]);
  });

  it("are fainter throughout for a cable that was there before", () => {
    const faint = coloursOf({ isFaint: true });
    expect(faint).toHaveLength(sound.length);
    for (const [i, colour] of faint.entries()) {
      expect(colour).toContain(sound[i]);
      expect(colour).toMatch(/^color-mix\(in srgb, .* \d+%, var\(--paper\)\)$/);
    }
  });
});
