import { describe, expect, it } from "vitest";
import { readBoardFile } from "../../../server/library.ts";
import { everyWiring } from "../../../shared/scenario/every-wiring.ts";
import type { StrippedScenario } from "../../../shared/scenario/scenario.schema.ts";

const { board } = readBoardFile("hardware/boards/small.json");
const two = { stations: board.stations.filter(({ id }) => id === "way-1" || id === "socket-2") };
const taskOf = (requirements: StrippedScenario["requirements"] = []): StrippedScenario =>
  ({
    stations: [
      { id: "way-1", kind: "way", chosen: ["deviceRatingA"] },
      { id: "socket-2", kind: "socket-outlet" },
    ],
    parts: { cableCsaMm2: [1.5, 2.5], deviceRatingA: [16, 20, 32] },
    requirements,
    asFound: { cables: [] },
  }) as unknown as StrippedScenario;

describe("every wiring of a task", () => {
  // Counted by hand: none, one or two cables between a way with two entries and a socket outlet with two, each in two
  // sizes and which entry does not matter: 1 + 2 + 3, each with the device open at first and then one of three.
  it("is each one that whole cables can make, once", () => {
    const all = everyWiring(taskOf(), two, { cables: [] }, 100);
    expect(all).toHaveLength(6 * 4);
  });

  it("leaves what has to stay", () => {
    const cable = { from: "way-1.a", to: "socket-2.a", csaMm2: 2.5 } as const;
    const kept = [
      { kind: "kept", cables: ["socket-2.a~way-1.a"] },
    ] as unknown as StrippedScenario["requirements"];
    const built = { cables: [cable] } as unknown as StrippedScenario["asFound"];
    const all = everyWiring(taskOf(kept), two, built, 100);
    expect(
      all?.every(({ cables }) => cables.some(({ from, csaMm2 }) => from === "way-1.a" && csaMm2 === 2.5)),
    ).toBe(true);
  });

  it("is not told where there are more than are to be judged", () => {
    expect(everyWiring(taskOf(), two, { cables: [] }, 5)).toBeUndefined();
  });
});
