import { stationOf } from "../board/ids.ts";
import { isToMend } from "../rules/rule.ts";
import type { Verdict } from "../rules/verdict.ts";
import type { Built } from "./scenario.schema.ts";

/** How far something is from right: what is asked counts by its places, what is wrong by its kinds. */
export const cost = {
  place: 4,
  whole: 6,
  danger: 5,
  fix: 3,
  again: 0.2,
  missing: 1,
  apart: 1,
  cable: 0.05,
  crowd: 0.1,
};

/** How far a wiring is from doing all that is asked with nothing to mend; 0 at the least. For a search only. */
export function farOf({ findings, undetermined, requirements }: Verdict, { cables }: Built): number {
  const wrong = findings.filter(({ weight }) => isToMend(weight));
  const kinds = new Map(wrong.map(({ rule, variant, weight }) => [`${rule}/${variant}`, weight]));
  const kindsFar = [...kinds.values()].reduce(
    (sum, weight) => sum + (weight === "danger" ? cost.danger : cost.fix),
    cost.again * wrong.length,
  );
  const askedFar = requirements
    .filter(({ answer }) => answer !== "met")
    .reduce(
      (sum, { requirement, places }) =>
        sum + ("stations" in requirement ? cost.place * Math.max(1, places.length) : cost.whole),
      0,
    );
  const ends = new Map<string, number>();
  for (const end of cables.flatMap(({ from, to }) => [stationOf(from), stationOf(to)]))
    ends.set(end, (ends.get(end) ?? 0) + 1);
  const crowds = [...ends.values()].filter((count) => count > 2).length;
  return (
    kindsFar +
    askedFar +
    cost.missing * undetermined.length +
    cost.cable * cables.length +
    cost.crowd * crowds
  );
}

/** What is wrong and what is missing, and how many stations are still apart, in a word. */
export const sortOf = ({ findings, requirements }: Verdict, apart: number): string =>
  JSON.stringify([
    apart,
    [
      ...new Set(
        findings.filter(({ weight }) => isToMend(weight)).map(({ rule, variant }) => `${rule}/${variant}`),
      ),
    ],
    requirements.map(({ answer, places }) => `${answer} ${places.length}`),
  ]);
