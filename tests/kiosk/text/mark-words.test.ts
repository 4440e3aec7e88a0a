import { readdirSync, readFileSync } from "node:fs";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { markWords } from "../../../kiosk/text/mark-words.ts";
import { tradeWords } from "../../../kiosk/text/trade-words.ts";
import { type Language, languages } from "../../../shared/text/languages.ts";
import { everyText } from "./every-text.ts";

const marked = (text: string, language: Language) =>
  markWords(text, language).flatMap(({ text: part, word }) => (word ? [`${part}: ${word}`] : []));

describe("words of the trade in a text", () => {
  it.each<[string, string[]]>([
    ["Build a ring from way 1 and back to way 1.", ["ring: ring", "way: way", "way: way"]],
    ["Rings and spurs", ["Rings: ring", "spurs: spur"]],
    ["Feed it through fused connection unit (FCU) 1.", ["fused connection unit (FCU): fcu"]],
    ["In the step Plan the cable is laid the other way.", []],
    ["In ≤ Iz", ["In: In", "Iz: Iz"]],
    ["Which one? (It)", ["(It): It"]],
    ["It is a ring", ["ring: ring"]],
    ["Nothing brings or appoints the liveliest of them here.", []],
    ["The isolators of a TT supply", ["isolators: isolator", "TT: TT"]],
    [
      "Continuity, R1 + R2, then insulation resistance",
      ["Continuity: continuity", "R1 + R2: R1-R2", "insulation resistance: insulation-resistance"],
    ],
    ["Fault loop, Zs: the earth electrode", ["Fault loop: Zs", "Zs: Zs", "earth electrode: earth-electrode"]],
    ["A spur may start at the way itself.", ["spur: spur", "way: way"]],
    ["The RCD of the way.", ["RCD: rcd"]],
    ["The switched line leaves the ceiling rose.", ["switched line: switched-line", "ceiling rose: rose"]],
    ["Two-way switches share two strappers.", ["Two-way switches: two-way", "strappers: strapper"]],
  ])("in English: %s", (text, expected) => {
    expect(marked(text, "en")).toEqual(expected);
  });

  it.each<[string, string[]]>([
    ["Zbuduj pierścień od pola 1.", ["pierścień: ring", "pola: way"]],
    [
      "Zasil z pierścienia przez złącze z bezpiecznikiem (FCU) 1.",
      ["pierścienia: ring", "złącze z bezpiecznikiem (FCU): fcu"],
    ],
    ["Wyłącznik różnicowoprądowy, wyłącznikiem", ["Wyłącznik różnicowoprądowy: rcd", "wyłącznikiem: device"]],
    ["Odgałęzień z puszki", ["Odgałęzień: spur", "puszki: junction-box"]],
    ["przewodem ochronnym i neutralnym", ["przewodem ochronnym: earth", "neutralnym: neutral"]],
    ["Polecenie: punktualnie", []],
    ["Rezystancją izolacji żył", ["Rezystancją izolacji: insulation-resistance", "żył: core"]],
    ["przez rozłącznik dwubiegunowy w sieci TT", ["rozłącznik dwubiegunowy: isolator", "TT: TT"]],
    ["Ze zwarciem w obwodzie", ["zwarciem: short", "obwodzie: circuit"]],
    ["Faza i faza załączana", ["Faza: line", "faza załączana: switched-line"]],
    [
      "Łącznik krzyżowy stoi w żyłach korespondencyjnych.",
      ["Łącznik krzyżowy: intermediate", "żyłach korespondencyjnych: strapper"],
    ],
  ])("in Polish: %s", (text, expected) => {
    expect(marked(text, "pl")).toEqual(expected);
  });

  it("leave the text as it was, whatever it is", () => {
    const bits = Object.values(everyText).flatMap((texts) => Object.values(texts));
    fc.assert(
      fc.property(
        fc.constantFrom(...languages),
        fc.array(fc.oneof(fc.string(), fc.constantFrom(...bits)), { maxLength: 6 }),
        (language, texts) => {
          const text = texts.join(" ");
          expect(
            markWords(text, language)
              .map(({ text: part }) => part)
              .join(""),
          ).toBe(text);
        },
      ),
    );
  });
});

describe.each(languages)("what a learner reads in %s", (language) => {
  const scenarios = readdirSync("scenarios").map((name) => readFileSync(`scenarios/${name}`, "utf8"));
  const catalogue = Object.entries(everyText[language]).filter(([key]) => !key.startsWith("word."));
  const wording = ["", "-terms"].map((rest) =>
    readFileSync(`shared/rules/wording/${language}${rest}.ts`, "utf8"),
  );
  const all = [...scenarios, ...catalogue.map(([, text]) => text), ...wording].join("\n");
  const found = new Set(markWords(all, language).map(({ word }) => word));

  it.each(tradeWords)("has the word %s somewhere, so that it is worth explaining", (word) => {
    expect(found).toContain(word);
  });
});
