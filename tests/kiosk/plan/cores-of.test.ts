import { describe, expect, it } from "vitest";
import { contactId } from "../../../shared/board/ids.ts";
import { coresOf, isCrossed } from "../../../kiosk/plan/cores-of.ts";
import { heaviestAt, holderOf } from "../../../kiosk/notes/heaviest-at.ts";
import { smallFace } from "../faces.ts";
import { cable, ringOpen, verdict } from "../views.ts";

describe("the cores of a drawn cable", () => {
  it("lie as in twin-and-earth: brown, green-and-yellow between, blue", () => {
    const cores = coresOf(cable("socket-1.a", "way-1.a", []), smallFace);
    expect(cores.map(({ core }) => core)).toEqual(["brown", "earth", "blue"]);
    expect(cores.every(({ isThere }) => isThere)).toBe(true);
  });

  it("show a gap where a conductor is not joined", () => {
    const cores = coresOf(cable("socket-1.a", "way-1.a", [], { left: ["E"] }), smallFace);
    expect(cores.map(({ core, isThere }) => [core, isThere])).toEqual([
      ["brown", true],
      ["earth", false],
      ["blue", true],
    ]);
  });

  it("keep the letter of each end, and know when a core lands on another role", () => {
    const straight = cable("socket-1.a", "way-1.a", []);
    const crossed = {
      ...straight,
      conductors: [
        { from: contactId("socket-1.a", "L"), to: contactId("way-1.a", "N"), class: "live" as const },
        { from: contactId("socket-1.a", "N"), to: contactId("way-1.a", "L"), class: "neutral" as const },
        { from: contactId("socket-1.a", "E"), to: contactId("way-1.a", "E"), class: "earth" as const },
      ],
    };
    const [brown, earth, blue] = coresOf(crossed, smallFace);
    expect([brown?.fromRole, brown?.toRole]).toEqual(["L", "N"]);
    expect([brown, earth, blue].map((core) => core && isCrossed(core))).toEqual([true, false, true]);
    expect(coresOf(straight, smallFace).some(isCrossed)).toBe(false);
  });
});

describe("where a finding is marked", () => {
  it("is the station or the cable that its place lies on", () => {
    expect(holderOf({ kind: "contact", id: "socket-1.b.L" })).toBe("socket-1");
    expect(holderOf({ kind: "entry", id: "socket-1.b" })).toBe("socket-1");
    expect(holderOf({ kind: "conductor", id: "socket-1.b.L~socket-2.a.L" })).toBe("socket-1.b~socket-2.a");
    expect(holderOf({ kind: "cable", id: "socket-1.b~socket-2.a" })).toBe("socket-1.b~socket-2.a");
  });

  it("carries the heaviest weight where several are at one place", () => {
    const findings = [
      { ...ringOpen, weight: "query" as const },
      { ...ringOpen, weight: "danger" as const },
      { ...ringOpen, weight: "note" as const },
    ];
    expect(heaviestAt(verdict({ findings })).get("socket-1.b~socket-2.a")).toBe("danger");
  });

  it("is not marked once the board has changed, and not before it has settled", () => {
    expect(heaviestAt(verdict({ findings: [ringOpen], isCurrent: false })).size).toBe(0);
    expect(heaviestAt(verdict({ findings: [ringOpen], isHeld: true })).size).toBe(0);
  });
});
