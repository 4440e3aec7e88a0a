import { describe, expect, it } from "vitest";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import { ringOpen } from "../../../shared/rules/ring-open.ts";
import { stationId } from "../../../shared/board/ids.ts";
import { ring, table } from "./table.ts";
import { wire } from "./wire.ts";

const wantsRing = { wants: [{ kind: "shape" as const, of: stationId("socket-1"), shape: "ring" as const }] };

// BS 7671 433.1.204 and 643.2.1: line, neutral and protective conductor of a ring each go all the way round.
describe("a ring", () => {
  table(ringOpen, [
    { title: "that closes in all three conductors is right", lines: ring, gives: [] },
    ...(["L", "N", "E"] as const).map((role) => ({
      title: `with ${role} open in one cable is open there`,
      lines: [ring[0]!, `socket-1.b socket-2.a -${role}`, ring[2]!, ring[3]!],
      gives: [`fix open socket-1.b.${role}~socket-2.a.${role}`],
    })),
    {
      title: "open in two cables is two findings",
      lines: [ring[0]!, "socket-1.b socket-2.a -N", "socket-2.b socket-3.a -E", ring[3]!],
      gives: ["fix open socket-1.b.N~socket-2.a.N", "fix open socket-2.b.E~socket-3.a.E"],
    },
    {
      title: "that only neutral closes is open in line and earth",
      lines: [ring[0]!, ring[1]!, ring[2]!, "socket-3.b way-1.b N:N"],
      gives: ["fix open socket-3.b.L~way-1.b.L"],
    },
    {
      title: "with a cable out is two legs that cannot carry the device",
      lines: [ring[0]!, ring[1]!, ring[3]!],
      gives: ["fix open way-1"],
    },
    {
      title: "of two with the middle cable out is two legs of one point each",
      lines: ["way-1.a socket-1.a", "way-1.b socket-2.a"],
      gives: ["fix open way-1"],
    },
    { title: "with one leg out is a radial", lines: [ring[0]!, ring[1]!, ring[2]!], gives: [] },
    {
      title: "is not meant by two legs that carry the device",
      lines: ["way-1.a socket-1.a 4", "way-1.b socket-2.a 4"],
      gives: [],
    },
    {
      title: "is not meant by a leg that carries the device and a spur from the way",
      lines: ["way-1.a socket-1.a 4", "way-1.b socket-2.a"],
      gives: [],
    },
    {
      title: "is not meant by two legs on a device too small for one",
      lines: ["way-1.a socket-1.a method-103", "way-1.b socket-2.a method-103"],
      extras: { settings: { "way-1": { deviceRatingA: 20 } } },
      gives: [],
    },
    {
      title: "is not meant by two legs to fixed appliances",
      lines: ["way-1.a heater-1.a", "way-1.b heater-2.a"],
      gives: [],
    },
    {
      title: "is open where the task wants one and finds a leg",
      lines: ["way-1.a socket-1.a 4"],
      extras: wantsRing,
      gives: ["fix open way-1"],
    },
    { title: "is there where the task wants one", lines: ring, extras: wantsRing, gives: [] },
    {
      title: "is not yet asked for where nothing is wired",
      lines: ["way-2.a socket-4.a 4"],
      extras: { ...wantsRing, also: ["socket-1"] },
      gives: [],
    },
    {
      title: "may be bridged and open: the bridge comes first",
      lines: [ring[0]!, "socket-1.b socket-2.a -E", ring[2]!, ring[3]!, "socket-1.c socket-3.c"],
      gives: [],
    },
    {
      title: "cannot be told from two legs that nobody has sized",
      lines: ["way-1.a socket-1.a ?", "way-1.b socket-2.a ?"],
      gives: ["missing csaMm2 socket-1.a~way-1.a", "missing csaMm2 socket-2.a~way-1.b"],
    },
    {
      title: "cannot be told from two legs on a device that nobody has rated",
      lines: ["way-1.a socket-1.a", "way-1.b socket-2.a"],
      extras: { settings: { "way-1": { deviceRatingA: undefined } } },
      gives: ["missing deviceRatingA way-1"],
    },
    {
      title: "may be meant by a loop that never reaches the way: the loop comes first",
      lines: [
        "way-1.a socket-1.a 4",
        "socket-1.b socket-2.a 4",
        "socket-2.b socket-3.a 4",
        "socket-3.b socket-1.c 4",
      ],
      extras: wantsRing,
      gives: [],
    },
    {
      title: "is open where one of its legs ends in a box with nothing beyond",
      lines: ["way-1.a socket-1.a", "socket-1.b socket-2.a", "way-1.b box-1.a"],
      gives: ["fix open way-1"],
    },
    {
      title: "is open where a leg ends in the second of two boxes",
      lines: ["way-1.a socket-1.a", "socket-1.b socket-2.a", "way-1.b box-1.a", "box-1.b box-2.a"],
      gives: ["fix open way-1"],
    },
    {
      title: "is not made of one leg that ends in a box",
      lines: ["way-1.a socket-1.a", "socket-1.b socket-2.a", "socket-2.b box-1.a"],
      gives: [],
    },
    {
      title: "is not made of a leg that is large enough and one that ends in a box",
      lines: ["way-1.a socket-1.a 4", "socket-1.b socket-2.a 4", "way-1.b box-1.a"],
      gives: [],
    },
    {
      title: "is not made two legs by a cable that ends in a box on a device that no ring has",
      lines: ["way-1.a socket-1.a 1.5", "socket-1.b socket-2.a 1.5", "way-1.b box-1.a 1.5"],
      extras: { settings: { "way-1": { deviceRatingA: 20 } } },
      gives: [],
    },
    {
      title: "is not made two legs by a cable to an isolator that feeds nothing",
      lines: ["way-1.a socket-1.a", "socket-1.b socket-2.a", "way-1.b isolator-1.a"],
      gives: [],
    },
  ]);

  it("that is open shows where its legs end, and not where a spur from the way does", () => {
    const lines = [
      ...["way-1.a socket-1.a", "socket-1.b socket-2.a", "way-1.b socket-3.a", "socket-3.b socket-4.a"],
      "way-1.c socket-5.a",
    ];
    const [said] = ringOpen.check(buildModel(wire(lines)));
    expect(said?.kind === "evidence" && said.places.map(({ id }) => id)).toEqual(["socket-2", "socket-4"]);
  });
});
