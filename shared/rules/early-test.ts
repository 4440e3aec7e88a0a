import type { Reading, Taken, TestKind } from "../wiring/wiring.schema.ts";
import { rankOfTest } from "./wanted-tests.ts";

/**
 * The first test of a way that was done before one that comes earlier in the order, with those; undefined where the
 * order was kept. What counts is the first time of each: a test may be repeated after a repair. A ring's three steps
 * prove its protective conductor: where they are on record and the task does not want the other test, it is a repeat.
 */
export function earlyTest(
  readings: readonly Pick<Reading, "test" | "taken">[],
  wanted: readonly TestKind[] | undefined,
): { test: TestKind; after: TestKind[] } | undefined {
  const done = new Set<TestKind>();
  for (const { test, taken } of readings) if (test !== "polarity" || !isWithContinuity(taken)) done.add(test);
  const isRing = done.has("ring-step-1") && !wanted?.includes("continuity-cpc");
  const ordered = [...done].filter((test) => !(isRing && test === "continuity-cpc"));
  const early = ordered.find((test, index) =>
    ordered.slice(index + 1).some((later) => rankOfTest(later) < rankOfTest(test)),
  );
  if (!early) return undefined;
  return { test: early, after: ordered.filter((test) => rankOfTest(test) < rankOfTest(early)) };
}

/** Polarity that shows in the continuity test itself, by the link at the way or the crossed ends, is not early there. */
const isWithContinuity = (taken: Taken | undefined): boolean =>
  taken !== undefined && (taken.linkedAtWay === "L-E" || taken.ringEnds === "crossed");
