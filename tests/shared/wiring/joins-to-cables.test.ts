import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ContactId, contactId, entryId, stationId } from "../../../shared/board/ids.ts";
import { conductorsOf, stationsById } from "../../../shared/wiring/conductors-of.ts";
import { cablesToJoins, joinsToCables } from "../../../shared/wiring/joins-to-cables.ts";
import type { CableSpec, Station } from "../../../shared/wiring/wiring.schema.ts";

const contact = (text: string): ContactId => text as ContactId;
const alike = (): number => 1;

const cables = (...groups: string[][]): CableSpec[] =>
  joinsToCables(
    groups.map((group) => group.map(contact)),
    alike,
  );

describe("what the joins of a board are as cables", () => {
  it("is one cable for three single leads between two entries", () => {
    expect(
      cables(["socket-1.a.L", "way-1.a.L"], ["socket-1.a.N", "way-1.a.N"], ["socket-1.a.E", "way-1.a.E"]),
    ).toEqual([
      {
        from: "socket-1.a",
        to: "way-1.a",
        conductors: [
          ["E", "E"],
          ["L", "L"],
          ["N", "N"],
        ],
      },
    ]);
  });

  it("states which position meets which where cores are crossed", () => {
    expect(cables(["way-1.a.L", "socket-1.a.N"], ["way-1.a.N", "socket-1.a.L"])[0]?.conductors).toEqual([
      ["L", "N"],
      ["N", "L"],
    ]);
  });

  it("is a cable from an entry to itself where both ends of a lead are there", () => {
    expect(cables(["socket-1.a.N", "socket-1.a.L"])).toEqual([
      { from: "socket-1.a", to: "socket-1.a", conductors: [["L", "N"]] },
    ]);
  });

  it("is the least tree by distance for stacked plugs", () => {
    const placeM: Record<string, number> = { "way-1.a.L": 0, "socket-1.a.L": 3, "socket-2.a.L": 4 };
    const made = joinsToCables([Object.keys(placeM).map(contact)], (a, b) =>
      Math.abs((placeM[a] ?? 0) - (placeM[b] ?? 0)),
    );
    expect(made.map(({ from, to }) => `${from}~${to}`)).toEqual([
      "socket-1.a~socket-2.a",
      "socket-1.a~way-1.a",
    ]);
  });
});

const stations: Station[] = ["way-1", "socket-1", "socket-2"].map((id) => ({
  id: stationId(id),
  kind: id.startsWith("way") ? "way" : "socket-outlet",
}));
const contacts = stations.flatMap(({ id }) =>
  ["a", "b"].flatMap((letter) =>
    (["L", "N", "E"] as const).map((role) => contactId(entryId(id, letter), role)),
  ),
);
/** The contacts shuffled and cut into groups of one and more. */
const anyJoins = fc
  .tuple(
    fc.shuffledSubarray(contacts, { minLength: contacts.length }),
    fc.array(fc.integer({ min: 1, max: 4 }), { minLength: contacts.length, maxLength: contacts.length }),
  )
  .map(([order, sizes]) => {
    const groups: ContactId[][] = [];
    for (let start = 0, at = 0; start < order.length; start += sizes[at++] ?? 1)
      groups.push(order.slice(start, start + (sizes[at] ?? 1)).sort());
    return groups.filter((group) => group.length > 1).sort(([a = ""], [b = ""]) => (a < b ? -1 : 1));
  });

describe("cables and joins", () => {
  it("say the same: cables of any joins make those joins again", () => {
    fc.assert(
      fc.property(anyJoins, (joins) => {
        expect(cablesToJoins(joinsToCables(joins, alike), stations)).toEqual(joins);
      }),
    );
  });

  it("do not hang on the order in which joins are sensed", () => {
    fc.assert(
      fc.property(anyJoins, (joins) => {
        const turned = joins.map((group) => [...group].reverse()).reverse();
        expect(joinsToCables(turned, alike)).toEqual(joinsToCables(joins, alike));
      }),
    );
  });
});

describe("the cores of a cable that states none", () => {
  it("run straight by colour, so the blue core of a switch cable is a switched line at both ends", () => {
    const known = stationsById([
      { id: stationId("rose-1"), kind: "ceiling-rose" },
      { id: stationId("switch-1"), kind: "plate-switch" },
    ]);
    const cores = conductorsOf({ from: entryId("rose-1", "s"), to: entryId("switch-1", "s") }, known);
    expect(cores.map(({ from, to }) => `${from}~${to}`)).toEqual([
      "rose-1.s.L~switch-1.s.L",
      "rose-1.s.SL~switch-1.s.SL",
      "rose-1.s.E~switch-1.s.E",
    ]);
  });
});
