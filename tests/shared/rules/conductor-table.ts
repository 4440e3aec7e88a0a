import { expect, it } from "vitest";
import type { Rule } from "../../../shared/rules/rule.ts";
import { said } from "./check-electrical.ts";
import type { Row } from "./table.ts";
import { wire } from "./wire.ts";

/**
 * As `table`, for rules that read nothing but what is plugged: no value can be missing, and a contact that cannot be
 * read is left to the judge.
 */
export const conductorTable = (rule: Rule, rows: readonly Row[]): void => {
  it.each(rows)("$title", ({ lines, extras, gives }) => {
    expect(said(rule, wire(lines, extras)).toSorted()).toEqual([...gives].sort());
  });
  it("is shown in every variant and in a pass", () => {
    const shown = new Set(
      rows.flatMap(({ gives }) =>
        gives.length === 0 ? ["passes"] : gives.map((line) => line.split(" ")[1]),
      ),
    );
    expect([...Object.keys(rule.variants), "passes"].filter((variant) => !shown.has(variant))).toEqual([]);
  });
};
