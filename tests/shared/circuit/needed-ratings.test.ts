import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import lighting from "../../../hardware/boards/lighting.json" with { type: "json" };
import workshop from "../../../hardware/boards/workshop.json" with { type: "json" };
import type { BoardDescription } from "../../../shared/board/board.schema.ts";
import { cableId, type EntryId } from "../../../shared/board/ids.ts";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import { neededRatingsA } from "../../../shared/circuit/needed-ratings.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { fitsBoard } from "../../../shared/scenario/fits-board.ts";
import { routes } from "../../../shared/scenario/plan-route.ts";
import { readScenario } from "../../../shared/scenario/read-scenario.ts";
import { strip } from "../../../shared/scenario/strip.ts";
import { toWiring } from "../../../shared/scenario/to-wiring.ts";
import { wire } from "../rules/wire.ts";

const needed = (lines: string[], extras = {}) => neededRatingsA(buildModel(wire(lines, extras)));
const cable = (a: string, b: string) => cableId(a as EntryId, b as EntryId);
const ring = ["way-1.a socket-1.a", "socket-1.b socket-2.a", "socket-2.b way-1.b"];

describe("what Iz of a cable must be at least", () => {
  // BS 7671 433.1.1: In <= Iz.
  it("is In of the device before it on a radial", () => {
    expect(needed(["way-1.a socket-1.a 4"]).get(cable("way-1.a", "socket-1.a"))).toBe(32);
  });

  // BS 7671 433.1.204: cable of a ring on a 30 or 32 A device carries 20 A at least.
  it("is 20 A in a ring", () => {
    const all = needed(ring);
    for (const [a, b] of ring.map((line) => line.split(" ") as [string, string]))
      expect(all.get(cable(a, b))).toBe(20);
  });

  it("is what its heaviest point can draw in a spur, and never more than In", () => {
    const all = needed([...ring, "socket-1.c socket-3.a", "socket-2.c fcu-1.a"], {
      settings: { "fcu-1": { fuseRatingA: 13 } },
    });
    // A twin socket outlet: 20 A.
    expect(all.get(cable("socket-1.c", "socket-3.a"))).toBe(20);
    expect(all.get(cable("socket-2.c", "fcu-1.a"))).toBe(13);
  });

  it("is the fuse behind a connection unit", () => {
    const all = needed(["way-1.a fcu-1.a", "fcu-1.c socket-1.a 1.5"]);
    expect(all.get(cable("fcu-1.c", "socket-1.a"))).toBe(13);
  });

  // BS 7671 433.1.202: In <= 0.725 Iz for a fuse to BS 3036.
  it("is In over 0.725 behind a rewireable fuse", () => {
    const all = needed(["way-1.a socket-1.a 4"], {
      settings: { "way-1": { deviceStandard: "BS 3036", deviceRatingA: 30 } },
    });
    expect(all.get(cable("way-1.a", "socket-1.a"))).toBeCloseTo(30 / 0.725, 9);
  });

  it("is not said for a cable that nothing feeds", () => {
    expect(needed(["socket-1.a socket-2.a"]).size).toBe(0);
  });

  it("is not said for a spur that ends where nothing is fed", () => {
    const all = needed([...ring, "socket-2.c box-1.a 1.5"]);
    expect(all.has(cable("socket-2.c", "box-1.a"))).toBe(false);
    expect(all.get(cable("socket-1.b", "socket-2.a"))).toBe(20);
  });

  it("is missed by just those cables of all answers of all scenarios that a rule finds to carry too little", () => {
    const rules = [
      "ring-cable/underrated",
      "spur-cable/overload",
      "radial-cable/underrated",
      "radial-cable/semi-enclosed",
      "device-cable/underrated",
      "device-cable/semi-enclosed",
      "fused-cable/underrated",
    ];
    let belowCount = 0;
    for (const name of readdirSync("scenarios").filter((one) => one.endsWith(".json"))) {
      const read = readScenario(readFileSync(`scenarios/${name}`, "utf8"), name);
      if (!read.ok) throw new Error(name);
      const { modelAnswers, wrongAnswers, plan } = read.value;
      const board = [workshop, lighting]
        .map((each) => each as unknown as BoardDescription)
        .find((each) => fitsBoard(read.value, each))!;
      for (const built of [...modelAnswers, ...wrongAnswers.map((answer) => answer.built)]) {
        const scenario = strip(read.value);
        const { findings, suppressed, figures } = judge(
          toWiring({ scenario, board, built, routeBetween: routes(plan) }),
        );
        const found = new Set(
          [...findings, ...suppressed]
            .filter(({ rule, variant }) => rules.includes(`${rule}/${variant}`))
            .map(({ facts }) => facts["cable"]),
        );
        // A cable of a ring that is too small is told by its size alone.
        const small = new Set(
          [...findings, ...suppressed]
            .filter(({ variant }) => variant === "small")
            .map(({ facts }) => facts["cable"]),
        );
        for (const [id, { ratingA, neededA }] of Object.entries(figures.cables)) {
          if (ratingA === undefined || neededA === undefined || small.has(id)) continue;
          expect([id, ratingA < neededA]).toEqual([id, found.has(id)]);
          if (found.has(id)) belowCount += 1;
        }
      }
    }
    expect(belowCount).toBeGreaterThan(5);
  });
});
