import { describe, expect, it } from "vitest";
import { en, type TextKey } from "../../../kiosk/text/en.ts";
import { pl } from "../../../kiosk/text/pl.ts";
import { tradeWords } from "../../../kiosk/text/trade-words.ts";
import {
  lackKeys,
  noBoardKeys,
  planHelpKeys,
  planReasonKeys,
  refusalCodes,
  sayKeys,
} from "../../../shared/protocol/said-keys.ts";

const keys = Object.keys(en) as TextKey[];
const gaps = (text: string): string[] => [...text.matchAll(/\{(\w+)\}/g)].map(([, name = ""]) => name).sort();

/** Texts that are rightly the same in both languages. */
const sameInBoth: readonly TextKey[] = [
  "step.plan",
  "unit.mm2",
  "unit.percent",
  "wire.tray.size",
  "plan.relation.designCurrentA",
  "plan.relation.tabulatedCurrentA",
  "dead.volts",
  "expected.term",
];

describe("the catalogues", () => {
  it("have the same keys, none of them empty", () => {
    expect(Object.keys(pl).sort()).toEqual([...keys].sort());
    for (const key of keys) expect([key, en[key].trim(), pl[key].trim()]).not.toContain("");
  });

  it("say nothing over three letters in English where Polish is spoken, but for a few words", () => {
    const letters = (text: string) => text.replace(/\{\w+\}/g, "").replace(/[^\p{L}]/gu, "");
    const same = keys.filter((key) => en[key] === pl[key] && letters(en[key]).length > 3);
    expect(same.filter((key) => !sameInBoth.includes(key))).toEqual([]);
  });

  it.each(keys)("fill the same gaps in both languages: %s", (key) => {
    expect(gaps(pl[key])).toEqual(gaps(en[key]));
  });

  it("have a word and a meaning for every trade word that is explained", () => {
    for (const word of tradeWords) expect(en[`word.${word}.means`].length).toBeGreaterThan(10);
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
      expect(keys).toContain(key);
      for (const gap of gaps(en[key as TextKey])) expect(facts).toContain(gap);
    },
  );
});
