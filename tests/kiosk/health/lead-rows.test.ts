import { describe, expect, it } from "vitest";
import { leadRows } from "../../../kiosk/health/lead-rows.ts";
import type { ContactId, EntryId } from "../../../shared/board/ids.ts";
import { smallFace, workshopFace } from "../faces.ts";

const rowsOf = (entryA: string, entryB: string, joined: [string, string][], face = smallFace) =>
  leadRows(
    {
      entryA: entryA as EntryId,
      entryB: entryB as EntryId,
      joined: joined as [ContactId, ContactId][],
      open: [],
      codes: [],
    },
    face,
  ).map(({ core, state, to }) => [core, state, ...to].join(" "));

describe("a lead between two entries, core by core", () => {
  it("is whole, or has the core open that makes no contact", () => {
    const [brown, blue, earth] = (["L", "N", "E"] as const).map((role): [string, string] => [
      `way-1.a.${role}`,
      `socket-1.a.${role}`,
    ]);
    const whole = [brown!, blue!, earth!];
    expect(rowsOf("way-1.a", "socket-1.a", whole)).toEqual(["brown joined", "blue joined", "earth joined"]);
    expect(rowsOf("way-1.a", "socket-1.a", [brown!, earth!])).toEqual([
      "brown joined",
      "blue open",
      "earth joined",
    ]);
  });

  it("names where crossed cores go, also where a core goes right and astray", () => {
    const crossed: [string, string][] = [
      ["way-1.a.L", "socket-1.a.N"],
      ["way-1.a.N", "socket-1.a.L"],
      ["way-1.a.E", "socket-1.a.E"],
      ["way-1.a.E", "socket-1.a.N"],
    ];
    expect(rowsOf("way-1.a", "socket-1.a", crossed)).toEqual([
      "brown crossed socket-1.a.N",
      "blue crossed socket-1.a.L",
      "earth crossed socket-1.a.N",
    ]);
  });

  it("goes by the core, not by the role: blue is neutral at a socket outlet and switched line at a switch", () => {
    const straight: [string, string][] = [
      ["ceiling-rose-1.s.L", "plate-switch-1.s.L"],
      ["ceiling-rose-1.s.SL", "plate-switch-1.s.SL"],
    ];
    expect(rowsOf("ceiling-rose-1.s", "plate-switch-1.s", straight, workshopFace)).toEqual([
      "brown joined",
      "blue joined",
      "earth open",
    ]);
    expect(
      rowsOf("socket-1.a", "plate-switch-1.s", [["socket-1.a.N", "plate-switch-1.s.SL"]], workshopFace),
    ).toEqual(["brown open", "blue joined", "earth open"]);
  });
});
