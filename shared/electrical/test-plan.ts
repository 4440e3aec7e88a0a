import {
  type ContactId,
  type RoleClass,
  roleClass,
  roleOf,
  type StationId,
  stationOf,
} from "../board/ids.ts";
import type { Circuit } from "../circuit/model.ts";
import type { TerminalPair } from "../wiring/test-words.ts";
import type { Reading, TestKind } from "../wiring/wiring.schema.ts";

/** What a reading of a test is of: a conductor end to end, two conductors of the circuit, or a point. */
export type TestedThing = "L" | "N" | "E" | TerminalPair | StationId;

/** One reading that the record of a circuit asks for. */
export interface TestSlot {
  test: TestKind;
  of: TestedThing;
}

export type CircuitKind = "ring" | "radial";

/**
 * The readings a circuit asks for, in the order of the tests (BS 7671 643.1; IET Guidance Note 3 for the ring): a ring
 * its three steps, with steps 2 and 3 at every point before a fuse, anything else the continuity of the protective
 * conductor at every point; then insulation between all conductors, and polarity at every point.
 */
export function testPlan(
  kind: CircuitKind,
  { zone, fusedZones }: Pick<Circuit, "zone" | "fusedZones">,
): TestSlot[] {
  const points = zone.points;
  const fused = [...new Set(fusedZones.flatMap((each) => each.points))].filter((id) => !points.includes(id));
  const slots = (test: TestKind, of: readonly TestedThing[]): TestSlot[] =>
    of.map((thing) => ({ test, of: thing }));
  const isRing = kind === "ring";
  return [
    ...slots("continuity-cpc", isRing ? fused : [...points, ...fused]),
    ...(isRing
      ? [
          ...slots("ring-step-1", ["L", "N", "E"]),
          ...slots("ring-step-2", points),
          ...slots("ring-step-3", points),
        ]
      : []),
    ...slots("insulation", ["L-N", "L-E", "N-E"]),
    ...slots("polarity", [...points, ...fused]),
  ];
}

const letterOf: Record<RoleClass, "L" | "N" | "E"> = { live: "L", neutral: "N", earth: "E" };
const letterAt = (contact: ContactId): "L" | "N" | "E" => letterOf[roleClass(roleOf(contact))];

/** What a reading is of, by where its probes were; undefined where they were nowhere that this test is made. */
export function testedThing({ test, way, red, black }: Reading): TestedThing | undefined {
  if (!red || !black) return undefined;
  const [one, two] = [letterAt(red), letterAt(black)];
  switch (test) {
    case "ring-step-1":
      return one === two ? one : undefined;
    case "insulation": {
      const pair = (["L-N", "L-E", "N-E"] as const).find(
        (each) => each === `${one}-${two}` || each === `${two}-${one}`,
      );
      return pair;
    }
    default: {
      const away = [red, black].map(stationOf).filter((station) => station !== way);
      return new Set(away).size === 1 ? away[0] : undefined;
    }
  }
}
