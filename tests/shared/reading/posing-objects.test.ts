import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readBoard } from "../../../shared/board/read-board.ts";
import { acts } from "../../../server/acts/acts.ts";
import { parseSafely } from "../../../shared/reading/parse-safely.schema.ts";
import { readScenario } from "../../../shared/scenario/read-scenario.ts";
import { readWiring } from "../../../shared/wiring/read-wiring.ts";
import { testDepth } from "../../depth.ts";
import { pathsIn, posingJson, withValueAt } from "../../posing-values.ts";

const fileOf = (path: string): unknown => JSON.parse(readFileSync(path, "utf8"));
const readers = [
  { what: "scenario", read: readScenario, good: fileOf("scenarios/first-spur.json") },
  { what: "board", read: readBoard, good: fileOf("hardware/boards/small.json") },
  {
    what: "wiring",
    read: readWiring,
    good: {
      version: 1,
      stations: [
        { id: "way-1", kind: "way", label: "Ring", settings: { deviceRatingA: 32, deviceCurve: "B" } },
        { id: "socket-1", kind: "socket-outlet", label: "Kitchen" },
      ],
      cables: [{ from: "way-1.a", to: "socket-1.a", csaMm2: 2.5, lengthM: 7 }],
    },
  },
];

describe("an object that poses as a text, a number or a list", () => {
  it("makes no message throw: it has not the form of any", () => {
    const sound: Record<string, object> = {
      "sign-in": { by: "name", learner: "demo-02" },
      "start-attempt": { scenario: "first-spur", mode: "practice", kind: "first" },
      plug: { contactA: "way-1.a.L", contactB: "socket-1.a.L" },
      pull: { what: "cable", cable: "socket-1.a~way-1.a" },
      declare: { subject: "socket-1", key: "ratingA", value: 13 },
    };
    const names = Object.keys(acts) as (keyof typeof acts)[];
    expect(
      parseSafely(acts["sign-in"].schema, {
        by: "name",
        learner: { length: { valueOf: 1, toString: 1 } },
      }),
    ).toMatchObject({ success: false, issues: [{ path: ["learner"] }] });
    fc.assert(
      fc.property(fc.constantFrom(...names), posingJson, fc.nat(), (name, json, at) => {
        const good = sound[name] ?? {};
        const paths = pathsIn(good);
        const message = withValueAt(good, paths[at % paths.length] ?? [], json);
        const parsed = parseSafely<object>(acts[name].schema, message);
        if (!parsed.success) expect(parsed.issues.length).toBeGreaterThan(0);
      }),
      { numRuns: 1000 * testDepth },
    );
  });

  it.each(readers)(
    "at any place of a $what file is refused by the file's name, never thrown",
    ({ what, read, good }) => {
      expect(read(good, what)).toEqual({ ok: true, value: expect.anything() as object });
      const paths = pathsIn(good);
      fc.assert(
        fc.property(posingJson, fc.nat(), (json, at) => {
          const file = withValueAt(good, paths[at % paths.length] ?? [], json);
          for (const input of [file, JSON.stringify(file)]) {
            const found = read(input, `${what}.json`);
            if (!found.ok) expect(found.problems[0]?.file).toBe(`${what}.json`);
          }
        }),
        { numRuns: 100 * testDepth },
      );
    },
  );

  it("in place of a name is said at its field", () => {
    const read = readWiring(
      {
        version: 1,
        stations: [
          {
            id: { length: { valueOf: 1, toString: 1 } },
            kind: "way",
            label: { length: { valueOf: 1, toString: 1 } },
          },
        ],
        cables: [],
      },
      "posing.json",
    );
    expect(read).toMatchObject({
      ok: false,
      problems: [{ file: "posing.json", field: "stations[0].id", message: "an object cannot be read" }],
    });
  });
});
