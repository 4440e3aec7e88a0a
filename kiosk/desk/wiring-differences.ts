import type { AttemptView, SensedCable } from "../../shared/protocol/bench-view.ts";

/** One thing that two wirings do not have alike. */
export type Difference =
  | { kind: "only-left" | "only-right"; what: "cable" | "core"; id: string }
  | { kind: "other-size"; id: string; leftMm2: number | undefined; rightMm2: number | undefined };

type Wired = Pick<AttemptView, "cables">;

const coresOf = ({ conductors }: SensedCable): string[] => conductors.map(({ from, to }) => `${from}~${to}`);

/** What a wiring has that another has not: whole cables, and single cores of cables that both have. */
function onlyIn(one: Wired, other: Wired, kind: "only-left" | "only-right"): Difference[] {
  const others = new Map(other.cables.map((cable) => [cable.id, cable]));
  return one.cables.flatMap((cable): Difference[] => {
    const same = others.get(cable.id);
    if (!same) return [{ kind, what: "cable", id: cable.id }];
    const theirs = new Set(coresOf(same));
    return coresOf(cable).flatMap((id): Difference[] => (theirs.has(id) ? [] : [{ kind, what: "core", id }]));
  });
}

/** What differs between two wirings: two moments of an attempt, or two attempts at a task. */
export function wiringDifferences(left: Wired, right: Wired): Difference[] {
  const rights = new Map(right.cables.map(({ id, csaMm2 }) => [id, csaMm2]));
  const sizes = left.cables.flatMap(({ id, csaMm2 }): Difference[] =>
    rights.has(id) && rights.get(id) !== csaMm2
      ? [{ kind: "other-size", id, leftMm2: csaMm2, rightMm2: rights.get(id) }]
      : [],
  );
  return [...onlyIn(left, right, "only-left"), ...onlyIn(right, left, "only-right"), ...sizes];
}
