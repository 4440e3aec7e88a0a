import { describe, expect, it } from "vitest";
import { contactWeights, heaviestAt, heaviestOnFace } from "../../../kiosk/notes/heaviest-at.ts";
import type { FindingView, VerdictView } from "../../../shared/protocol/bench-view.ts";

const finding = (weight: FindingView["weight"], ...places: FindingView["places"]): FindingView => ({
  id: `${weight}/${places[0]?.id ?? ""}`,
  weight,
  title: "",
  where: "",
  what: "",
  why: "",
  remedy: "",
  reference: "",
  places,
});
const verdict = (...findings: FindingView[]): VerdictView => ({
  findings,
  requirements: [],
  undetermined: [],
  proposal: "not-yet",
  isCurrent: true,
  isHeld: false,
});
const spur = { kind: "cable", id: "socket-1.c~socket-3.a" } as const;
const contact = { kind: "contact", id: "socket-3.a.N" } as const;
const conductor = { kind: "conductor", id: "socket-1.c.E~socket-3.a.E" } as const;

describe("where a finding shows", () => {
  it("is on its cable on the plan, and at both ends of it on the board's face", () => {
    const found = verdict(finding("fix", spur));
    expect([...heaviestAt(found)]).toEqual([[spur.id, "fix"]]);
    expect(heaviestOnFace(found).get("socket-1")).toBe("fix");
    expect(heaviestOnFace(found).get("socket-3")).toBe("fix");
  });

  it("is the heaviest where several meet", () => {
    const found = verdict(
      finding("danger", { kind: "station", id: "socket-3" }),
      finding("fix", spur),
      finding("query", { kind: "station", id: "socket-1" }),
    );
    expect(heaviestOnFace(found).get("socket-3")).toBe("danger");
    expect(heaviestOnFace(found).get("socket-1")).toBe("fix");
  });

  it("is the very contact where one is named, by itself or as the end of a conductor", () => {
    const weights = contactWeights(verdict(finding("fix", conductor), finding("danger", contact)));
    expect([...weights].sort()).toEqual([
      ["socket-1.c.E", "fix"],
      ["socket-3.a.E", "fix"],
      ["socket-3.a.N", "danger"],
    ]);
  });

  it("is nowhere once the board has changed or still settles", () => {
    for (const state of [{ isCurrent: false }, { isHeld: true }]) {
      const past = { ...verdict(finding("danger", contact, spur)), ...state };
      expect(heaviestOnFace(past).size + contactWeights(past).size).toBe(0);
    }
  });
});
