import { describe, expect, it } from "vitest";
import type { Disturbance } from "../../hardware/scan/disturbed-lines.ts";
import { RingOnABadBoard } from "./ring-on-a-bad-board.ts";

const chains = ["inputs", "outputs"] as const;
const free = "socket-6.a.L";
const inUse = "socket-2.a.L";

type Case = [name: string, disturb: (ring: RingOnABadBoard) => Disturbance];

/** Faults that change readings so much that somebody must be told. */
const told: Case[] = [
  ...chains.flatMap((chain): Case[] => [
    [`one clock in 1,000 slips on the ${chain}`, () => ({ kind: "slip", share: 1e-3, chain })],
    [`one clock in 10,000 slips on the ${chain}`, () => ({ kind: "slip", share: 1e-4, chain })],
    [`a chip reversed on the ${chain}`, () => ({ kind: "reversed", chain, chip: 3 })],
    [`two chips swapped on the ${chain}`, () => ({ kind: "swapped", chain, chips: [3, 7] })],
  ]),
  ...[1e-2, 1e-3, 1e-4].map((share): Case => [
    `${share} of all bits read wrong`,
    () => ({ kind: "noise", share }),
  ]),
  ...[free, inUse].flatMap((at) =>
    [0.05, 0.01].map((share): Case => [
      `${share} of the bits of ${at} read wrong`,
      (ring) => ({ kind: "noise", share, line: ring.lineOf(at) }),
    ]),
  ),
  ["a diode bypassed on a lead", (ring) => ({ kind: "bypassed-diode", line: ring.lineOf(inUse) })],
];

/** Faults that may pass unseen for five seconds, and must then do no harm. */
const harmless: Case[] = [
  ...chains.map((chain): Case => [
    `one clock in 100,000 slips on the ${chain}`,
    () => ({ kind: "slip", share: 1e-5, chain }),
  ]),
  ["a diode bypassed on a free contact", (ring) => ({ kind: "bypassed-diode", line: ring.lineOf(free) })],
  ...[free, inUse].map((at): Case => [
    `${at} rises in 2 ms`,
    (ring) => ({ kind: "slow-rise", riseMs: 2, line: ring.lineOf(at) }),
  ]),
];

/** Five seconds of a fault on a right ring; gives all that was told of it. */
function fiveSecondsOf(disturb: Case[1], seed: number): RingOnABadBoard["told"] {
  const ring = new RingOnABadBoard(seed);
  expect(ring.told.at(-1)).toMatchObject({ proposal: "met", faults: [] });
  const before = ring.told.length;
  ring.lines.disturbance = disturb(ring);
  return ring.run(5_000).told.slice(before);
}

describe("a right ring on a board that goes bad", () => {
  const heard = new Map<string, RingOnABadBoard["told"]>();

  it.each([...told, ...harmless])("is never failed, and gets no finding: %s", (name, disturb) => {
    const all = fiveSecondsOf(disturb, 5);
    heard.set(name, all);
    expect(all.filter(({ proposal }) => proposal === "not-yet")).toEqual([]);
    expect(all.flatMap(({ findings }) => findings)).toEqual([]);
  });

  it("is told of within five seconds, or nothing is said of the ring", () => {
    const untold = told.filter(([name, disturb]) => {
      const last = (heard.get(name) ?? fiveSecondsOf(disturb, 5)).at(-1);
      return last === undefined || (last.faults.length === 0 && last.proposal !== "cannot-say");
    });
    console.log(
      `${told.length - untold.length} of ${told.length + harmless.length} faults of the board told`,
    );
    expect(untold.map(([name]) => name)).toEqual([]);
  });
});
