import { describe, expect, it } from "vitest";
import type { SimulatedLines } from "../../../hardware/lines/simulated-lines.ts";
import { testDepth } from "../../depth.ts";
import { seeded } from "../../seeded.ts";
import { contact, entry, ProgramBench, shippedBoard } from "./program-bench.ts";

const workshop = shippedBoard("workshop");

/** A board with six cables in that are all pulled while its inputs are read wrong now and then. */
async function pulledInNoise(share: number, seed: number): Promise<ProgramBench> {
  const bench = await new ProgramBench().open(workshop);
  for (const letter of ["a", "b"])
    for (const socket of [1, 2, 3])
      bench.ask({
        type: "plug",
        contactA: contact(`way-${socket}.${letter}.L`),
        contactB: contact(`socket-${socket}.${letter}.L`),
      });
  (bench.opened!.lines as SimulatedLines).setNoise(share, seeded(seed));
  bench.opened!.simulated!.pull("all");
  return bench.run(5_000);
}

describe("a board whose readings do not agree", () => {
  it.each([0.003, 0.01, 0.03])(
    "is told as noisy within 5 s, nothing of it believed: %d of the bits",
    async (share) => {
      for (let seed = 1; seed <= testDepth; seed += 1) {
        const { state } = await pulledInNoise(share, seed);
        expect(state.faults).toEqual([{ kind: "noisy-board", contacts: [] }]);
        expect(state.unknown).toHaveLength(204);
      }
    },
  );

  it("is believed again once it is quiet", async () => {
    const bench = await pulledInNoise(0.01, 7);
    (bench.opened!.lines as SimulatedLines).setNoise(0, () => 1);
    bench.run(6_000);
    expect(bench.state).toMatchObject({ groups: [], faults: [], unknown: [] });
  });

  it("is told also where it was noisy from the start", async () => {
    const bench = new ProgramBench();
    const opening = bench.open(workshop);
    await Promise.resolve();
    await Promise.resolve();
    (bench.opened?.lines as SimulatedLines | undefined)?.setNoise(0.01, seeded(3));
    await opening;
    bench.run(5_000);
    expect(bench.state.faults).toEqual([{ kind: "noisy-board", contacts: [] }]);
  });
});

describe("plugs of one lead that tell different codes", () => {
  it("give no size and are a fault that names both ends", async () => {
    const bench = await new ProgramBench().open(shippedBoard("workshop-coded"));
    const leads = ["L", "N", "E"].map(
      (role) => [contact(`socket-1.a.${role}`), contact(`way-1.a.${role}`)] as [never, never],
    );
    const codes = [
      { entry: entry("way-1.a"), code: 3 },
      { entry: entry("socket-1.a"), code: 2 },
    ];
    bench.ask({ type: "set-leads", to: { leads, codes } });
    expect(bench.state.codes).toEqual([]);
    expect(bench.state.groups).toHaveLength(3);
    expect(bench.state.faults).toMatchObject([{ kind: "codes-differ" }]);
    expect(Object.values(bench.state.faults[0]!.facts!).sort()).toEqual([2, 3, "socket-1.a", "way-1.a"]);
    bench.ask({
      type: "set-leads",
      to: { leads, codes: codes.map(({ entry: at }) => ({ entry: at, code: 3 })) },
    });
    expect(bench.state).toMatchObject({ faults: [], codes: [{ code: 3 }, { code: 3 }] });
  });
});
