import type { StationId } from "../board/ids.ts";
import type { TestKind } from "../wiring/wiring.schema.ts";
import { at, evidence } from "./evidence.ts";
import { wantedTests } from "./wanted-tests.ts";
import type { Rule } from "./rule.ts";

/** A test the task asks for that is not on record. */
export const testMissing: Rule = {
  id: "test-missing",
  variants: { missing: "fix" },
  standsWithUnknown: true,
  source: { kind: "regulation", document: "BS 7671:2018", clause: "643.1 to 643.6", checked: "from memory" },
  isNeverHidden: true,
  check: ({ wiring }) =>
    [...wantedTests(wiring)].flatMap(([way, tests]) => {
      const isOnRecord = (test: TestKind, of: StationId): boolean =>
        (wiring.readings ?? []).some((reading) => reading.test === test && reading.way === of);
      const lacking = tests.filter((test) => !isOnRecord(test, way));
      return lacking.length === 0 ? [] : evidence("missing", [at("station", way)], { way, tests: lacking });
    }),
};
