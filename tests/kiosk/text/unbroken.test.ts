import { describe, expect, it } from "vitest";
import { unbroken } from "../../../kiosk/text/unbroken.ts";

describe("a number and its unit", () => {
  it.each([
    ["Use cable of 2.5 mm² or more.", "Use cable of 2.5\u00a0mm² or more."],
    ["Kabel 2,5 mm², 27 A.", "Kabel 2,5\u00a0mm², 27\u00a0A."],
    ["It reads 1.37 Ω, not 500 MΩ.", "It reads 1.37\u00a0Ω, not 500\u00a0MΩ."],
    ["Within 0.4 s at 230 V", "Within 0.4\u00a0s at 230\u00a0V"],
  ])("stay on one line: %s", (text, drawn) => expect(unbroken(text)).toBe(drawn));

  it.each(["Way 2 and socket 3", "Tap 3 more", "socket 1 always", "two A devices", "27 Am"])(
    "are not seen where there is none: %s",
    (text) => expect(unbroken(text)).toBe(text),
  );
});
