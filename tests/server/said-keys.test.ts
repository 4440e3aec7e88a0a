import { describe, expect, it } from "vitest";
import { en } from "../../kiosk/text/en.ts";
import { pl } from "../../kiosk/text/pl.ts";
import {
  lackKeys,
  mendKeys,
  noBoardKeys,
  planHelpKeys,
  planReasonKeys,
  refusalCodes,
  sayKeys,
} from "../../shared/protocol/said-keys.ts";

const catalogues: Record<string, Record<string, string>> = { en, pl };
const refusals = Object.fromEntries(
  Object.entries(refusalCodes).map(([code, facts]) => [`refused.${code}`, facts]),
);
const keys: [string, readonly string[]][] = Object.entries({
  ...sayKeys,
  ...noBoardKeys,
  ...lackKeys,
  ...mendKeys,
  ...planHelpKeys,
  ...planReasonKeys,
  ...refusals,
});

describe.each(Object.keys(catalogues))("what the server says, in %s", (language) => {
  it.each(keys)("%s has a sentence, and every gap of it is filled", (key, facts) => {
    const sentence = catalogues[language]?.[key] ?? "";
    expect(sentence).not.toBe("");
    const gaps = [...sentence.matchAll(/\{(\w+)\}/g)].map(([, gap]) => gap);
    expect(gaps.filter((gap) => !facts.includes(gap ?? ""))).toEqual([]);
  });
});
