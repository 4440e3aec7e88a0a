import { describe, expect, it } from "vitest";
import { en as firstEn } from "../../../kiosk/text/en.ts";
import { tradeWords } from "../../../kiosk/text/trade-words.ts";
import {
  lackKeys,
  noBoardKeys,
  planHelpKeys,
  planReasonKeys,
  refusalCodes,
  sayKeys,
} from "../../../shared/protocol/said-keys.ts";
import { doubledKeys, everyText } from "./every-text.ts";

const { en, pl } = everyText;
const keys = Object.keys(en);
const gaps = (text: string): string[] => [...text.matchAll(/\{(\w+)\}/g)].map(([, name = ""]) => name).sort();

/** Texts that are rightly the same in both languages. */
const sameInBoth: readonly string[] = [
  "step.plan",
  "unit.mm2",
  "unit.percent",
  "wire.tray.size",
  "plan.relation.designCurrentA",
  "plan.relation.tabulatedCurrentA",
  "dead.volts",
  "expected.term",
  "word.factors",
];

describe("the catalogues", () => {
  it("have the same keys, none of them empty", () => {
    expect(Object.keys(pl).sort()).toEqual([...keys].sort());
    for (const key of keys) expect([key, en[key]?.trim(), pl[key]?.trim()]).not.toContain("");
  });

  it("have each key in one catalogue alone, so that no late screen changes a text of another", () => {
    expect(doubledKeys).toEqual([]);
  });

  it("say nothing over three letters in English where Polish is spoken, but for a few words", () => {
    const letters = (text: string) => text.replace(/\{\w+\}/g, "").replace(/[^\p{L}]/gu, "");
    const same = keys.filter((key) => en[key] === pl[key] && letters(en[key] ?? "").length > 3);
    expect(same.filter((key) => !sameInBoth.includes(key))).toEqual([]);
  });

  it.each(keys)("fill the same gaps in both languages: %s", (key) => {
    expect(gaps(pl[key] ?? "")).toEqual(gaps(en[key] ?? ""));
  });

  it("have a word and a meaning for every trade word that is explained", () => {
    for (const word of tradeWords) expect(firstEn[`word.${word}.means`].length).toBeGreaterThan(10);
  });
});

describe("what the server says", () => {
  const said = Object.entries({
    ...sayKeys,
    ...noBoardKeys,
    ...lackKeys,
    ...planHelpKeys,
    ...planReasonKeys,
  }) as [string, readonly string[]][];
  const refused = Object.entries(refusalCodes).map(([code, facts]) => [`refused.${code}`, facts] as const);

  it.each(Object.keys(noBoardKeys))("has a remedy for the technician: %s", (key) => {
    expect(keys).toContain(`${key}.remedy`);
  });

  it.each([...said, ...refused])(
    "has a sentence that uses no gap the server does not fill: %s",
    (key, facts) => {
      // Said anywhere: it stands in the texts that are always there.
      expect(Object.keys(firstEn)).toContain(key);
      for (const gap of gaps(en[key] ?? "")) expect(facts).toContain(gap);
    },
  );
});
