import { byId, type StationId } from "../board/ids.ts";
import type { Taken, TestKind } from "../wiring/wiring.schema.ts";
import { at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";
import { rankOfTest, wantedTests } from "./wanted-tests.ts";

/**
 * A test that was first done before one that comes earlier in the order. What counts is the first time of each: a
 * test may be repeated after a repair. An earlier test that was never done is `test-missing`.
 */
export const testOrder: Rule = {
  id: "test-order",
  variants: { order: "fix" },
  standsWithUnknown: true,
  source: { kind: "regulation", document: "BS 7671:2018", clause: "643.1", checked: "from memory" },
  isNeverHidden: true,
  check: ({ wiring }) => {
    const firstDone = new Map<StationId, TestKind[]>();
    for (const { way, test, taken } of wiring.readings ?? []) {
      if (test === "polarity" && isWithContinuity(taken)) continue;
      const known = firstDone.get(way) ?? [];
      if (!known.includes(test)) firstDone.set(way, [...known, test]);
    }
    const wanted = wantedTests(wiring);
    return [...firstDone]
      .sort(([a], [b]) => byId(a, b))
      .flatMap(([way, tests]) => {
        // A ring's three steps prove its protective conductor; where they are on record the other test is a repeat.
        const isRing = tests.includes("ring-step-1") && !wanted.get(way)?.includes("continuity-cpc");
        const ordered = tests.filter((test) => !(isRing && test === "continuity-cpc"));
        const early = ordered.find((test, index) =>
          ordered.slice(index + 1).some((later) => rankOfTest(later) < rankOfTest(test)),
        );
        if (!early) return [];
        const after = ordered.filter((test) => rankOfTest(test) < rankOfTest(early));
        return evidence("order", [at("station", way)], { way, test: early, after });
      });
  },
};

/** Polarity that shows in the continuity test itself, by the link at the way or the crossed ends, is not early there. */
const isWithContinuity = (taken: Taken | undefined): boolean =>
  taken !== undefined && (taken.linkedAtWay === "L-E" || taken.ringEnds === "crossed");
