import { byId, type StationId } from "../board/ids.ts";
import type { Reading } from "../wiring/wiring.schema.ts";
import { earlyTest } from "./early-test.ts";
import { at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";
import { wantedTests } from "./wanted-tests.ts";

/** A test that was first done before one that comes earlier. An earlier test that was never done is `test-missing`. */
export const testOrder: Rule = {
  id: "test-order",
  variants: { order: "fix" },
  standsWithUnknown: true,
  source: { kind: "regulation", document: "BS 7671:2018", clause: "643.1", checked: "from memory" },
  isNeverHidden: true,
  check: ({ wiring }) => {
    const byWay = new Map<StationId, Reading[]>();
    for (const reading of wiring.readings ?? [])
      byWay.set(reading.way, [...(byWay.get(reading.way) ?? []), reading]);
    const wanted = wantedTests(wiring);
    return [...byWay]
      .sort(([a], [b]) => byId(a, b))
      .flatMap(([way, readings]) => {
        const early = earlyTest(readings, wanted.get(way));
        return early ? evidence("order", [at("station", way)], { way, ...early }) : [];
      });
  },
};
