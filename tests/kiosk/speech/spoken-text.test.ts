import { describe, expect, it } from "vitest";
import { spokenText } from "../../../kiosk/speech/spoken-text.ts";

describe("what a voice is given to say", () => {
  it.each([
    ["Change to 2.5 mm².", "Change to 2.5 square millimetres."],
    ["20 A is below 32 A.", "20 amps is below 32 amps."],
    ["In ≥ Ib: 1540 W ÷ 230 V", "In is at least Ib: 1540 watts divided by 230 volts"],
    ["It >= 20 A", "It is at least 20 amps"],
    ["Ca 1 × Cg 0.8, >999 MΩ, 0.19 Ω", "Ca 1 times Cg 0.8, more than 999 megohms, 0.19 ohms"],
    ["12 m × 7.41 mΩ/m, 18 ms", "12 m times 7.41 milliohms a metre, 18 milliseconds"],
    ["socket outlet 3 a, from way 1 AND on", "socket outlet 3 a, from way 1 AND on"],
  ])("in English: %s", (text, said) => {
    expect(spokenText(text, "en")).toBe(said);
  });

  // Polish counts: 1 amper, 2 to 4 ampery, 5 amperów, 12 to 14 amperów, 22 ampery; a part of one is "ampera".
  it.each([
    ["1 A", "1 amper"],
    ["3 A, 22 A", "3 ampery, 22 ampery"],
    ["5 A, 13 A, 32 A", "5 amperów, 13 amperów, 32 ampery"],
    ["6,7 A i 2,5 mm²", "6,7 ampera i 2,5 milimetra kwadratowego"],
    ["7,41 mΩ/m, 18 ms, >999 MΩ", "7,41 milioma na metr, 18 milisekund, ponad 999 megaomów"],
    ["4 mm² ≤ 230 V", "4 milimetry kwadratowe co najwyżej 230 woltów"],
  ])("in Polish: %s", (text, said) => {
    expect(spokenText(text, "pl")).toBe(said);
  });
});
