import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { rules } from "../../../shared/rules/index.ts";
import { judge } from "../../../shared/rules/judge.ts";
import type { RuleId } from "../../../shared/rules/rule.ts";
import { wiringSchema } from "../../../shared/wiring/wiring.schema.ts";

/** A wiring with all findings it must give: rule, variant, and a place that is among its causes or places. */
interface Case {
  name: string;
  wiring: unknown;
  expected: { rule: RuleId; variant: string; place: string }[];
  /** What must be undetermined; nothing may be undetermined about any other place. */
  undetermined?: { rule: RuleId; place: string; field: string }[];
  /** Rules without which the case cannot come out: it is run as soon as the pack has them. */
  waitsFor?: RuleId[];
}

const folder = new URL("./cases/", import.meta.url);
const pack = new Set(rules.map(({ id }) => id));
const cases = readdirSync(folder)
  .sort()
  .map((file) => JSON.parse(readFileSync(new URL(file, folder), "utf8")) as Case)
  .filter(({ waitsFor = [] }) => waitsFor.every((rule) => pack.has(rule)));

describe("the verdict on what every reader of the trade would try", () => {
  it.each(cases)("is right for $name", ({ wiring, expected, undetermined = [] }) => {
    const verdict = judge(wiringSchema.parse(wiring));
    const named = verdict.findings.map((finding) => {
      const places = [...finding.causes, ...finding.places].map(({ id }) => id);
      const match = expected.find(
        ({ rule, variant, place }) =>
          rule === finding.rule && variant === finding.variant && places.includes(place),
      );
      return match ?? { rule: finding.rule, variant: finding.variant, unmarked: places };
    });
    expect(named.sort(byRule)).toEqual([...expected].sort(byRule));
    for (const { rule, place, field } of undetermined)
      expect(verdict.undetermined).toContainEqual(
        expect.objectContaining({ rule, field, place: expect.objectContaining({ id: place }) as unknown }),
      );
    const allowed = undetermined.map(({ place }) => place);
    expect(verdict.undetermined.filter(({ place }) => !allowed.includes(place.id))).toEqual([]);
  });
});

const byRule = (a: { rule: string }, b: { rule: string }): number => (a.rule < b.rule ? -1 : 1);
