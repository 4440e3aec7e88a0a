import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  conductorId,
  type ContactId,
  contactId,
  entryId,
  stationId,
  stationOf,
} from "../../../shared/board/ids.ts";
import { conductorsOf, stationsById } from "../../../shared/wiring/conductors-of.ts";
import { type JoinedCable, joinsToCables } from "../../../shared/wiring/joins-to-cables.ts";
import { groupsOf } from "../../../shared/wiring/plugged.ts";
import type { Station } from "../../../shared/wiring/wiring.schema.ts";

const contact = (text: string): ContactId => text as ContactId;
const alike = (): number => 1;

const cables = (...groups: string[][]): JoinedCable[] =>
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
        id: "socket-1.a~way-1.a",
        conductors: [
          ["socket-1.a.E", "way-1.a.E"],
          ["socket-1.a.L", "way-1.a.L"],
          ["socket-1.a.N", "way-1.a.N"],
        ],
      },
    ]);
  });

  it("states which position meets which where cores are crossed", () => {
    expect(cables(["way-1.a.L", "socket-1.a.N"], ["way-1.a.N", "socket-1.a.L"])[0]?.conductors).toEqual([
      ["socket-1.a.L", "way-1.a.N"],
      ["socket-1.a.N", "way-1.a.L"],
    ]);
  });

  it("is a cable from an entry to itself where both ends of a lead are there", () => {
    expect(cables(["socket-1.a.N", "socket-1.a.L"])).toEqual([
      { id: "socket-1.a~socket-1.a", conductors: [["socket-1.a.L", "socket-1.a.N"]] },
    ]);
  });

  it("is the least tree by distance for stacked plugs", () => {
    const placeM: Record<string, number> = { "way-1": 0, "socket-1": 3, "socket-2": 4 };
    const stacked = ["way-1.a.L", "socket-1.a.L", "socket-2.a.L"].map(contact);
    const made = joinsToCables([stacked], (a, b) => Math.abs((placeM[a] ?? 0) - (placeM[b] ?? 0)));
    expect(made.map(({ id }) => id)).toEqual(["socket-1.a~socket-2.a", "socket-1.a~way-1.a"]);
  });

  it("goes by id where no way between stations is known", () => {
    const stacked = ["way-1.a.L", "socket-1.a.L", "socket-2.a.L"].map(contact);
    expect(joinsToCables([stacked], () => undefined).map(({ id }) => id)).toEqual([
      "socket-1.a~socket-2.a",
      "socket-1.a~way-1.a",
    ]);
  });

  it("is no cable at a test face", () => {
    expect(cables(["socket-1.front.L", "socket-1.a.L"])).toEqual([]);
    expect(cables(["socket-1.front.L", "socket-1.a.L", "way-1.a.L"]).map(({ id }) => id)).toEqual([
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
        const made = joinsToCables(joins, alike).flatMap(({ conductors }) => conductors);
        expect(groupsOf(made.map(([a, b]) => conductorId(a, b)))).toEqual(joins);
      }),
    );
  });

  it("are the least there can be: one fewer than the contacts of a group, and never longer than any other tree", () => {
    const placed = fc.dictionary(fc.constantFrom(...stations.map(({ id }) => id)), fc.nat(20));
    fc.assert(
      fc.property(anyJoins, placed, (joins, placeM) => {
        const apart = (a: string, b: string): number => Math.abs((placeM[a] ?? 0) - (placeM[b] ?? 0));
        for (const group of joins) {
          const tree = joinsToCables([group], apart).flatMap(({ conductors }) => conductors);
          expect(tree).toHaveLength(group.length - 1);
          // On a line the least tree is as long as its contacts lie apart.
          const at = group.map((one) => placeM[stationOf(one)] ?? 0);
          const longM = tree.reduce((sum, [a, b]) => sum + apart(stationOf(a), stationOf(b)), 0);
          expect(longM).toBe(Math.max(...at) - Math.min(...at));
        }
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
    const stations = stationsById([
      { id: stationId("rose-1"), kind: "ceiling-rose" },
      { id: stationId("switch-1"), kind: "plate-switch" },
    ]);
    const cores = conductorsOf({ from: entryId("rose-1", "s"), to: entryId("switch-1", "s") }, stations);
    expect(cores.map(({ from, to }) => `${from}~${to}`)).toEqual([
      "rose-1.s.L~switch-1.s.L",
      "rose-1.s.SL~switch-1.s.SL",
      "rose-1.s.E~switch-1.s.E",
    ]);
  });
});
