import { describe, expect, it } from "vitest";
import { entryId, stationId } from "../../../shared/board/ids.ts";
import { freeEntries, joinEnds } from "../../../kiosk/wiring/join-ends.ts";
import { leadsOf } from "../../../kiosk/wiring/leads.ts";
import { smallFace, workshopFace } from "../faces.ts";
import { cable } from "../views.ts";

const empty = { cables: [], joints: [] };
const station = (id: string) => ({ station: stationId(id) });
const entry = (id: string, letter: string) => ({ entry: entryId(id, letter) });
const socket1 = smallFace.stations.find(({ id }) => id === "socket-1");
if (!socket1) throw new Error("the small board has a socket outlet 1");

describe("laying a cable from station to station", () => {
  it("takes the first free entry of each where all entries are alike", () => {
    expect(joinEnds(station("way-1"), station("socket-1"), smallFace, empty)).toEqual({
      kind: "plug",
      entryA: "way-1.a",
      entryB: "socket-1.a",
    });
  });

  it("passes over entries that have a lead in any contact", () => {
    const cables = [cable("socket-1.a", "way-1.a", [], { left: ["L", "N"] })];
    expect(joinEnds(station("way-1"), station("socket-1"), smallFace, { cables, joints: [] })).toEqual({
      kind: "plug",
      entryA: "way-1.b",
      entryB: "socket-1.b",
    });
    expect(freeEntries(socket1, { cables, joints: [] }).map(({ letter }) => letter)).toEqual(["b", "c"]);
  });

  it("asks which entry where a station has a supply and a load side, because the difference is the learner's to see", () => {
    expect(joinEnds(station("socket-1"), station("fcu-1"), workshopFace, empty)).toEqual({
      kind: "choose",
      station: "fcu-1",
      entries: ["fcu-1.a", "fcu-1.b", "fcu-1.c", "fcu-1.d"],
    });
    expect(joinEnds(station("socket-1"), entry("fcu-1", "c"), workshopFace, empty)).toEqual({
      kind: "plug",
      entryA: "socket-1.a",
      entryB: "fcu-1.c",
    });
  });

  it("says so where a station has no free entry", () => {
    const cables = [cable("socket-3.a", "way-1.a", [])];
    expect(joinEnds(station("socket-1"), station("socket-3"), smallFace, { cables, joints: [] })).toEqual({
      kind: "full",
      station: "socket-3",
    });
  });

  it("may stack a plug on a named entry that is taken: what that means is for the rules to say", () => {
    const cables = [cable("socket-3.a", "way-1.a", [])];
    expect(
      joinEnds(entry("socket-1", "a"), entry("socket-3", "a"), smallFace, { cables, joints: [] }).kind,
    ).toBe("plug");
  });

  it("takes two entries of one station for a lead that stays in it", () => {
    expect(joinEnds(entry("socket-1", "a"), station("socket-1"), smallFace, empty)).toEqual({
      kind: "plug",
      entryA: "socket-1.a",
      entryB: "socket-1.b",
    });
  });

  it("does not join an entry to itself", () => {
    expect(joinEnds(entry("socket-1", "a"), entry("socket-1", "a"), smallFace, empty).kind).toBe("same");
  });
});

describe("where a lead goes", () => {
  it("is known from either of its contacts", () => {
    const leads = leadsOf([cable("socket-1.a", "way-1.a", [], { left: ["N", "E"] })]);
    expect([...leads.keys()].sort()).toEqual(["socket-1.a.L", "way-1.a.L"]);
    expect(leads.get("way-1.a.L" as never)?.[0]?.to).toBe("socket-1.a.L");
  });
});
