import { expect, it } from "vitest";
import { stationId } from "../../../shared/board/ids.ts";
import type { Rule } from "../../../shared/rules/rule.ts";
import type { Load } from "../../../shared/wiring/wiring.schema.ts";
import { said } from "./check-electrical.ts";
import { type Extras, wire } from "./wire.ts";

/** A wiring and all that one rule says of it, as `fix small socket-1.a~way-1.a` or `missing csaMm2 ...`. */
export interface Row {
  /** A claim about the world. */
  title: string;
  lines: string[];
  extras?: Extras;
  gives: string[];
}

/**
 * A check a row; and that the rows show every variant of the rule but those `elsewhere`, a wiring it passes and a
 * value it misses.
 */
export const table = (rule: Rule, rows: readonly Row[], elsewhere: readonly string[] = []): void => {
  it.each(rows)("$title", ({ lines, extras, gives }) => {
    expect(said(rule, wire(lines, extras)).toSorted()).toEqual([...gives].sort());
  });
  it("is shown in every variant, in a pass and in what it cannot tell", () => {
    const shown = new Set(
      rows.flatMap(({ gives }) =>
        gives.length === 0 ? ["passes"] : gives.map((line) => line.split(" ")[1]),
      ),
    );
    const lacking = rows.some(({ gives }) => gives.some((line) => line.startsWith("missing ")));
    const wanted = [...Object.keys(rule.variants), "passes"].filter(
      (variant) => !elsewhere.includes(variant),
    );
    expect(wanted.filter((variant) => !shown.has(variant))).toEqual([]);
    expect(lacking).toBe(true);
  });
};

export const load = (station: string, powerW: number): Load => ({ station: stationId(station), powerW });

/** A ring of three socket outlets on way 1. */
export const ring = [
  "way-1.a socket-1.a 8m",
  "socket-1.b socket-2.a 8m",
  "socket-2.b socket-3.a 8m",
  "socket-3.b way-1.b 8m",
];
