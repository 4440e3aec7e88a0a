import { byId, type StationId } from "../board/ids.ts";
import { testSequence } from "../trade/test-sequence.ts";
import type { TestKind, Wiring } from "../wiring/wiring.schema.ts";

/** Place of a test in the order of dead tests, from 1. */
export const rankOfTest = (test: TestKind): number =>
  testSequence.find((row) => row.test === test)?.rank ?? 0;

/** The tests a task asks for, by way, each once and in their order. */
export function wantedTests({ wants = [] }: Pick<Wiring, "wants">): Map<StationId, TestKind[]> {
  const byWay = new Map<StationId, Set<TestKind>>();
  for (const want of wants) {
    if (want.kind !== "readings") continue;
    const known = byWay.get(want.way) ?? new Set();
    for (const test of want.tests) known.add(test);
    byWay.set(want.way, known);
  }
  return new Map(
    [...byWay]
      .sort(([a], [b]) => byId(a, b))
      .map(([way, tests]) => [way, [...tests].sort((a, b) => rankOfTest(a) - rankOfTest(b) || byId(a, b))]),
  );
}
